import type { Amps, Volts } from "../base/units.ts";
import {
  type Companion,
  drawAt,
  drawPiece,
  drawTangent,
  isUnmovedAt,
  lawAmps,
  pieceAt,
  voltsOver,
} from "./companion.ts";
import { DIODE, LAMP, REGULATED } from "./laws.ts";

/** A line may be off its law by this many amps where it is used ... */
const SETTLED_AMPS: Amps = 2e-11;
/** ... one that was drawn for a lamp without volts by next to none, for what leaks may pass through it ... */
const OFF_AMPS: Amps = 1e-14;
/** ... a diode's by no more than this share of its saturation amps ... */
const SETTLED_SHARE = 1e-3;
/** ... and by a few last digits of the volts at its ends, about 9 units, times its slope. */
const LAST_DIGITS = 2e-15;
/** Below this many volts a lamp may change sign without the guard: it is dark on both sides. */
const DARK_VOLTS: Volts = 1e-6;

/**
 * Amps by which the line of bent element e is off its law at the volts it now has; infinite where it no longer tells it.
 * `slack` widens the tolerance.
 */
export function strayAmps(companion: Companion, e: number, volts: Volts, slack: number): Amps {
  const { table, at, ampsAt, siemens, piece, pattern } = companion;
  const code = table.code[e]!;
  const first = table.numbers[4 * e]!;
  const moved = volts - at[e]!;
  let allowed = SETTLED_AMPS;
  if (code === LAMP || code === DIODE) {
    if (isUnmovedAt(companion, e, volts)) return 0;
    if (code === DIODE) allowed = Math.min(allowed, SETTLED_SHARE * first);
    else if (at[e] === 0) allowed = OFF_AMPS;
  } else {
    if (pieceAt(table, e, volts) === piece[e]!) return 0;
    // The line of a source at its limit meets the law once more, far up where the source is blocked.
    if (code === REGULATED && piece[e]! < 0 && volts > first) return Number.POSITIVE_INFINITY;
  }
  const slope = siemens[e]!;
  const off = Math.abs(lawAmps(companion, e, volts) - (ampsAt[e]! + slope * moved));
  const a = pattern.aOf[e]!;
  const b = pattern.bOf[e]!;
  const around = (a >= 0 ? Math.abs(companion.volts[a]!) : 0) + (b >= 0 ? Math.abs(companion.volts[b]!) : 0);
  // A line that only starts a search has no place where it touches: NaN is never within the tolerance.
  return off <= slack * allowed + LAST_DIGITS * slope * around ? off : Number.POSITIVE_INFINITY;
}

/** Draws the next line of bent element e, which is not settled at these volts. Early on, a lamp that crosses 0 V is taken to go off. */
export function redraw(companion: Companion, e: number, volts: Volts, isEarly: boolean): void {
  const { table, at } = companion;
  const was = at[e]!;
  switch (table.code[e]) {
    case LAMP:
      // Newton steps over a dark lamp from side to side, nearer by a fifth each time; so stop at 0 first.
      if (volts * was >= 0 || Math.abs(was) <= DARK_VOLTS) drawAt(companion, e, volts);
      else if (isEarly) drawAt(companion, e, 0);
      else drawTangent(companion, e, 0);
      return;
    case DIODE:
      drawAt(companion, e, nextDiodeVolts(companion, e, volts));
      return;
    default:
      stepPiece(companion, e, volts);
  }
}

/** One piece at a time: a law with a steep middle sends Newton back and forth between the outer two. */
function stepPiece(companion: Companion, e: number, volts: Volts): void {
  const towards = pieceAt(companion.table, e, volts);
  if (Number.isNaN(companion.at[e]!)) {
    drawPiece(companion, e, towards, volts);
    return;
  }
  const was = companion.piece[e]!;
  drawPiece(companion, e, was + Math.sign(towards - was), volts);
}

/**
 * Where to touch a diode's law next. Above a few emission volts its amps are foretold better than its volts, so the
 * next volts are those at which the law passes the amps of the line; below, the volts themselves, but not above the
 * volts at which it conducts well. The exponential never overflows, and one that turns off does so at once.
 */
function nextDiodeVolts(companion: Companion, e: number, volts: Volts): Volts {
  const { numbers } = companion.table;
  const saturationAmps = numbers[4 * e]!;
  const emissionVolts = numbers[4 * e + 1]!;
  const wellOn = numbers[4 * e + 2]!;
  const was = companion.at[e]!;
  const lineAmps = companion.offset[e]! + companion.siemens[e]! * volts;
  if (Number.isNaN(was)) return volts > 0 ? emissionVolts * Math.log1p(lineAmps / saturationAmps) : volts;
  if (volts > was) {
    if (volts <= Math.max(wellOn, was + 2 * emissionVolts)) return volts;
    const byAmps = was > 4 * emissionVolts ? emissionVolts * Math.log1p(Math.max(lineAmps, 0) / saturationAmps) : 0;
    return Math.min(volts, Math.max(wellOn, byAmps, was));
  }
  if (was <= 4 * emissionVolts) return volts;
  return lineAmps > 0 ? emissionVolts * Math.log1p(lineAmps / saturationAmps) : Math.min(volts, 0);
}

/** True where the line foretells that a conducting diode will pass no more forward amps. */
export function isTurningOff(companion: Companion, e: number, volts: Volts): boolean {
  const { code, numbers } = companion.table;
  return (
    code[e] === DIODE &&
    companion.at[e]! > 4 * numbers[4 * e + 1]! &&
    companion.offset[e]! + companion.siemens[e]! * volts <= 0
  );
}

/**
 * True where a diode's volts rise. While another turns off they are not to be trusted: two diodes that feed a point
 * without load would else take turns, each kept on by the other's line, and come down by an emission volt a pass.
 */
export function isTurningOn(companion: Companion, e: number, volts: Volts): boolean {
  return companion.table.code[e] === DIODE && volts > companion.at[e]!;
}

/** Draws a first line for an element whose law was changed in place, near the volts that it has now. */
export function drawFirst(companion: Companion, e: number): void {
  const { table, pattern, volts } = companion;
  const now = voltsOver(pattern, volts, e);
  drawAt(companion, e, table.code[e] === DIODE ? Math.min(now, table.numbers[4 * e + 2]!) : now);
}
