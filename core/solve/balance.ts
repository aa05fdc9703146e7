import type { Amps } from "../base/units.ts";
import { ampsOver, type Companion } from "./companion.ts";

/** A node may be out of balance by this many amps in a solution. */
export const BALANCED_AMPS: Amps = 1e-9;
/**
 * Volts are doubles: their last digits times the siemens at a node are amps that no solution can avoid. 16 units of
 * 2^-52 are allowed for; that exceeds 1e-9 A only beside about 10,000 siemens (0.1 milliohm) at 12 V.
 */
const LAST_DIGITS = 16 * 2 ** -52;

/**
 * Draws up Kirchhoff's current law at the volts of the unknowns, by the true laws: `excess` (size n + 1, the last one 0) is filled with the
 * amps that flow out of each unknown and are not made good. True where all are within what is allowed.
 */
export function isBalanced(companion: Companion, excess: Float64Array): boolean {
  const { pattern, siemens, plain, plainA, plainB, level, pushing, volts } = companion;
  const { aOf, bOf } = pattern;
  excess.fill(0);
  // With a place for the reference at their end, the many straight elements need not ask which end is on it.
  for (let k = 0; k < plain.length; k++) {
    const a = plainA[k]!;
    const b = plainB[k]!;
    const passed = siemens[plain[k]!]! * (level[a]! - level[b]!);
    excess[a] = excess[a]! + passed;
    excess[b] = excess[b]! - passed;
  }
  excess[pattern.unknowns] = 0;
  for (let k = 0; k < pushing.length; k++) {
    const e = pushing[k]!;
    const a = aOf[e]!;
    const b = bOf[e]!;
    const passed = ampsOver(companion, e, (a >= 0 ? volts[a]! : 0) - (b >= 0 ? volts[b]! : 0));
    if (a >= 0) excess[a] = excess[a]! + passed;
    if (b >= 0) excess[b] = excess[b]! - passed;
  }
  return worstAmps(excess) <= BALANCED_AMPS || isWithinDigits(companion, excess);
}

function isWithinDigits(companion: Companion, excess: Float64Array): boolean {
  const { pattern, siemens, volts } = companion;
  const { aOf, bOf, placeOf } = pattern;
  const allowed = new Float64Array(excess.length).fill(BALANCED_AMPS);
  for (let e = 0; e < placeOf.length; e++) {
    if (placeOf[e]! < 0) continue;
    const a = aOf[e]!;
    const b = bOf[e]!;
    const around = (a >= 0 ? Math.abs(volts[a]!) : 0) + (b >= 0 ? Math.abs(volts[b]!) : 0);
    const digits = LAST_DIGITS * siemens[e]! * around;
    if (a >= 0) allowed[a] = allowed[a]! + digits;
    if (b >= 0) allowed[b] = allowed[b]! + digits;
  }
  return excess.every((amps, unknown) => Math.abs(amps) <= allowed[unknown]!);
}

/** The greatest amps out of balance at any unknown; NaN where one is no number. */
export function worstAmps(excess: Float64Array): Amps {
  let worst = 0;
  for (let unknown = 0; unknown < excess.length; unknown++) worst = Math.max(worst, Math.abs(excess[unknown]!));
  return worst;
}
