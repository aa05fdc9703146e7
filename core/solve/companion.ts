import type { Amps, Siemens, Volts } from "../base/units.ts";
import { type Arrivals, bringForward, emptyArrivals, type Pushers, pushersOf, touchPushed } from "./arrivals.ts";
import { emptyFactor, type Factor, refactor, touch } from "./factor.ts";
import { ampsAcross, DIODE, isBent, LAMP, type LawTable, MOTOR, REGULATED, SOURCE, slopeAt, tableOf } from "./laws.ts";
import type { Pattern } from "./pattern.ts";
import {
  type Columns,
  NEAR,
  REST,
  type Reach,
  reachOf,
  solveLater,
  solveNear,
  solveTriangles,
  WATCHED,
} from "./triangles.ts";

/**
 * The straight network that stands for the real one in one pass of Newton's method: every law is replaced by a line
 * that touches it. Sizes: E elements, n unknowns.
 */
export interface Companion extends Lines {
  readonly pattern: Pattern;
  readonly table: LawTable;
  readonly factor: Factor;
  /** What the lines push into the unknowns, and where it arrives. */
  readonly arrivals: Arrivals;
  /** Volts of the unknowns (size n), and the same with 0 for the reference behind them. */
  readonly volts: Float64Array;
  readonly level: Float64Array;
  /** Room for amps. Size n. */
  readonly amps: Float64Array;
  /** Elements with a bent law, elements whose line may have an offset, and resistors, all rising. */
  bent: Int32Array;
  pushing: Int32Array;
  plain: Int32Array;
  pushers: Pushers;
  /** Unknowns at the ends of resistors, n for the reference. */
  plainA: Int32Array;
  plainB: Int32Array;
  /** Elements whose volts are looked at after every search. */
  readonly watched: Int32Array;
  /** The unknowns that a pass needs, those that are looked at, and the rest; up to which part their volts are filled. */
  reach: Reach;
  filled: number;
  /** Volts at which the law of a bent element was last reckoned, and the amps it told: powers cost. Size E each. */
  readonly reckonedAt: Float64Array;
  readonly reckoned: Float64Array;
  /** Room for a list of bent elements. Size E. */
  readonly unsettled: Int32Array;
}

/** The lines that stand for the laws. Size E each. */
export interface Lines {
  /** Where each bent element's line touches its law: volts (NaN for a line that only starts a search) and amps. */
  readonly at: Float64Array;
  readonly ampsAt: Float64Array;
  /** Slope of each line, and its amps at 0 volts. */
  readonly siemens: Float64Array;
  readonly offset: Float64Array;
  /** Straight piece that a motor or regulated source is on: -1, 0 or 1 with rising volts. */
  readonly piece: Int8Array;
}

const NONE = new Int32Array(0);
const NO_PUSHERS: Pushers = { pusherStart: NONE, pusherAt: NONE };
const NO_COLUMNS: Columns = { columns: NONE, edges: NONE };
const NO_REACH: Reach = { near: NO_COLUMNS, watched: NO_COLUMNS, rest: NO_COLUMNS, partOf: new Uint8Array(0) };

/** The companion of a network, its lines not yet drawn; some of its elements are looked at after every search. */
export function companionOf(pattern: Pattern, watched: readonly number[] = []): Companion {
  const { elements } = pattern.network;
  const level = new Float64Array(pattern.unknowns + 1);
  const reals = (size: number): Float64Array => new Float64Array(size);
  const companion: Companion = {
    pattern,
    table: tableOf(elements),
    at: reals(elements.length),
    ampsAt: reals(elements.length),
    siemens: reals(elements.length),
    offset: reals(elements.length),
    piece: new Int8Array(elements.length),
    factor: emptyFactor(pattern),
    arrivals: emptyArrivals(pattern.unknowns),
    volts: level.subarray(0, pattern.unknowns),
    level,
    amps: reals(pattern.unknowns),
    bent: new Int32Array(0),
    pushing: new Int32Array(0),
    plain: new Int32Array(0),
    pushers: NO_PUSHERS,
    plainA: new Int32Array(0),
    plainB: new Int32Array(0),
    watched: Int32Array.from(watched),
    reach: NO_REACH,
    filled: REST,
    reckonedAt: reals(elements.length).fill(Number.NaN),
    reckoned: reals(elements.length),
    unsettled: new Int32Array(elements.length),
  };
  listBent(companion);
  for (let e = 0; e < elements.length; e++) if (!isBent(companion.table.code[e]!)) drawStraight(companion, e);
  return companion;
}

