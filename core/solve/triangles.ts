import type { Factor } from "./factor.ts";
import type { Pattern } from "./pattern.ts";

/**
 * Volts of the unknowns for the amps pushed into them, by one sweep down the columns and one back. `amps` (size n) is
 * used up; `volts` (size n) is filled. The last column of a floating island is held at 0 V.
 */
export function solveTriangles(pattern: Pattern, factor: Factor, amps: Float64Array, volts: Float64Array): void {
  const { unknowns, columnStart, rowOf } = pattern;
  const { share, ohms } = factor;
  for (let j = 0; j < unknowns; j++) {
    const pushed = amps[j]!;
    if (pushed === 0) continue;
    for (let p = columnStart[j]!, end = columnStart[j + 1]!; p < end; p++) {
      const row = rowOf[p]!;
      amps[row] = amps[row]! + share[p]! * pushed;
    }
  }
  for (let j = unknowns - 1; j >= 0; j--) {
    let sum = amps[j]! * ohms[j]!;
    for (let p = columnStart[j]!, end = columnStart[j + 1]!; p < end; p++) sum += share[p]! * volts[rowOf[p]!]!;
    volts[j] = sum;
  }
}
