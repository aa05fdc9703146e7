import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";

/** Title of a circuit with its revision, where it has one. */
export function circuitTitle({ title, revision }: Circuit): string {
  return revision === undefined ? title : WORDS.revision(title, revision);
}
