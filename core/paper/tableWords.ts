import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { controlsOf } from "../circuit/points.ts";
import { printedPosition } from "../circuit/positionWords.ts";
import type { PositionTable } from "../diagnose/positionTable.ts";
import { listed } from "./listed.ts";
import type { ColumnHead } from "./tableHead.ts";
import { controlName } from "./throws.ts";

/** Marks of columns that others read the same as, in the order of their notes. */
const MARKS = ["*", "†", "‡", "§"];
/** Names in a note; more are counted. */
export const MOST_SAME = 3;

/** The words over each column, positions as printed on the switches; a mark where a note says what reads the same. */
export function columnHeads(circuit: Circuit, { columns }: PositionTable): readonly ColumnHead[] {
  const marks = marksOf(columns);
  return columns.map(({ title, under, plugged }, i) => ({
    title: `${asPrinted(circuit, title)}${marks[i]}`,
    under: asPrinted(circuit, under),
    plugged,
  }));
}

/** The notes to the marked columns from one to another: which positions read the same, by name or by their number alone. */
export function sameNotes(
  circuit: Circuit,
  { columns }: PositionTable,
  [from, to]: readonly [number, number],
  most: number,
): readonly string[] {
  const marks = marksOf(columns);
  const notes = columns.slice(from, to).flatMap(({ title, merged }, i) => {
    if (merged.length === 0) return [];
    const printed = merged.map((each) => asPrinted(circuit, each));
    const names = most === 0 ? WORDS.positions(printed.length) : listed(printed, ", ", most);
    return [`${marks[from + i]} ${WORDS.readsTheSame(asPrinted(circuit, title), names)}`];
  });
  return [...new Set(notes)];
}

/** A mark for each column that others read the same as; columns of the same words share theirs. */
function marksOf(columns: PositionTable["columns"]): readonly string[] {
  const seen: string[] = [];
  return columns.map(({ title, merged }) => {
    if (merged.length === 0) return "";
    const key = JSON.stringify([title, merged]);
    if (!seen.includes(key)) seen.push(key);
    const index = seen.indexOf(key);
    const mark = MARKS[index % MARKS.length]!;
    return mark.repeat(1 + Math.floor(index / MARKS.length));
  });
}

/** Words in which every control and position of the circuit is written as on the vehicle: "S5 open" as "S5 OPEN". */
function asPrinted(circuit: Circuit, words: string): string {
  let printed = words;
  for (const { key, control } of controlsOf(circuit)) {
    if (!words.includes(key)) continue;
    for (const { name } of control.positions) {
      const pattern = new RegExp(`(?<![\\p{L}\\p{N}_.-])${escaped(`${key} ${name}`)}(?![\\p{L}\\p{N}_-])`, "gu");
      printed = printed.replace(pattern, () => `${controlName(circuit, key)} ${printedPosition(name)}`);
    }
  }
  return printed;
}

function escaped(words: string): string {
  return words.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");
}
