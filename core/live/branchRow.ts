import type { ControlKey, PartId, PointId, WireId } from "../base/ids.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, Volts } from "../base/units.ts";
import type { Tap } from "./branchTaps.ts";

/** One end of a row: its point as a wire names it, null at a body; its state and volts as they are now. */
export interface BranchEnd {
  readonly point: PointId | null;
  readonly state: WireState;
  /** To the battery's negative post; null where it floats. */
  readonly volts: Volts | null;
  /** The good circuit's. */
  readonly goodVolts: Volts | null;
}

/** Where a control stands that opens or closes a contact of the line. */
export interface BranchControlPosition {
  readonly key: ControlKey;
  /** Its name on a panel of several; "" for the only one. */
  readonly name: string;
  readonly position: string;
  readonly rest: string;
  readonly isHeld: boolean;
}

interface AnyRow {
  /** Unlike that of any other row of its line. */
  readonly id: string;
  /** Id of its part or wire, place of an in-line joint `X32-1`, name of a page link. */
  readonly name: string;
  readonly entry: BranchEnd;
  readonly exit: BranchEnd;
  /** Amps in the good circuit through the whole of it, and the load's part of them. */
  readonly goodAmps: Amps;
  readonly share: Amps;
  /** What else hangs on its exit. */
  readonly taps: readonly Tap[];
}

/** A wire of the line. */
export interface BranchWire extends AnyRow {
  readonly is: "wire";
  readonly wire: WireId;
  /** True where it is passed from its to end to its from end. */
  readonly isBack: boolean;
  /** Amps now, in the line's direction. */
  readonly amps: Amps;
}

/** A part of the line, by the two terminals that are passed. */
export interface BranchPart extends AnyRow {
  /** A stud on which two wires of the line meet is a splice too. */
  readonly is: "part" | "inline" | "splice" | "ground";
  readonly part: PartId;
  /** Names of its terminals; "" inside or at a body. */
  readonly terminals: readonly [string, string];
  /** The contacts passed, and whether all of them are closed now; null where none is passed. */
  readonly contacts: readonly string[];
  readonly isClosed: boolean | null;
  /** Whether the contacts are closed with nothing thrown. */
  readonly isRest: boolean;
  /** Terminal on which a contact would stand at rest, where it stands elsewhere now. */
  readonly restTerminal: string | null;
  readonly controls: readonly BranchControlPosition[];
  /** State of the part now: "pulled-in", "melted". */
  readonly state: string;
  /** Whether it does the work that the line is for. */
  readonly isLoad: boolean;
}

/** Page links of one name that the line leaves a page by and comes back on another. */
export interface BranchLink extends AnyRow {
  readonly is: "link";
  readonly parts: readonly PartId[];
}

/** One row of a line, from battery + to battery −. */
export type BranchRow = BranchWire | BranchPart | BranchLink;

/** Rows in the order in which current passes them. */
export interface BranchLine {
  readonly rows: readonly BranchRow[];
  /** Point, splice or body where it parts from a line before and where it joins it again; null for a line of its own. */
  readonly from: string | null;
  readonly to: string | null;
}

/** What moves a contact of a line, or what a module looks at before it closes one. */
export interface BranchControl {
  /** The part in whose hand it is. */
  readonly part: PartId;
  /** "coil", or the name of a module's pin. */
  readonly what: string;
  readonly sort: "coil" | "supply" | "ground" | "input";
  /** The state of the part that the line needs it for. */
  readonly state: string;
  /** Level an input must see. */
  readonly wanted: "high" | "low" | null;
  readonly pin: BranchEnd;
  /** Amps in the good circuit; 0 where it carries none. */
  readonly goodAmps: Amps;
  readonly lines: readonly BranchLine[];
}

/** Parts that a line passes, in order; joins are left out. */
export function partsOf({ rows }: BranchLine): readonly PartId[] {
  return rows.flatMap((row) => (row.is === "part" ? [row.part] : []));
}

/** Wires that a line passes, in order. */
export function wiresOf({ rows }: BranchLine): readonly WireId[] {
  return rows.flatMap((row) => (row.is === "wire" ? [row.wire] : []));
}

/** Wires and parts of some lines, to know what of another line is shared with them. */
export function carriersOf(lines: readonly BranchLine[]): ReadonlySet<string> {
  return new Set(lines.flatMap(({ rows }) => rows.map(carrierOf)));
}

/** What tells a row apart: its wire or link, or its part by the two terminals that are passed. */
export function carrierOf(row: BranchRow): string {
  return row.is === "wire" || row.is === "link" ? row.name : `${row.name} ${row.terminals.join("-")}`;
}

/**
 * A line without the stretches at its ends that others carry too, and where it leaves them and joins them. The whole line
 * where it shares nothing, and where it shares all.
 */
export function apartFrom(line: BranchLine, others: ReadonlySet<string>): BranchLine {
  const isOwn = (row: BranchRow): boolean => !others.has(carrierOf(row));
  let first = line.rows.findIndex(isOwn);
  if (first < 0) return line;
  let end = line.rows.length;
  while (!isOwn(line.rows[end - 1]!)) end--;
  // A stud on which it leaves or joins is the place itself.
  if (first > 0 && isStud(line.rows[first]!)) first += 1;
  if (end < line.rows.length && isStud(line.rows[end - 1]!)) end -= 1;
  const rows = line.rows.slice(first, end);
  return {
    rows,
    from: first === 0 ? line.from : leaving(line.rows, first),
    to: end === line.rows.length ? line.to : leaving(line.rows, end),
  };
}

/** The place between a row and the one before it, by the point of either; a splice or a body by its name. */
function leaving(rows: readonly BranchRow[], at: number): string {
  const [before, after] = [rows[at - 1]!, rows[at]!];
  if (before.is === "splice" && !isStud(before)) return before.name;
  if (after.is === "splice" && !isStud(after)) return after.name;
  return after.entry.point ?? before.exit.point ?? before.name;
}

/** A stud is entered and left by one point, a splice passed from leg to leg. */
function isStud(row: BranchRow): boolean {
  return row.is === "splice" && row.entry.point !== null && row.entry.point === row.exit.point;
}
