import type { Factor } from "./factor.ts";
import type { Pattern } from "./pattern.ts";

/** The island that holds the reference. */
export const GROUNDED = -1;

/**
 * Which island each unknown lies on (size n): `GROUNDED`, or the last column of a floating one. Exact, with no
 * threshold: what conducts anything at all has an edge or a leak above 0.
 */
export function islandsOf(pattern: Pattern, factor: Factor): Int32Array {
  const { unknowns, columnStart, rowOf } = pattern;
  const { leak, edge } = factor;
  const island = new Int32Array(unknowns);
  for (let j = unknowns - 1; j >= 0; j--) {
    let found = leak[j]! > 0 ? GROUNDED : j;
    for (let p = columnStart[j]!, end = columnStart[j + 1]!; p < end && found === j; p++) {
      if (edge[p]! > 0) found = island[rowOf[p]!]!;
    }
    island[j] = found;
  }
  return island;
}
