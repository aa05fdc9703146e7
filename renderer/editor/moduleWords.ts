import type { PinRole, WhenThen } from "../../core/parts/kind.ts";

/** What a pin of a module is, in the order in which it is offered. */
export const ROLES: readonly (readonly [PinRole, string])[] = [
  ["supply", "supply"],
  ["ground", "ground"],
  ["input", "input"],
  ["drives-high", "drives to feed"],
  ["drives-low", "drives to ground"],
  ["unknown", "not known"],
];

/** A row of the when-then table in words: "rain low: 30 and close joined". */
export function rowWords({ when, joins }: WhenThen): string {
  const asked = Object.entries(when).map(([pin, level]) => `${pin} ${level}`);
  const done = joins.map(([a, b]) => `${a} and ${b}`);
  const then = done.length === 0 ? "nothing joined" : `${done.join(", ")} joined`;
  return `${asked.length === 0 ? "always" : asked.join(" and ")}: ${then}`;
}

/** A row that asks a pin for a level, or for none. */
export function asked(row: WhenThen, pin: string, level: "high" | "low" | null): WhenThen {
  const { [pin]: _, ...others } = row.when;
  return { ...row, when: level === null ? others : { ...others, [pin]: level } };
}
