import { type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";

/** Most characters of an id, as a circuit file takes it. */
const MOST_ID = 40;
/** Ids of parts and connectors begin with a letter; those of wires may begin with a digit. */
const SPELLINGS = {
  part: { shape: /^\p{L}[\p{L}\p{N}_/]*$/u, first: "a letter" },
  wire: { shape: /^[\p{L}\p{N}][\p{L}\p{N}_/]*$/u, first: "a letter or digit" },
} as const;

/** Every id that a new part, wire or connector cannot have: no two of them share one but the halves of an in-line joint. */
export function takenIds({ parts, wires, connectors }: Circuit): Set<string> {
  return new Set([...parts, ...wires, ...connectors].map(({ id }) => id));
}

/** The next designator of a letter: one above the highest, S7 after S6 also where there is no S3. */
export function nextId(letter: string, taken: ReadonlySet<string>): string {
  let highest = 0;
  for (const id of taken) {
    const number = id.startsWith(letter) ? id.slice(letter.length) : "";
    if (/^\d{1,9}$/.test(number)) highest = Math.max(highest, Number(number));
  }
  return `${letter}${highest + 1}`;
}

/** A new id in the manner of another, S7 for S5; by this letter where that one ends in no number or is too long. */
export function freshId(id: string, letter: string, taken: ReadonlySet<string>): string {
  const next = nextId(letterOf(id) ?? letter, taken);
  return next.length > MOST_ID ? nextId(letter, taken) : next;
}

/** The letters before an id's number, `S` of S5; null for an id that does not end in one. */
function letterOf(id: string): string | null {
  return /^(.*?)0*\d{1,9}$/.exec(id)?.[1] ?? null;
}

/**
 * Why a text cannot be an id: `id-empty`, `id-long`, `id-spelling`, or `id-taken` where a part, wire or connector has it.
 * Null where it can.
 */
export function idRefusal(circuit: Circuit, text: string, of: keyof typeof SPELLINGS): Refusal | null {
  if (text === "") return refuse("id-empty").refusal;
  if (text.length > MOST_ID) return refuse("id-long", { most: MOST_ID, length: text.length }).refusal;
  // Names that every object has by birth would find what nobody wrote.
  const { shape, first } = SPELLINGS[of];
  if (!shape.test(text) || text in Object.prototype) return refuse("id-spelling", { text, first }).refusal;
  return takenIds(circuit).has(text) ? refuse("id-taken", { id: text }).refusal : null;
}
