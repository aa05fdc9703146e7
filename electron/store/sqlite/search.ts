import type { Circuit } from "../../../core/circuit/circuit.ts";
import { wordsOf, wordsTyped } from "../words.ts";
import type { Connection } from "./connect.ts";

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

/**
 * What a person typed as a question to the index: every word must be found as the beginning of one, in any order.
 * Null where it holds no word at all; such a search finds nothing.
 */
export function searchOf(typed: string): string | null {
  const words = wordsTyped(typed);
  if (words.length === 0) return null;
  return words.map((word) => `"${word.replaceAll('"', '""').replaceAll("\u0000", "")}"*`).join(" ");
}
