import { isBalanced } from "./balance.ts";
import { type Companion, drawAt, voltsOver } from "./companion.ts";
import { refactor } from "./factor.ts";
import { ampsAcross } from "./laws.ts";
import type { Work } from "./newton.ts";
import { REST, solveTriangles } from "./triangles.ts";

/** No unknown moves by more volts than this in a pass. */
const LONGEST_STEP = 100;
/** The step is cut until the slope along it has fallen to this share of the slope at its start. */
const FLAT_ENOUGH = 0.25;
const CUTS = 60;

/**
 * Newton's method with steps cut to measure, from 0 V. Every law rises or stays level, so the volts sought are the
 * lowest point of a convex function, whose gradient is the balance; going down it along each step until it is nearly
 * level must arrive. Slower than the guarded search, and there for where that fails.
 * That function is the co-content of W. Millar, "Some general theorems for non-linear systems possessing resistance",
 * Philosophical Magazine 42 (1951).
 */
export function searchDamped(companion: Companion, excess: Float64Array, limit: number, work: Work): boolean {
  const { pattern, factor, volts, bent, amps } = companion;
  const step = new Float64Array(volts.length);
  volts.fill(0);
  companion.filled = REST;
  for (let pass = 1; pass <= limit; pass++) {
    for (let k = 0; k < bent.length; k++) drawAt(companion, bent[k]!, voltsOver(pattern, volts, bent[k]!));
    if (isBalanced(companion, excess)) return true;
    for (let j = 0; j < amps.length; j++) amps[j] = -excess[j]!;
    work.columns += refactor(pattern, factor, companion.siemens);
    work.passes++;
    solveTriangles(pattern, factor, amps, step);
    const part = partToGo(companion, step);
    for (let j = 0; j < volts.length; j++) volts[j] = volts[j]! + part * step[j]!;
  }
  return false;
}

/** The part of the step to go: all of it, or as far as the function falls along it. */
function partToGo(companion: Companion, step: Float64Array): number {
  let longest = 0;
  for (const volts of step) longest = Math.max(longest, Math.abs(volts));
  let high = longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
  const atStart = slopeAlong(companion, step, 0);
  if (slopeAlong(companion, step, high) <= -FLAT_ENOUGH * atStart) return high;
  let low = 0;
  for (let cut = 0; cut < CUTS; cut++) {
    const middle = (low + high) / 2;
    const slope = slopeAlong(companion, step, middle);
    if (Math.abs(slope) <= -FLAT_ENOUGH * atStart) return middle;
    if (slope < 0) low = middle;
    else high = middle;
  }
  return low > 0 ? low : high;
}

/** Slope of the convex function along the step after this part of it: below 0 while it falls. */
function slopeAlong(companion: Companion, step: Float64Array, part: number): number {
  const { pattern, table, volts } = companion;
  const { placeOf } = pattern;
  let slope = 0;
  for (let e = 0; e < placeOf.length; e++) {
    if (placeOf[e]! < 0) continue;
    const along = voltsOver(pattern, step, e);
    if (along === 0) continue;
    slope += along * ampsAcross(table, e, voltsOver(pattern, volts, e) + part * along);
  }
  return slope;
}
