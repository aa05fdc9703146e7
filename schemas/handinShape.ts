import { z } from "zod";
import { JOB_LIMITS } from "../core/diagnose/job.ts";
import { INSTRUMENTS } from "../core/diagnose/reading.ts";
import type { Recorded } from "../core/lesson/move.ts";
import { LIMITS } from "./limits.ts";
import { plainLine } from "./plainLine.ts";

const name = z
  .string()
  .min(1)
  .max(2 * LIMITS.idLength + 1);
const minutes = z.number().min(0).max(100_000);
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const time = z.string().max(40).nullable();

const move = z.discriminatedUnion("do", [
  z.strictObject({ do: z.literal("throw"), control: name, position: name }),
  z.strictObject({ do: z.literal("try"), check: name }),
  z.strictObject({ do: z.literal("engine"), running: z.boolean() }),
  z.strictObject({ do: z.literal("open"), access: name }),
  z.strictObject({ do: z.enum(["unplug", "plug-in"]), connector: name }),
  z.strictObject({ do: z.enum(["take-out", "put-in", "renew"]), part: name }),
  z.strictObject({
    do: z.literal("probe"),
    red: name,
    black: name,
    instrument: z.enum(INSTRUMENTS),
    lampTo: z.enum(["battery +", "battery -", "black"]).nullable(),
  }),
  z.strictObject({ do: z.literal("hint") }),
  z.strictObject({
    do: z.literal("verdict"),
    suspect: z.string().min(1).max(JOB_LIMITS.suspect),
    proof: z.array(z.int().min(1)).max(LIMITS.moves),
  }),
]);

const answer = z.strictObject({
  shows: z
    .strictObject({
      volts: z.number().min(-2_000).max(2_000).nullable(),
      ohms: z.number().min(0).exactOptional(),
      amps: z.number().min(0).exactOptional(),
      word: z.string().max(LIMITS.textLength).nullable(),
    })
    .nullable(),
  loads: z.array(z.strictObject({ part: name, does: name })).max(LIMITS.parts),
  checks: z.record(name, z.enum(["works", "weak", "dead", "wrong"])),
  hint: z.string().max(LIMITS.textLength).nullable(),
});

/** A move on the route, as a hand-in holds it before its link of the chain. */
export const recordedShape = z.strictObject({ move, minutes, answer, time });

/** A learner's name: one short line of plain signs, since it stands in the class's table and on the screen of a terminal. */
export const learnerShape = plainLine(LIMITS.labelLength);

/** The shape of a `*.handin.json` of version 1. */
export const handinShape = z.strictObject({
  format: z.literal("wirefathom/handin"),
  version: z.literal(1),
  learner: learnerShape,
  exercise: z.strictObject({ title: z.string().max(LIMITS.labelLength), id: hash }),
  head: hash,
  route: z.array(recordedShape.extend({ link: hash })).max(LIMITS.moves),
  signature: hash,
});

type Frozen<T> = T extends readonly (infer _)[] | object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;

/** Fails to compile where the schema gives what is no move on a route. */
export const shapeIsRecorded = (read: Frozen<z.infer<typeof recordedShape>>): Recorded => read;
