import type { Millimetres } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { reachOf } from "../diagnose/testPoint.ts";
import type { Branch, BranchControl, BranchLine, BranchRow } from "../live/branch.ts";
import { apartFrom, carrierOf, carriersOf } from "../live/branchRow.ts";
import { LEAST } from "./straightSize.ts";

/** A row of the branch on paper, with the same row of the branch with a fault where one is planted. */
export interface RowBand {
  readonly is: "row";
  readonly row: BranchRow;
  readonly faulty: BranchRow | null;
  /** The branch that it is a row of. */
  readonly branch: Branch;
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
  /** A line begins here; false where it ends. */
  readonly isStart: boolean;
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
  branch: Branch,
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
      branch,
      access: accessOf(circuit, row),
      controls:
        row.is === "part" && row.contacts.length > 0 ? branch.controls.filter(({ part }) => part === row.part) : [],
      isSource,
      back: back.length > 0 && (isLast || isSource) ? back : [],
      least: isSource ? LEAST.source : leastOf(row),
    };
  });
  const last = shown.at(-1);
  const home = line.to ?? (last?.is === "wire" && last.exit.point !== null ? last.exit.point : null);
  return [...endBand(line.from, shown[0], true), ...rows, ...endBand(home, last, false)];
}

/** The name of an end of a line; a splice or body that stands beside says it itself. */
function endBand(words: string | null, beside: BranchRow | undefined, isStart: boolean): readonly EndBand[] {
  const isSaid = beside?.is === "splice" || beside?.is === "ground";
  return words === null || isSaid ? [] : [{ is: "end", words, letter: "", isStart, least: LEAST.end }];
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

/** The branch of the same load in another position, and what is said of it. */
export interface OtherBranch {
  readonly branch: Branch;
  readonly words: string;
  /** The position it stands in, in lines of the sheet's width. */
  readonly position: readonly string[];
}

/**
 * The lines of a branch in order: its own, those of what controls it, then what carries the load's current in other
 * positions; each without what is drawn before it.
 */
export function sectionsOf(
  circuit: Circuit,
  branch: Branch,
  faulty: Branch | null,
  headingFor: HeadingFor,
  others: readonly OtherBranch[],
): readonly Section[] {
  const heading = (of: BranchControl | BranchLine): HeadingBand => ({
    is: "heading",
    ...headingFor(of),
    least: LEAST.heading,
  });
  const own = branch.lines.map(
    (line, index): Section => ({
      heading: index === 0 ? null : heading(line),
      bands: bandsOf(circuit, line, faulty?.lines[index] ?? null, branch),
    }),
  );
  const told = new Set(carriersOf(branch.lines));
  const controls = branch.controls.flatMap((control, at): readonly Section[] => {
    const lines = control.lines.flatMap((line, index): readonly (readonly Band[])[] => {
      // A second way back that is drawn already, as most straps are, is not drawn again.
      if (index > 0 && isTold(line, told)) return [];
      const other = faulty?.controls[at]?.lines[index] ?? null;
      return [bandsOf(circuit, apartFrom(line, told), other && apartFrom(other, told), branch)];
    });
    for (const id of carriersOf(control.lines)) told.add(id);
    const [first = [], ...more] = lines;
    return [{ heading: heading(control), bands: first }, ...more.map((bands): Section => ({ heading: null, bands }))];
  });
  const elsewhere = others.flatMap(({ branch: other, words, position }): readonly Section[] => {
    const lines = other.lines.filter((line) => !isTold(line, told)).map((line) => apartFrom(line, told));
    for (const id of carriersOf(other.lines)) told.add(id);
    const notes = position.map((each): Band => ({ is: "note", words: each, least: LEAST.note }));
    return lines.map((line, index): Section => {
      const bands = bandsOf(circuit, line, null, other);
      if (index > 0) return { heading: null, bands };
      return { heading: { is: "heading", words, note: "", least: LEAST.heading }, bands: [...notes, ...bands] };
    });
  });
  return [...own, ...controls, ...elsewhere];
}

function isTold({ rows }: BranchLine, told: ReadonlySet<string>): boolean {
  return rows.every((row) => told.has(carrierOf(row)));
}
