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

/**
 * A set of unknowns that holds every unknown above one of its own in the elimination tree. What is pushed into them
 * alone moves them alone until the last sweep back, and their volts hang on no others.
 */
export interface Reach {
  /** Its columns, and the edges of its columns and of all others, each rising. */
  readonly columns: Int32Array;
  readonly near: Int32Array;
  readonly far: Int32Array;
}

/** The least such set with the unknowns at the ends of these elements. */
export function reachOf(pattern: Pattern, elements: Int32Array): Reach {
  const { aOf, bOf, parentOf, columnOf, columnStart } = pattern;
  const isIn = new Uint8Array(parentOf.length);
  let columnCount = 0;
  let nearCount = 0;
  for (let k = 0; k < 2 * elements.length; k++) {
    const e = elements[k >> 1]!;
    for (let column = k & 1 ? bOf[e]! : aOf[e]!; column >= 0 && isIn[column] === 0; column = parentOf[column]!) {
      isIn[column] = 1;
      columnCount++;
      nearCount += columnStart[column + 1]! - columnStart[column]!;
    }
  }
  const columns = new Int32Array(columnCount);
  const near = new Int32Array(nearCount);
  const far = new Int32Array(columnOf.length - nearCount);
  for (let column = 0, k = 0; column < isIn.length; column++) if (isIn[column] === 1) columns[k++] = column;
  for (let p = 0, nears = 0, fars = 0; p < columnOf.length; p++) {
    if (isIn[columnOf[p]!] === 1) near[nears++] = p;
    else far[fars++] = p;
  }
  return { columns, near, far };
}

/** As `solveTriangles`, where nothing is pushed outside the reach; fills the volts of the reach, and 0 elsewhere. */
export function solveNear(
  pattern: Pattern,
  factor: Factor,
  reach: Reach,
  amps: Float64Array,
  volts: Float64Array,
): void {
  const { rowOf, columnOf } = pattern;
  const { share, ohms } = factor;
  const { columns, near } = reach;
  for (let k = 0; k < near.length; k++) {
    const p = near[k]!;
    const row = rowOf[p]!;
    amps[row] = amps[row]! + share[p]! * amps[columnOf[p]!]!;
  }
  volts.fill(0);
  for (let k = 0; k < columns.length; k++) volts[columns[k]!] = amps[columns[k]!]! * ohms[columns[k]!]!;
  sweepBack(pattern, factor, near, volts);
}

/** Fills the volts outside the reach from those inside. */
export function solveFar(pattern: Pattern, factor: Factor, reach: Reach, volts: Float64Array): void {
  sweepBack(pattern, factor, reach.far, volts);
}

function sweepBack({ rowOf, columnOf }: Pattern, { share }: Factor, edges: Int32Array, volts: Float64Array): void {
  for (let k = edges.length - 1; k >= 0; k--) {
    const p = edges[k]!;
    const column = columnOf[p]!;
    volts[column] = volts[column]! + share[p]! * volts[rowOf[p]!]!;
  }
}
