import { z } from "zod";
import { learnerShape, recordedShape } from "../handinShape.ts";
import { LIMITS } from "../limits.ts";
import { type Call, moment, nothing } from "./call.ts";

/** Id of an exercise: the hash of what it says and of what is sealed in it. */
const exerciseId = z.string().regex(/^[0-9a-f]{64}$/);

/** Work on an exercise as the library lists it. */
const attemptRow = z.strictObject({
  id: exerciseId,
  title: z.string(),
  /** Label of the function check that is complained of. */
  complaint: z.string(),
  minutes: z.number(),
  moves: z.int(),
  /** True once the verdict is filed. */
  isOver: z.boolean(),
  made: moment,
  edited: moment,
  removed: moment.nullable(),
});
/** Work on an exercise as the library lists it. */
export type AttemptRow = z.infer<typeof attemptRow>;

const route = z.array(recordedShape).max(LIMITS.moves);

/** Work on an exercise: its file, as sealed as it came, who works on it, and the route so far. */
const keptAttempt = z.strictObject({
  id: exerciseId,
  text: z.string().max(LIMITS.bytes),
  learner: learnerShape,
  route,
});
/** Work on an exercise as it was kept last. */
export type KeptAttempt = z.infer<typeof keptAttempt>;

const one = z.strictObject({ id: exerciseId });

/** Calls on exercises that a learner works on. The host keeps their files shut: only the page's own worker opens a seal. */
export const ATTEMPT_CALLS = {
  /** Exercises that are kept, those under way first, newest first. */
  "attempts.list": {
    argument: z.strictObject({ where: z.enum(["library", "bin"]).default("library") }),
    answer: z.strictObject({ rows: z.array(attemptRow) }),
  },
  /**
   * Takes an exercise's file in and notes it as the one on the bench; one that is known comes back with the route so far, out of
   * the bin too, which is said. Refuses as `readExercise`.
   */
  "attempts.take": {
    argument: z.strictObject({ text: z.string().max(LIMITS.bytes) }),
    answer: keptAttempt.extend({ wasDeleted: z.boolean() }),
  },
  /** The same of one that is kept. Refuses `attempt-unknown` and `attempt-damaged`. */
  "attempts.open": { argument: one, answer: keptAttempt },
  /**
   * Keeps moves behind the first `from` of the route, and who works on it. Refuses `attempt-unknown`, and `attempt-elsewhere` where
   * the route that is kept has another length.
   */
  "attempts.add": {
    argument: one.extend({ from: z.int().min(0), moves: route, learner: learnerShape }),
    answer: nothing,
  },
  /** Begins an exercise anew: the route that is kept goes, and it comes back with none. Refuses as `attempts.open`. */
  "attempts.restart": { argument: one, answer: keptAttempt },
  /** Moves work on an exercise to the bin, where it stays for 30 days, and answers with its row. Refuses `attempt-unknown`. */
  "attempts.remove": { argument: one, answer: attemptRow },
  /** Brings it back from the bin. */
  "attempts.restore": { argument: one, answer: attemptRow },
} as const satisfies Readonly<Record<string, Call>>;
