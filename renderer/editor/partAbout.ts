import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalsOf } from "../../core/circuit/points.ts";
import { lowerCase } from "../../core/edit/editOf.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Control, Part } from "../../core/parts/kind.ts";

const NUMBERS = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];

/** A part in one line: "switch, five terminals, springs back both ways". */
export function partAbout(circuit: Circuit, part: Part): string {
  const kind = kindOf(part.kind);
  if (!kind) return part.kind;
  const noun = kind.role === "electronics" ? "pin" : "terminal";
  const handles = isTable(kind.controls(part)) ? handleWords(kind.controls(part)) : [];
  return [lowerCase(kind.title), several(terminalsOf(circuit, part).length, noun), ...handles].join(", ");
}

/** Some track of a potentiometer is a control too, but none whose positions join anything. */
function isTable(controls: readonly Control[]): boolean {
  return controls.some(({ positions }) => positions.some(({ joins }) => joins.length > 0));
}

function handleWords(controls: readonly Control[]): readonly string[] {
  const [only] = controls;
  if (!only) return [];
  if (controls.length > 1) return [several(controls.length, "control")];
  const thrown = only.positions.slice(1);
  const springing = thrown.filter(({ springsBackTo }) => springsBackTo !== undefined);
  if (springing.length === 0) return thrown.length < 2 ? [] : [several(only.positions.length, "position")];
  if (springing.length < thrown.length)
    return [several(only.positions.length, "position"), `springs back from ${springing.map(said).join(" and ")}`];
  return thrown.length === 2 ? ["springs back both ways"] : ["springs back"];
}

function said({ name }: { readonly name: string }): string {
  return name.replaceAll("-", " ");
}

function several(count: number, noun: string): string {
  return `${NUMBERS[count] ?? count} ${count === 1 ? noun : `${noun}s`}`;
}
