import type { Millimetres } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { reachOf } from "../diagnose/testPoint.ts";
import type { Branch, BranchControl, BranchLine, BranchRow } from "../live/branch.ts";
import { apartFrom, carriersOf } from "../live/branchRow.ts";
import { LEAST } from "./straightSize.ts";

/** A row of the branch on paper, with the same row of the branch with a fault where one is planted. */
export interface RowBand {
  readonly is: "row";
  readonly row: BranchRow;
  readonly faulty: BranchRow | null;
  /** Access group that it lies behind, or null. */
  readonly access: string | null;
  /** What moves its contacts besides hands. */
  readonly controls: readonly BranchControl[];
  /** The battery that the line begins with. */
  readonly isSource: boolean;
  /** The way back through the body, drawn with the battery: ground point and wire to battery −. */
  readonly back: readonly BranchRow[];
  readonly least: Millimetres;
}

/** A place where a line begins, ends, or goes over to another sheet. */
export interface EndBand {
  readonly is: "end";
  readonly words: string;
  readonly letter: string;
  readonly least: Millimetres;
}

/** Bold words before a line that is not the first. */
export interface HeadingBand {
  readonly is: "heading";
  readonly words: string;
  readonly note: string;
  readonly least: Millimetres;
}

/** A line of words over the whole width. */
export interface NoteBand {
  readonly is: "note";
  readonly words: string;
  readonly least: Millimetres;
}

/** What a sheet of a branch is made of, from top to bottom. */
export type Band = RowBand | EndBand | HeadingBand | NoteBand;

/** The bands of a line; of the same line with faults, `faulty` has the rows. */
export function bandsOf(
  circuit: Circuit,
  line: BranchLine,
  faulty: BranchLine | null,
  controls: readonly BranchControl[],
): readonly Band[] {
  const back = line.from === null && line.to === null ? backRows(line) : [];
  const shown = line.rows.slice(0, line.rows.length - back.length);
  const rows = shown.map((row, index): RowBand => {
    const isSource = index === 0 && row.is === "part" && row.contacts.length === 0 && row.entry.state === "grounded";
    const isLast = index === shown.length - 1;
    return {
      is: "row",
      row,
      faulty: faulty?.rows[index] ?? null,
      access: accessOf(circuit, row),
      controls: row.is === "part" && row.contacts.length > 0 ? controls.filter(({ part }) => part === row.part) : [],
      isSource,
      back: back.length > 0 && (isLast || isSource) ? back : [],
      least: isSource ? LEAST.source : leastOf(row),
    };
  });
  const last = shown.at(-1);
  const home = line.to ?? (last?.is === "wire" && last.exit.point !== null ? last.exit.point : null);
  return [...endBand(line.from, shown[0]), ...rows, ...endBand(home, last)];
}

/** The name of an end of a line; a splice or body that stands beside says it itself. */
function endBand(words: string | null, beside: BranchRow | undefined): readonly EndBand[] {
  const isSaid = beside?.is === "splice" || beside?.is === "ground";
  return words === null || isSaid ? [] : [{ is: "end", words, letter: "", least: LEAST.end }];
}

function leastOf(row: BranchRow): Millimetres {
  switch (row.is) {
    case "wire":
      return LEAST.wire;
    case "inline":
      return LEAST.inline;
    case "splice":
    case "link":
      return LEAST.joint;
    case "ground":
      return LEAST.ground;
    case "part":
      return LEAST.part;
  }
}

/** From the body on: a ground point and the wires from it to the battery. Nothing where the way back has other parts. */
function backRows({ rows }: BranchLine): readonly BranchRow[] {
  let first = rows.length;
  while (first > 0 && rows[first - 1]!.is === "wire") first--;
  const ground = rows[first - 1];
  if (ground?.is !== "ground" || ground.entry.point !== null || rows.length - first !== 1) return [];
  return rows.slice(first - 1);
}

/** The access group of a part, splice or ground point. */
function accessOf(circuit: Circuit, row: BranchRow): string | null {
  if (row.is === "wire" || row.is === "link") return null;
  return reachOf(circuit, row.entry.point ?? row.exit.point ?? row.part).access ?? null;
}

/** A line of a branch with its heading: null for the first. */
export interface Section {
  readonly heading: HeadingBand | null;
  readonly bands: readonly Band[];
}

/** What is told of a line that is not the first. */
export type HeadingFor = (of: BranchControl | BranchLine) => { readonly words: string; readonly note: string };

/** The lines of a branch in order: its own, then those of what controls it, without what the first lines show already. */
export function sectionsOf(
  circuit: Circuit,
  branch: Branch,
  faulty: Branch | null,
  headingFor: HeadingFor,
): readonly Section[] {
  const heading = (of: BranchControl | BranchLine): HeadingBand => ({
    is: "heading",
    ...headingFor(of),
    least: LEAST.heading,
  });
  const own = branch.lines.map(
    (line, index): Section => ({
      heading: index === 0 ? null : heading(line),
      bands: bandsOf(circuit, line, faulty?.lines[index] ?? null, branch.controls),
    }),
  );
  const told = new Set(carriersOf(branch.lines));
  const controls = branch.controls.flatMap((control, at): readonly Section[] => {
    const lines = control.lines.map((line, index) => {
      const other = faulty?.controls[at]?.lines[index] ?? null;
      return bandsOf(circuit, apartFrom(line, told), other && apartFrom(other, told), branch.controls);
    });
    for (const id of carriersOf(control.lines)) told.add(id);
    const [first = [], ...more] = lines;
    return [{ heading: heading(control), bands: first }, ...more.map((bands): Section => ({ heading: null, bands }))];
  });
  return [...own, ...controls];
}
