import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { type Fault, faultTitle } from "../live/fault.ts";

/** Faults that are named one by one; more are counted. */
const MOST_NAMED = 2;

/** What a sheet says of the faults that are drawn on it; empty where there is none. */
export function putInWords(circuit: Circuit, faults: readonly Fault[]): string {
  if (faults.length === 0) return "";
  const named = faults.slice(0, MOST_NAMED).map((fault) => faultTitle(circuit, fault));
  return WORDS.faultPutIn(named.join(", "), faults.length - named.length);
}
