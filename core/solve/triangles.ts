import type { Factor } from "./factor.ts";
import type { Pattern } from "./pattern.ts";

// Most columns have one edge or two, so that sweeps run along lists of edges: loops so short would cost more than they do.

/**
 * Volts of the unknowns for the amps pushed into them, by one sweep down the columns and one back. `amps` (size n) is
 * used up; `volts` (size n) is filled. The last column of a floating island is held at 0 V.
 */
export function solveTriangles(pattern: Pattern, factor: Factor, amps: Float64Array, volts: Float64Array): void {
  const { rowOf, columnOf } = pattern;
  const { share, ohms } = factor;
  for (let p = 0; p < rowOf.length; p++) {
    const row = rowOf[p]!;
    amps[row] = amps[row]! + share[p]! * amps[columnOf[p]!]!;
  }
  for (let j = 0; j < volts.length; j++) volts[j] = amps[j]! * ohms[j]!;
  for (let p = rowOf.length - 1; p >= 0; p--) {
    const column = columnOf[p]!;
    volts[column] = volts[column]! + share[p]! * volts[rowOf[p]!]!;
  }
}

/** Some columns and their edges, each rising. */
export interface Columns {
  readonly columns: Int32Array;
  readonly edges: Int32Array;
}

/** The unknowns in three parts, of which each hangs on itself and those before it alone, in the order of their volts. */
export interface Reach {
  /** Those at elements that push, and all above them in the elimination tree: nothing arrives anywhere else. */
  readonly near: Columns;
  /** What else is at elements that are watched, and above them; and the rest. */
  readonly watched: Columns;
  readonly rest: Columns;
  /** Which part each unknown is in. Size n. */
  readonly partOf: Uint8Array;
}

/** Parts of a reach by number: those with a number up to how far it is filled have their volts. */
export const NEAR = 0;
/** Its second part. */
export const WATCHED = 1;
/** Its third part. */
export const REST = 2;

/** The least parts for these elements. */
export function reachOf(pattern: Pattern, pushing: Int32Array, watched: Int32Array): Reach {
  const partOf = new Uint8Array(pattern.unknowns).fill(REST);
  raise(pattern, partOf, pushing, NEAR);
  raise(pattern, partOf, watched, WATCHED);
  const [near, watch, rest] = [NEAR, WATCHED, REST].map((part) => columnsIn(pattern, partOf, part));
  return { near: near!, watched: watch!, rest: rest!, partOf };
}

/** Puts the unknowns at the ends of these elements into a part, and all above them, but what is in an earlier one. */
function raise({ aOf, bOf, parentOf }: Pattern, partOf: Uint8Array, elements: Int32Array, part: number): void {
  for (let k = 0; k < 2 * elements.length; k++) {
    const e = elements[k >> 1]!;
    for (let column = k & 1 ? bOf[e]! : aOf[e]!; column >= 0 && partOf[column]! > part; column = parentOf[column]!)
      partOf[column] = part;
  }
}

function columnsIn({ columnOf, columnStart }: Pattern, partOf: Uint8Array, part: number): Columns {
  let [columnCount, edgeCount] = [0, 0];
  for (let column = 0; column < partOf.length; column++) {
    if (partOf[column] !== part) continue;
    columnCount++;
    edgeCount += columnStart[column + 1]! - columnStart[column]!;
  }
  const columns = new Int32Array(columnCount);
  const edges = new Int32Array(edgeCount);
  for (let column = 0, k = 0; k < columnCount; column++) if (partOf[column] === part) columns[k++] = column;
  for (let p = 0, k = 0; k < edgeCount; p++) if (partOf[columnOf[p]!] === part) edges[k++] = p;
  return { columns, edges };
}

/** Fills the volts of the near part from the amps that arrive at its columns; those of others are not touched. */
export function solveNear(
  pattern: Pattern,
  factor: Factor,
  { near }: Reach,
  arrived: Float64Array,
  volts: Float64Array,
): void {
  const { columns, edges } = near;
  const { ohms } = factor;
  for (let k = 0; k < columns.length; k++) volts[columns[k]!] = arrived[columns[k]!]! * ohms[columns[k]!]!;
  sweepBack(pattern, factor, edges, volts);
}

/** Fills the volts of a later part, where nothing arrives, from those of the earlier ones. */
export function solveLater(pattern: Pattern, factor: Factor, { columns, edges }: Columns, volts: Float64Array): void {
  for (let k = 0; k < columns.length; k++) volts[columns[k]!] = 0;
  sweepBack(pattern, factor, edges, volts);
}

function sweepBack({ rowOf, columnOf }: Pattern, { share }: Factor, edges: Int32Array, volts: Float64Array): void {
  for (let k = edges.length - 1; k >= 0; k--) {
    const p = edges[k]!;
    const column = columnOf[p]!;
    volts[column] = volts[column]! + share[p]! * volts[rowOf[p]!]!;
  }
}
