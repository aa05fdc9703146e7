import { ok } from "../../core/base/outcome.ts";
import { exerciseId, readExercise } from "../../schemas/exercise.ts";
import { withLibrary } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered about exercises that a learner works on. */
export const ATTEMPT_ANSWERS: AnswersOf<
  | "attempts.list"
  | "attempts.take"
  | "attempts.open"
  | "attempts.add"
  | "attempts.restart"
  | "attempts.remove"
  | "attempts.restore"
> = {
  "attempts.list": ({ where }, host) =>
    withLibrary(host, async ({ attempts }) => {
      const rows = await attempts.list(where);
      return rows.ok ? ok({ rows: rows.value }) : rows;
    }),

  "attempts.take": async ({ text }, host) => {
    const file = readExercise(text);
    if (!file.ok) return file;
    const { exercise } = file.value;
    const id = await exerciseId(file.value);
    return withLibrary(host, async ({ attempts }) => {
      const deleted = await attempts.list("bin");
      if (!deleted.ok) return deleted;
      const kept = await attempts.take({ id, text, exercise }, host.now());
      return kept.ok ? ok({ ...kept.value, wasDeleted: deleted.value.some((row) => row.id === id) }) : kept;
    });
  },

  "attempts.open": ({ id }, host) => withLibrary(host, ({ attempts }) => attempts.open(id)),

  "attempts.add": (added, host) => withLibrary(host, ({ attempts }) => attempts.add(added, host.now())),

  "attempts.restart": ({ id }, host) => withLibrary(host, ({ attempts }) => attempts.restart(id, host.now())),

  "attempts.remove": ({ id }, host) => withLibrary(host, ({ attempts }) => attempts.remove(id, host.now())),

  "attempts.restore": ({ id }, host) => withLibrary(host, ({ attempts }) => attempts.restore(id)),
};
