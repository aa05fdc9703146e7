import { z } from "zod";
import { LIMITS } from "../limits.ts";
import { type Call, nothing } from "./call.ts";

/** Marks that are kept or sent at once at most. */
const MOST_MARKS = 20_000;

const learner = z.string().max(LIMITS.textLength);

/** What one hand-in says of what a learner can do. */
const keptMark = z.strictObject({
  /** Last link of the hand-in's chain. */
  id: z.string().regex(/^[0-9a-f]{64}$/),
  learner,
  /** Title of the exercise. */
  exercise: z.string().max(LIMITS.labelLength),
  isMastered: z.boolean(),
});
/** What one hand-in says of what a learner can do, as the library keeps it. */
export type KeptMark = Readonly<z.infer<typeof keptMark>>;

const all = z.strictObject({ marks: z.array(keptMark) });

/** Calls on what learners showed in hand-ins that were graded here. Each answers with all that is kept. */
export const MARK_CALLS = {
  "marks.list": { argument: nothing, answer: all },
  "marks.keep": { argument: z.strictObject({ marks: z.array(keptMark).max(MOST_MARKS) }), answer: all },
  /** Forgets all that one learner showed. */
  "marks.forget": { argument: z.strictObject({ learner }), answer: all },
} as const satisfies Readonly<Record<string, Call>>;
