import type { Factor } from "./factor.ts";
import type { Pattern } from "./pattern.ts";

/** The island that holds the reference. */
export const GROUNDED = -1;

/**
 * Which island each unknown lies on (size n): `GROUNDED`, or the last column of a floating one. Exact, with no
 * threshold: what conducts anything at all has an edge or a leak above 0.
 */
export function islandsOf(pattern: Pattern, factor: Factor): Int32Array {
  const { unknowns, rowOf, columnOf } = pattern;
  const { leak, edge } = factor;
  const island = new Int32Array(unknowns);
  for (let j = 0; j < unknowns; j++) island[j] = leak[j]! > 0 ? GROUNDED : j;
  for (let p = rowOf.length - 1; p >= 0; p--) {
    const column = columnOf[p]!;
    if (island[column] === column && edge[p]! > 0) island[column] = island[rowOf[p]!]!;
  }
  return island;
}
