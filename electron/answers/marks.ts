import { ok } from "../../core/base/outcome.ts";
import { forgetMarks, keepMarks, listMarks } from "../store/marks.ts";
import { withStore } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered about marks of a class. */
export const MARK_ANSWERS: AnswersOf<"marks.list" | "marks.keep" | "marks.forget"> = {
  "marks.list": (_, host) => withStore(host, (store) => ok({ marks: listMarks(store) })),

  "marks.keep": ({ marks }, host) =>
    withStore(host, (store) => {
      keepMarks(store, marks, host.now());
      return ok({ marks: listMarks(store) });
    }),

  "marks.forget": ({ learner }, host) =>
    withStore(host, (store) => {
      forgetMarks(store, learner);
      return ok({ marks: listMarks(store) });
    }),
};
