import type { Factor } from "./factor.ts";
import type { Pattern } from "./pattern.ts";

/**
 * Diagonal of the inverse, in ohms: the resistance from each unknown to the reference (size n). On a floating island
 * it is the resistance to the island's last column, which means nothing outside.
 * Method: Takahashi's recurrence, as in "On computing the inverse of a sparse matrix", Int. J. Numer. Meth. Eng. 19,
 * number 10: only entries at the places of the factor are needed, from the last column back. Every term is positive.
 * `off` is room for the entries beside it (size m); both are filled anew.
 */
export function inverseDiagonal(
  pattern: Pattern,
  factor: Factor,
  diagonal: Float64Array = new Float64Array(pattern.unknowns),
  off: Float64Array = new Float64Array(pattern.edges),
): Float64Array {
  const { unknowns, columnStart, rowOf, targetStart, target, betweenOf } = pattern;
  const { share, ohms } = factor;
  for (let j = unknowns - 1; j >= 0; j--) {
    const start = columnStart[j]!;
    const end = columnStart[j + 1]!;
    const middle = betweenOf[j]!;
    if (middle >= 0) {
      // Nearly all columns of a harness have two edges, with one entry between them.
      const one = share[start]!;
      const other = share[start + 1]!;
      const between = off[middle]!;
      const near = one * diagonal[rowOf[start]!]! + other * between;
      const far = other * diagonal[rowOf[start + 1]!]! + one * between;
      off[start] = near;
      off[start + 1] = far;
      diagonal[j] = ohms[j]! + one * near + other * far;
      continue;
    }
    for (let p = start; p < end; p++) off[p] = share[p]! * diagonal[rowOf[p]!]!;
    for (let p = start; p < end; p++) {
      const part = share[p]!;
      let sum = off[p]!;
      for (let q = p + 1, t = targetStart[p]!; q < end; q++, t++) {
        const between = off[target[t]!]!;
        sum += share[q]! * between;
        off[q] = off[q]! + part * between;
      }
      off[p] = sum;
    }
    let own = ohms[j]!;
    for (let p = start; p < end; p++) own += share[p]! * off[p]!;
    diagonal[j] = own;
  }
  return diagonal;
}
