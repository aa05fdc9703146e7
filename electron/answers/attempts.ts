import { ok } from "../../core/base/outcome.ts";
import { exerciseId, readExercise } from "../../schemas/exercise.ts";
import { addMoves, listAttempts, moveAttempt, openAttempt, restartAttempt, takeAttempt } from "../store/attempts.ts";
import { withStore } from "./circuits.ts";
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
  "attempts.list": ({ where }, host) => withStore(host, (store) => ok({ rows: listAttempts(store, where) })),

  "attempts.take": async ({ text }, host) => {
    const file = readExercise(text);
    if (!file.ok) return file;
    const { exercise } = file.value;
    const id = await exerciseId(file.value);
    return withStore(host, (store) => takeAttempt(store, { id, text, exercise }, host.now()));
  },

  "attempts.open": ({ id }, host) => withStore(host, (store) => openAttempt(store, id)),

  "attempts.add": (added, host) => withStore(host, (store) => addMoves(store, added, host.now())),

  "attempts.restart": ({ id }, host) => withStore(host, (store) => restartAttempt(store, id, host.now())),

  "attempts.remove": ({ id }, host) => withStore(host, (store) => moveAttempt(store, id, host.now())),

  "attempts.restore": ({ id }, host) => withStore(host, (store) => moveAttempt(store, id, null)),
};
