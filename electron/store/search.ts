import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Connection } from "./connect.ts";

/** Most words of a search that count. */
const MOST_WORDS = 12;

/** Puts what a circuit is found by in place of what was there: title, vehicle, and every name, label and colour in it. */
export function indexCircuit(connection: Connection, key: number, circuit: Circuit): void {
  connection
    .prepare("INSERT OR REPLACE INTO search (rowid, title, vehicle, words) VALUES (?, ?, ?, ?)")
    .run(key, circuit.title, circuit.vehicle ?? "", wordsOf(circuit));
}

/** Forgets what a circuit is found by. */
export function forgetWords(connection: Connection, key: number): void {
  connection.prepare("DELETE FROM search WHERE rowid = ?").run(key);
}

function wordsOf(circuit: Circuit): string {
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

/**
 * What a person typed as a question to the index: every word must be found as the beginning of one, in any order.
 * Null where it holds no word at all; such a search finds nothing.
 */
export function searchOf(typed: string): string | null {
  const words = typed.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word));
  if (words.length === 0) return null;
  return words
    .slice(0, MOST_WORDS)
    .map((word) => `"${word.replaceAll('"', '""').replaceAll("\u0000", "")}"*`)
    .join(" ");
}
