import { isBalanced } from "./balance.ts";
import { type Companion, drawAt, drawPiece, fillVolts, refine, solveCompanion, voltsOver } from "./companion.ts";
import { isSettled, isTurningOff, isTurningOn, redraw } from "./guards.ts";
import { GROUNDED, islandsOf } from "./islands.ts";
import { REGULATED } from "./laws.ts";

/** Passes before the tolerance on lines begins to widen, by this factor a pass, up to this many times. */
const STRICT_PASSES = 10;
const WIDEN = 4;
const WIDEST = 1000;
/** Passes before each is refined. Never the first, whose lines may have no point where they touch. */
const PLAIN_PASSES = 5;
/** How often lines that all looked settled may fail the balance before the search gives up. */
const MISSES = 3;

/** What was spent, kept for the bench and for tests. */
export interface Work {
  passes: number;
  columns: number;
}

/**
 * Newton's method from the lines as they stand, with a guard for each law. True once every line tells its law and
 * Kirchhoff's law holds by the true laws at every unknown; false after `limit` passes.
 */
export function searchByNewton(companion: Companion, excess: Float64Array, limit: number, work: Work): boolean {
  const { pattern, volts, bent } = companion;
  let slack = 1;
  let misses = 0;
  for (let pass = 1; pass <= limit; pass++) {
    work.columns += solveCompanion(companion);
    work.passes++;
    const isRefined = pass > PLAIN_PASSES || misses > 0;
    if (isRefined) {
      fillVolts(companion);
      refine(companion);
    }
    if (pass > STRICT_PASSES) slack = Math.min(slack * WIDEN, WIDEST);
    if (redrawUnsettled(companion, slack) || holdIsland(companion)) continue;
    if (!isRefined) fillVolts(companion);
    if (isBalanced(companion, volts, excess)) return true;
    if (++misses > MISSES || bent.length === 0) return false;
    for (let k = 0; k < bent.length; k++) drawAt(companion, bent[k]!, voltsOver(pattern, volts, bent[k]!));
  }
  return false;
}

/** Draws new lines where the old ones no longer tell their law. True where there were any. */
function redrawUnsettled(companion: Companion, slack: number): boolean {
  const { pattern, volts, bent, unsettled } = companion;
  let count = 0;
  let isAnyTurningOff = false;
  for (let k = 0; k < bent.length; k++) {
    const e = bent[k]!;
    const across = voltsOver(pattern, volts, e);
    if (isSettled(companion, e, across, slack)) continue;
    unsettled[count++] = e;
    isAnyTurningOff ||= isTurningOff(companion, e, across);
  }
  for (let k = 0; k < count; k++) {
    const e = unsettled[k]!;
    const across = voltsOver(pattern, volts, e);
    if (isAnyTurningOff && isTurningOn(companion, e, across)) continue;
    redraw(companion, e, across);
  }
  return count > 0;
}

/**
 * An island that hangs on nothing but blocked sources could stand at many volts. Puts one such source back to
 * regulating, so that the island stands at the volts at which it ceases to be fed, whatever was before. True where one
 * was found.
 */
function holdIsland(companion: Companion): boolean {
  const { pattern, factor, table, piece, bent } = companion;
  if (factor.zeroPivots === 0) return false;
  let islands: Int32Array | null = null;
  for (let k = 0; k < bent.length; k++) {
    const e = bent[k]!;
    if (table.code[e] !== REGULATED || piece[e]! <= 0 || table.numbers[4 * e + 2]! <= 0) continue;
    islands ??= islandsOf(pattern, factor);
    const a = pattern.aOf[e]!;
    const b = pattern.bOf[e]!;
    if ((a < 0 ? GROUNDED : islands[a]) === (b < 0 ? GROUNDED : islands[b])) continue;
    drawPiece(companion, e, 0, 0);
    return true;
  }
  return false;
}
