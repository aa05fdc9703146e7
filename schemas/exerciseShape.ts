import { z } from "zod";
import { INSTRUMENTS } from "../core/diagnose/reading.ts";
import { LIMITS } from "./limits.ts";
import { ROUNDS_LIMITS } from "./seal.ts";

/** Most signs of a sealed text: far more than any fault takes. */
const MOST_SEALED = 200_000;

const sealed = z
  .string()
  .max(MOST_SEALED)
  .regex(/^([0-9a-f]{2})+$/);

/** An exercise's own fields beside its circuit, which has its own schema; a title and what is told are what the instructor typed. */
export const exerciseShape = z.strictObject({
  format: z.literal("wirefathom/exercise"),
  version: z.literal(1),
  title: z.string().max(LIMITS.labelLength),
  complaint: z.string().min(1).max(LIMITS.idLength),
  word: z.enum(["dead", "weak", "wrong"]),
  told: z.string().max(LIMITS.textLength),
  instruments: z.array(z.enum(INSTRUMENTS)).min(1).max(INSTRUMENTS.length),
  hints: z.strictObject({ count: z.int().min(0).max(100), minutes: z.number().min(0).max(1_000) }),
  tellsAtOnce: z.boolean(),
  circuit: z.unknown(),
  seal: z.strictObject({
    salt: sealed,
    rounds: z.int().min(ROUNDS_LIMITS.least).max(ROUNDS_LIMITS.most),
    forInstructor: sealed,
    forProgram: sealed,
    content: sealed,
  }),
});

/** What lies under the seal. */
export const hiddenShape = z.strictObject({
  fault: z.string().min(1).max(LIMITS.bytes),
  seed: z.int().nullable(),
  note: z.string().max(LIMITS.textLength),
});
