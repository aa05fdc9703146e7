import type { Amps } from "../base/units.ts";
import { BALANCED_AMPS, isBalanced, worstAmps } from "./balance.ts";
import { type Companion, drawAt, drawPiece, fillVolts, refine, solveCompanion, voltsOver } from "./companion.ts";
import { isTurningOff, isTurningOn, redraw, strayAmps } from "./guards.ts";
import { GROUNDED, islandsOf } from "./islands.ts";
import { REGULATED } from "./laws.ts";

/** Passes before the tolerance on lines begins to widen, by this factor a pass, up to this many times. */
const STRICT_PASSES = 10;
const WIDEN = 4;
const WIDEST = 1000;
/** Passes after which a lamp that crosses 0 V is most likely one that has been switched off. */
const EARLY_PASSES = 2;
/** Passes before each is refined. Never the first, whose lines may have no point where they touch. */
const PLAIN_PASSES = 5;
/** How often lines that all looked settled may fail the balance before the search gives up. */
const MISSES = 3;
/** Where all lines together are off their laws by no more than this, no node is out of balance by more. */
const TRUSTED_AMPS: Amps = BALANCED_AMPS / 2;

/** What was spent, kept for the bench and for tests. */
export interface Work {
  passes: number;
  columns: number;
}

/** How a search ended: it failed; what it found was held against Kirchhoff's law; or it need not be. */
export type Found = "nothing" | "balanced" | "trusted";

/**
 * Newton's method from the lines as they stand, with a guard for each law. Ends once every line tells its law and
 * Kirchhoff's law holds by the true laws at every unknown, or after `limit` passes. Where it is trusting, a few plain
 * passes after which the lines are as good as their laws are not held against that law: a straight network that was
 * solved keeps it but for last digits.
 */
export function searchByNewton(
  companion: Companion,
  excess: Float64Array,
  limit: number,
  work: Work,
  isTrusting = false,
): Found {
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
    const stray = redrawUnsettled(companion, slack, pass <= EARLY_PASSES);
    if (stray === Number.POSITIVE_INFINITY || holdIsland(companion)) continue;
    if (isTrusting && !isRefined && (stray <= TRUSTED_AMPS || worstStray(companion, slack) <= TRUSTED_AMPS))
      return "trusted";
    fillVolts(companion);
    if (isBalanced(companion, excess)) return "balanced";
    if (++misses > MISSES || bent.length === 0) return "nothing";
    for (let k = 0; k < bent.length; k++) drawAt(companion, bent[k]!, voltsOver(pattern, volts, bent[k]!));
  }
  return "nothing";
}

/** Draws new lines where the old ones no longer tell their law. Infinite where there were any; else the amps all are off it. */
function redrawUnsettled(companion: Companion, slack: number, isEarly: boolean): Amps {
  const { pattern, volts, bent, unsettled } = companion;
  let count = 0;
  let isAnyTurningOff = false;
  let sum = 0;
  for (let k = 0; k < bent.length; k++) {
    const e = bent[k]!;
    const across = voltsOver(pattern, volts, e);
    const stray = strayAmps(companion, e, across, slack);
    if (stray !== Number.POSITIVE_INFINITY) {
      sum += stray;
      continue;
    }
    unsettled[count++] = e;
    isAnyTurningOff ||= isTurningOff(companion, e, across);
  }
  for (let k = 0; k < count; k++) {
    const e = unsettled[k]!;
    const across = voltsOver(pattern, volts, e);
    if (isAnyTurningOff && isTurningOn(companion, e, across)) continue;
    redraw(companion, e, across, isEarly);
  }
  return count > 0 ? Number.POSITIVE_INFINITY : sum;
}

/** The most amps that the lines at one unknown are off their laws, all together. */
function worstStray(companion: Companion, slack: number): Amps {
  const { pattern, bent, volts, amps } = companion;
  const { aOf, bOf } = pattern;
  amps.fill(0);
  for (let k = 0; k < bent.length; k++) {
    const e = bent[k]!;
    const stray = strayAmps(companion, e, voltsOver(pattern, volts, e), slack);
    const a = aOf[e]!;
    const b = bOf[e]!;
    if (a >= 0) amps[a] = amps[a]! + stray;
    if (b >= 0) amps[b] = amps[b]! + stray;
  }
  return worstAmps(amps);
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
