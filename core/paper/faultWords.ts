import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { type Fault, faultModes, targetOf } from "../live/fault.ts";
import { plainNumber } from "./range.ts";

/** Faults that are named one by one; more are counted. */
const MOST_NAMED = 2;

/** A fault in words, what fails and how: "W46 broken", "S6 contact worn 1.5 Ω". */
export function faultWords(circuit: Circuit, { target: id, mode: name, value }: Fault): string {
  const target = targetOf(circuit, id);
  const mode = target && faultModes(circuit, target).find(({ mode: each }) => each === name);
  const amount =
    typeof value === "number"
      ? ` ${plainNumber(value)} ${mode?.value?.unit ?? ""}`
      : typeof value === "string"
        ? ` ${value}`
        : "";
  return WORDS.fails(id, `${mode?.title ?? name}${amount.trimEnd()}`);
}

/** What a sheet says of the faults that are drawn on it; empty where there is none. */
export function putInWords(circuit: Circuit, faults: readonly Fault[]): string {
  if (faults.length === 0) return "";
  const named = faults.slice(0, MOST_NAMED).map((fault) => faultWords(circuit, fault));
  return WORDS.faultPutIn(named.join(", "), faults.length - named.length);
}