/** Lists anew which elements are bent, pushing or plain, after laws changed. Those with both ends on one node are none. */
export function listBent(companion: Companion): void {
  const { placeOf, aOf, bOf, unknowns } = companion.pattern;
  const { code } = companion.table;
  const [bent, pushing, plain] = [
    new Int32Array(code.length),
    new Int32Array(code.length),
    new Int32Array(code.length),
  ];
  let [bents, pushings, plains] = [0, 0, 0];
  for (let e = 0; e < code.length; e++) {
    if (placeOf[e]! < 0) continue;
    if (isBent(code[e]!)) bent[bents++] = e;
    if (isBent(code[e]!) || code[e] === SOURCE) pushing[pushings++] = e;
    else plain[plains++] = e;
  }
  companion.bent = bent.slice(0, bents);
  companion.pushing = pushing.slice(0, pushings);
  companion.plain = plain.slice(0, plains);
  companion.plainA = new Int32Array(plains);
  companion.plainB = new Int32Array(plains);
  for (let k = 0; k < plains; k++) {
    const e = plain[k]!;
    companion.plainA[k] = aOf[e]! < 0 ? unknowns : aOf[e]!;
    companion.plainB[k] = bOf[e]! < 0 ? unknowns : bOf[e]!;
  }
  companion.pushers = pushersOf(companion.pattern, companion.pushing);
  companion.reach = reachOf(companion.pattern, companion.pushing, companion.watched);
}

/** Volts from a to b of element e in the volts of the unknowns. */
export function voltsOver(pattern: Pattern, volts: Float64Array, e: number): Volts {
  const a = pattern.aOf[e]!;
  const b = pattern.bOf[e]!;
  return (a >= 0 ? volts[a]! : 0) - (b >= 0 ? volts[b]! : 0);
}

/** So near where its line touches, a lamp or diode leaves it by less than the last digit: as the square of the volts. */
const UNMOVED_VOLTS: Volts = 1e-10;

/** Amps from a to b through bent element e with these volts from a to b, by its true law. */
export function lawAmps({ table, reckonedAt, reckoned }: Companion, e: number, volts: Volts): Amps {
  if (reckonedAt[e] === volts) return reckoned[e]!;
  const amps = ampsAcross(table, e, volts);
  reckonedAt[e] = volts;
  reckoned[e] = amps;
  return amps;
}

/** Amps from a to b through element e with these volts from a to b, by its true law, which a line tells where it touches. */
export function ampsOver(companion: Companion, e: number, volts: Volts): Amps {
  const { table, at, ampsAt, siemens } = companion;
  return isUnmovedAt(companion, e, volts) ? ampsAt[e]! + siemens[e]! * (volts - at[e]!) : ampsAcross(table, e, volts);
}

/** Whether a lamp or diode is so near where its line touches its law that the line tells it. */
export function isUnmovedAt({ table, at }: Companion, e: number, volts: Volts): boolean {
  const code = table.code[e];
  const touching = at[e]!;
  if (code === LAMP) return Math.abs(volts - touching) <= (touching === 0 ? OFF_VOLTS : UNMOVED_VOLTS);
  return code === DIODE && Math.abs(volts - touching) <= UNMOVED_VOLTS;
}

/**
 * One pass: factors what changed and solves the straight network, as far as its bent elements see it; `fillVolts` does
 * the rest. Returns how many columns were factored.
 */
export function solveCompanion(companion: Companion): number {
  const { pattern, factor, arrivals, pushers, reach, volts } = companion;
  const columns = refactor(pattern, factor, companion.siemens);
  bringForward(pattern, factor, arrivals, pushers, companion.offset);
  solveNear(pattern, factor, reach, arrivals.arrived, volts);
  companion.filled = NEAR;
  return columns;
}

