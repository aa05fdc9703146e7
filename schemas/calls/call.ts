import { z } from "zod";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { circuitOf } from "../circuit.ts";
import type { Json } from "../json.ts";
import { LIMITS } from "../limits.ts";

/** One thing a page can ask: the schema of what it sends, and of what it gets where nothing is refused. */
export interface Call {
  readonly argument: z.ZodType;
  readonly answer: z.ZodType;
}

/** What a call may carry at most, in characters of JSON. */
export const CALL_LIMITS = {
  /** A whole call as it travels. */
  text: 96_000_000,
  /** The state of a bench with its undo history. */
  bench: 40_000_000,
  /** A file's content on its way to the disk; a circuit that is packed with its pictures is the largest. */
  content: 88_000_000,
  search: 200,
  rows: 500,
} as const;

/** Signs of base64 that so many bytes take: four for every three. */
export function base64Length(bytes: number): number {
  return 4 * Math.ceil(bytes / 3);
}

/** A call that needs nothing said. */
export const nothing = z.strictObject({});

/** The id of a circuit in the library. */
export const circuitId = z.string().min(1).max(60);

/** A moment, as ISO 8601 text in UTC. */
export const moment = z.string().max(30);

/** What an edit is called, and other short words. */
export const shortWords = z.string().max(LIMITS.labelLength);

/** The title of a circuit, as a person types it. */
export const title = z.string().trim().min(1).max(LIMITS.labelLength);

/**
 * A circuit that a page sends: held to the file's shape and rules, and put into its one spelling. What is wrong with it
 * comes out as the refusal that reading its file would give.
 */
export const circuit = z.custom<Circuit>(isObject).transform((sent, context): Circuit => {
  const outcome = circuitOf(sent as unknown as Json);
  if (outcome.ok) return outcome.value;
  context.addIssue({ code: "custom", params: { refusal: outcome.refusal } });
  return z.NEVER;
});

/**
 * The state of a bench beside its circuit (condition, faults, undo history), written by the page and opaque to the host.
 * It must not hold the circuit: the library may rename a circuit while it is closed.
 */
export const bench = z.string().max(CALL_LIMITS.bench);

/** A refusal as plain data. */
export const refusal = z.strictObject({
  code: z.string(),
  about: z.record(z.string(), z.union([z.string(), z.number()])),
});

function isObject(sent: unknown): boolean {
  return typeof sent === "object" && sent !== null && !Array.isArray(sent);
}
