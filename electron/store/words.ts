import type { Circuit } from "../../core/circuit/circuit.ts";

/** Most words of a search that count. */
const MOST_WORDS = 12;

/** What a circuit is found by beside its title and vehicle: every name, label and colour in it, a line each. */
export function wordsOf(circuit: Circuit): string {
  const words = new Set<string>();
  const take = (...texts: readonly (string | undefined)[]): void => {
    for (const text of texts) if (text) words.add(text);
  };
  for (const { title } of circuit.pages) take(title);
  for (const { id, label, kind } of circuit.parts) take(id, label, kind);
  for (const { id, colour } of circuit.wires) take(id, colour);
  for (const { id, label } of circuit.connectors) take(id, label);
  for (const { label } of circuit.access) take(label);
  for (const { label } of circuit.checks) take(label);
  return [...words].join("\n");
}

/** The words that a person typed to search by, the first twelve; none where there is no letter and no digit in them. */
export function wordsTyped(typed: string): readonly string[] {
  return typed
    .split(/\s+/)
    .filter((word) => /[\p{L}\p{N}]/u.test(word))
    .slice(0, MOST_WORDS);
}
