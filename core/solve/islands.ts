import type { Factor } from "./factor.ts";
import type { Pattern } from "./pattern.ts";

/** The island that holds the reference. */
export const GROUNDED = -1;

/**
 * Which island each unknown lies on (size n): `GROUNDED`, or the last column of a floating one. Exact, with no
 * threshold: what conducts anything at all has an edge or a leak above 0. `island` is room for it (size n).
 */
export function islandsOf(
  pattern: Pattern,
  factor: Factor,
  island: Int32Array = new Int32Array(pattern.unknowns),
): Int32Array {
  const { unknowns, rowOf, columnStart } = pattern;
  const { leak, edge } = factor;
  for (let j = unknowns - 1; j >= 0; j--) {
    if (leak[j]! > 0) {
      island[j] = GROUNDED;
      continue;
    }
    // All that a column has an edge to lies on its island.
    let p = columnStart[j]!;
    const end = columnStart[j + 1]!;
    while (p < end && edge[p] === 0) p++;
    island[j] = p < end ? island[rowOf[p]!]! : j;
  }
  return island;
}

/** Whether one unknown lies on a floating island, as `islandsOf` tells of all. */
export function isAfloat({ rowOf, columnStart }: Pattern, { leak, edge }: Factor, unknown: number): boolean {
  for (let j = unknown; leak[j] === 0; ) {
    let p = columnStart[j]!;
    const end = columnStart[j + 1]!;
    while (p < end && edge[p] === 0) p++;
    if (p === end) return true;
    j = rowOf[p]!;
  }
  return false;
}