/** Fills the volts of all unknowns after a pass, up to this part of the reach. */
export function fillVolts(companion: Companion, part = REST): void {
  const { pattern, factor, reach, volts } = companion;
  if (companion.filled < WATCHED && part >= WATCHED) solveLater(pattern, factor, reach.watched, volts);
  if (companion.filled < REST && part >= REST) solveLater(pattern, factor, reach.rest, volts);
  companion.filled = Math.max(companion.filled, part);
}

/**
 * Refines the volts of the last pass by what they leave of Kirchhoff's law on the lines. A battery of milliohms pushes
 * kiloamps around itself, and their last digits may exceed all that a diode lets through to the island it stands on;
 * amps reckoned from the volts over each element have no such digits, and leave one end as they reach the other.
 */
export function refine(companion: Companion): void {
  const { pattern, factor, table, amps, volts, at, ampsAt, siemens } = companion;
  const { aOf, bOf, placeOf } = pattern;
  const step = new Float64Array(volts.length);
  amps.fill(0);
  for (let e = 0; e < placeOf.length; e++) {
    if (placeOf[e]! < 0) continue;
    const across = voltsOver(pattern, volts, e);
    const passed = isBent(table.code[e]!) ? ampsAt[e]! + siemens[e]! * (across - at[e]!) : ampsAcross(table, e, across);
    const a = aOf[e]!;
    const b = bOf[e]!;
    if (a >= 0) amps[a] = amps[a]! - passed;
    if (b >= 0) amps[b] = amps[b]! + passed;
  }
  solveTriangles(pattern, factor, amps, step);
  for (let j = 0; j < volts.length; j++) volts[j] = volts[j]! + step[j]!;
}

// ---------------------------------------------------------------- drawing lines

/** Slope of a line under a law that has become level, as a share of its chord; see `drawAt`. */
const LEVEL_SHARE = 1e-6;
const LIMIT_SHARE = 1e-14;
/**
 * A lamp's line keeps its slope where the next pass will find it off its law by no more amps than this, even if all by
 * which it is off now were to move its own volts: then nothing need be factored anew.
 */
const SAME_SLOPE_AMPS: Amps = 1e-10;
/** Slope in siemens of every diode in the first pass of a cold start. */
const DIODE_START: Siemens = 1;
/**
 * A lamp at no more volts than this is off: its line goes through 0 with the slope of the lit one, which tells its law there
 * as well as the steep one of a cold filament, and is near where it goes when it is switched on.
 */
const OFF_VOLTS: Volts = 1e-15;
/** Piece of an element whose line only starts a search. */
const NO_PIECE = 2;

/** Draws the line of a resistor or source, which is its law. */
export function drawStraight(companion: Companion, e: number): void {
  const first = companion.table.numbers[4 * e]!;
  const isSource = companion.table.code[e] === SOURCE;
  setLine(companion, e, first, isSource ? -first * companion.table.numbers[4 * e + 1]! : 0);
}

/** Draws the lines of a cold start: chords from 0 V to where the element usually works, a diode as a resistor. */
export function drawCold(companion: Companion): void {
  const { bent, table, at } = companion;
  for (let k = 0; k < bent.length; k++) {
    const e = bent[k]!;
    const n = 4 * e;
    const code = table.code[e];
    if (code === REGULATED) {
      drawPiece(companion, e, 0, 0);
      continue;
    }
    at[e] = Number.NaN;
    companion.piece[e] = NO_PIECE;
    if (code === LAMP) setLine(companion, e, table.numbers[n + 1]!, 0);
    else if (code === MOTOR) setLine(companion, e, table.numbers[n + 2]!, 0);
    else setLine(companion, e, DIODE_START, 0);
  }
}

/**
 * Draws a bent element's line through its law at these volts: the tangent. Where the law is level (a diode in reverse,
 * a source at its limit) the line is given a trace of slope. It still touches the law, so the solution is not moved;
 * but what hangs on nothing else is then driven off the level piece rather than lost.
 */
export function drawAt(companion: Companion, e: number, volts: Volts): void {
  const { table } = companion;
  const code = table.code[e];
  if (code === MOTOR || code === REGULATED) {
    drawPiece(companion, e, pieceAt(table, e, volts), volts);
    return;
  }
  if (code === LAMP && Math.abs(volts) <= OFF_VOLTS) {
    drawThrough(companion, e, 0, 0, table.numbers[4 * e + 1]!);
    return;
  }
  drawTangent(companion, e, volts);
}

