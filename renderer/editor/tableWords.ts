import type { Control, Position } from "../../core/parts/kind.ts";
import { positionTitle } from "../words/condition.ts";

/** A circle of the table for those who do not see it: "6 in Open, joined with 4". */
export function circleWords(terminal: string, position: string, partners: readonly string[]): string {
  const joined = partners.length === 0 ? "alone" : `joined with ${partners.join(" and ")}`;
  return `${terminal} in ${positionTitle(position)}, ${joined}`;
}

/** What the next press does once a circle is chosen. */
export function chosenWords(terminal: string, partners: readonly string[]): string {
  if (partners.length === 0) return `${terminal} is chosen, alone. Choose another to join them.`;
  const [only] = partners;
  const next = partners.length === 1 ? `Choose ${only} to part them.` : "Choose one of them to part it.";
  return `${terminal} is chosen, joined with ${partners.join(" and ")}. ${next}`;
}

/** What a position does when let go. */
export function springWords(position: Position, rest: string): string {
  if (position.springsBackTo === undefined) return "stays";
  return position.springsBackTo === rest
    ? "springs to rest"
    : `springs to ${position.springsBackTo.replaceAll("-", " ")}`;
}

/** A control of a panel as its tab calls it. */
export function controlWords({ name, label }: Control): string {
  return label ?? positionTitle(name);
}

/** A name for a new position that no other has. */
export function freshPosition(positions: readonly Position[]): string {
  const names = positions.map(({ name }) => name);
  const plain = ["off", "on"].find((name) => !names.includes(name) && positions.length < 2);
  if (plain !== undefined) return plain;
  for (let number = positions.length + 1; ; number++) {
    if (!names.includes(`position-${number}`)) return `position-${number}`;
  }
}

/** The lowest number that names no terminal yet. */
export function freshNumber(terminals: readonly string[]): string {
  for (let number = 1; ; number++) if (!terminals.includes(String(number))) return String(number);
}
