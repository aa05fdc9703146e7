import { type Outcome, ok } from "../../core/base/outcome.ts";
import type { KeptMark } from "../../schemas/calls.ts";
import type { MarkShelf } from "../store/library.ts";
import { withLibrary } from "./circuits.ts";
import type { AnswersOf, Host } from "./host.ts";

/** What is answered about marks of a class. */
export const MARK_ANSWERS: AnswersOf<"marks.list" | "marks.keep" | "marks.forget"> = {
  "marks.list": (_, host) => all(host, (marks) => marks.list()),

  "marks.keep": ({ marks: graded }, host) => all(host, (marks) => marks.keep(graded, host.now())),

  "marks.forget": ({ learner }, host) => all(host, (marks) => marks.forget(learner)),
};

function all(
  host: Host,
  ask: (marks: MarkShelf) => Promise<Outcome<KeptMark[]>>,
): Promise<Outcome<{ readonly marks: KeptMark[] }>> {
  return withLibrary(host, async ({ marks }) => {
    const kept = await ask(marks);
    return kept.ok ? ok({ marks: kept.value }) : kept;
  });
}
