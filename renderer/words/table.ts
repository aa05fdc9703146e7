import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import type { PositionColumn } from "../../core/diagnose/positionTable.ts";
import { controlTitle } from "./condition.ts";

/** Words in which each control is called by its name: "S2.rear open" as "S2 Rear open", "S1 on" as "Key on". */
export function withControlNames(circuit: Circuit, words: string): string {
  return controlsOf(circuit)
    .flatMap((control) =>
      control.control.positions.map(({ name }) => ({
        written: `${control.key} ${name}`,
        said: `${controlTitle(circuit, control)} ${name.replaceAll("-", " ")}`,
      })),
    )
    .toSorted((one, other) => other.written.length - one.written.length)
    .reduce((said, each) => said.replaceAll(each.written, each.said), words);
}

/** A position of a table in words, with what stands under it: "S6 open, held". */
export function columnTitle(circuit: Circuit, { title, under }: PositionColumn): string {
  return withControlNames(circuit, under === "" ? title : `${title}, ${under}`);
}

/** What else reads the same: by name where it is one position, else how many there are. */
export function sameAs(circuit: Circuit, { merged }: PositionColumn): string {
  const [only] = merged;
  if (only === undefined) return "";
  return merged.length === 1 ? `same: ${withControlNames(circuit, only)}` : `same in ${merged.length} other positions`;
}

/** All positions that read the same, by name. */
export function allSame(circuit: Circuit, { merged }: PositionColumn): string {
  return merged.map((each) => withControlNames(circuit, each)).join("\n");
}