/** Draws the tangent of a lamp or diode at these volts. */
export function drawTangent(companion: Companion, e: number, volts: Volts): void {
  const { table } = companion;
  const code = table.code[e];
  const amps = lawAmps(companion, e, volts);
  let slope = slopeAt(table, e, volts, amps);
  if (code === DIODE && volts < 0) slope = Math.max(slope, (LEVEL_SHARE * amps) / volts);
  const was = companion.siemens[e]!;
  const off = Math.abs(amps - (companion.ampsAt[e]! + was * (volts - companion.at[e]!)));
  const keeps = code === LAMP && Math.abs(slope - was) * off <= SAME_SLOPE_AMPS * was;
  drawThrough(companion, e, volts, amps, keeps ? was : slope);
}

/** A copy of a companion's lines. */
export function copyOfLines({ at, ampsAt, siemens, offset, piece }: Companion): Lines {
  return {
    at: at.slice(),
    ampsAt: ampsAt.slice(),
    siemens: siemens.slice(),
    offset: offset.slice(),
    piece: piece.slice(),
  };
}

/** Takes the line of bent element e over; where its law has other numbers now, one that touches it at the same volts or piece. */
export function takeLine(companion: Companion, e: number, lines: Lines, isSameLaw: boolean): void {
  const code = companion.table.code[e];
  if (isSameLaw) {
    companion.at[e] = lines.at[e]!;
    companion.ampsAt[e] = lines.ampsAt[e]!;
    companion.piece[e] = lines.piece[e]!;
    setLine(companion, e, lines.siemens[e]!, lines.offset[e]!);
  } else if (code === MOTOR || code === REGULATED) drawPiece(companion, e, lines.piece[e]!, lines.at[e]!);
  else drawAt(companion, e, lines.at[e]!);
}

/** Piece of a motor's or regulated source's law at these volts: -1, 0 or 1. */
export function pieceAt(table: LawTable, e: number, volts: Volts): number {
  const n = 4 * e;
  const first = table.numbers[n]!;
  if (table.code[e] === MOTOR) return volts >= first ? 1 : volts <= -first ? -1 : 0;
  return volts > first ? 1 : volts < table.numbers[n + 3]! ? -1 : 0;
}

/** Draws the line of one piece of a motor or regulated source; `volts` matters only for a source at its limit. */
export function drawPiece(companion: Companion, e: number, piece: number, volts: Volts): void {
  const { numbers, code } = companion.table;
  const n = 4 * e;
  const first = numbers[n]!;
  companion.piece[e] = piece;
  if (code[e] === MOTOR) {
    if (piece === 0) drawThrough(companion, e, 0, 0, numbers[n + 1]!);
    else drawThrough(companion, e, piece * first, piece * numbers[n + 3]!, numbers[n + 2]!);
    return;
  }
  const greatest = numbers[n + 2]!;
  if (piece > 0 || greatest === 0) drawThrough(companion, e, first, 0, 0);
  else if (piece === 0) drawThrough(companion, e, first, 0, numbers[n + 1]!);
  else {
    const touching = Math.min(volts, numbers[n + 3]!);
    drawThrough(companion, e, touching, -greatest, (LIMIT_SHARE * greatest) / (first - touching));
  }
}

function drawThrough(companion: Companion, e: number, volts: Volts, amps: Amps, slope: Siemens): void {
  companion.at[e] = volts;
  companion.ampsAt[e] = amps;
  setLine(companion, e, slope, amps - slope * volts);
}

function setLine(companion: Companion, e: number, siemens: Siemens, offset: Amps): void {
  const { pattern, factor, arrivals } = companion;
  const place = pattern.placeOf[e]!;
  if (companion.offset[e] !== offset) {
    companion.offset[e] = offset;
    if (place >= 0) {
      touchPushed(arrivals, pattern.aOf[e]!);
      touchPushed(arrivals, pattern.bOf[e]!);
    }
  }
  if (companion.siemens[e] === siemens) return;
  companion.siemens[e] = siemens;
  touch(factor, place);
}
