import type { Amps, Volts } from "../base/units.ts";
import type { Companion } from "./companion.ts";
import { ampsAcross, DIODE, LAMP } from "./laws.ts";

/** So near where its line touches, a lamp or diode leaves it by less than the last digit: as the square of the volts. */
export const UNMOVED_VOLTS: Volts = 1e-10;

/** A node may be out of balance by this many amps in a solution. */
export const BALANCED_AMPS: Amps = 1e-9;
/**
 * Volts are doubles: their last digits times the siemens at a node are amps that no solution can avoid. 16 units of
 * 2^-52 are allowed for; that exceeds 1e-9 A only beside about 10,000 siemens (0.1 milliohm) at 12 V.
 */
const LAST_DIGITS = 16 * 2 ** -52;

/**
 * Draws up Kirchhoff's current law at these volts of the unknowns, by the true laws, of which a line tells the last digit
 * where it touches: `excess` (size n) is filled with the
 * amps that flow out of each unknown and are not made good. True where all are within what is allowed.
 */
export function isBalanced(companion: Companion, volts: Float64Array, excess: Float64Array): boolean {
  const { pattern, table, at, ampsAt, siemens, plain, pushing } = companion;
  const { aOf, bOf } = pattern;
  excess.fill(0);
  for (let k = 0; k < plain.length; k++) {
    const e = plain[k]!;
    const a = aOf[e]!;
    const b = bOf[e]!;
    const passed = siemens[e]! * ((a >= 0 ? volts[a]! : 0) - (b >= 0 ? volts[b]! : 0));
    if (a >= 0) excess[a] = excess[a]! + passed;
    if (b >= 0) excess[b] = excess[b]! - passed;
  }
  for (let k = 0; k < pushing.length; k++) {
    const e = pushing[k]!;
    const a = aOf[e]!;
    const b = bOf[e]!;
    const across = (a >= 0 ? volts[a]! : 0) - (b >= 0 ? volts[b]! : 0);
    const moved = across - at[e]!;
    const code = table.code[e];
    const isOnLine = (code === LAMP || code === DIODE) && Math.abs(moved) <= UNMOVED_VOLTS;
    const passed = isOnLine ? ampsAt[e]! + siemens[e]! * moved : ampsAcross(table, e, across);
    if (a >= 0) excess[a] = excess[a]! + passed;
    if (b >= 0) excess[b] = excess[b]! - passed;
  }
  return worstAmps(excess) <= BALANCED_AMPS || isWithinDigits(companion, volts, excess);
}

function isWithinDigits(companion: Companion, volts: Float64Array, excess: Float64Array): boolean {
  const { pattern, siemens } = companion;
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
