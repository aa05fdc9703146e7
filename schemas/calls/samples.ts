import { z } from "zod";
import { type Call, circuit, nothing, shortWords } from "./call.ts";

const sampleRow = z.strictObject({
  sample: shortWords,
  title: z.string(),
  vehicle: z.string(),
  pages: z.int(),
  parts: z.int(),
  wires: z.int(),
  scenes: z.int(),
  /** Questions that its scenes ask; a sample that asks any is a lesson. */
  questions: z.int(),
  /** Names of the exercises made of it. */
  exercises: z.array(shortWords),
});
/** A sample as the list of them shows it. */
export type SampleRow = z.infer<typeof sampleRow>;

/** Calls on the samples that come with the program. They work without a library. */
export const SAMPLE_CALLS = {
  "samples.list": { argument: nothing, answer: z.strictObject({ samples: z.array(sampleRow) }) },
  /** A sample to try; it is not in the library until it is created there. Refuses `sample-unknown`. */
  "samples.open": { argument: z.strictObject({ sample: shortWords }), answer: z.strictObject({ circuit }) },
  /** The file of an exercise that was made of a sample. Refuses `sample-unknown`. */
  "samples.exercise": {
    argument: z.strictObject({ exercise: shortWords }),
    answer: z.strictObject({ text: z.string() }),
  },
} as const satisfies Readonly<Record<string, Call>>;
