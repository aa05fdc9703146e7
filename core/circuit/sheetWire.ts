import { remember } from "../base/memo.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import { pathLength, spotAlong } from "../drawing/path.ts";
import type { Wire } from "./circuit.ts";
import type { SheetSetup, SheetWireLive } from "./sheetSetup.ts";
import type { Sight } from "./sheetSight.ts";
import { readsAlike } from "./sheetVolts.ts";

/** A wire as it lies on the page. Lengths are measured along its corners from its first spot. */
export interface SheetWire {
  readonly wire: Wire;
  readonly corners: readonly Spot[];
  readonly live: SheetWireLive | null;
  /** Which way the current that it shows runs: 1 from -> to, -1 back, 0 for none. */
  readonly flow: -1 | 0 | 1;
  /** The stretch that is drawn: what it shares with a wire drawn before is left out at both ends. */
  readonly from: GridUnits;
  readonly to: GridUnits;
  /** Where one end's state gives way to the other's, and where a broken wire is open; null where it is whole and of one state. */
  readonly cut: GridUnits | null;
  /** Drawn with a gap at the cut: nothing passes there. */
  readonly isBroken: boolean;
  /** Where it joins another wire of its terminal. */
  readonly dots: readonly WireDot[];
}

/** A spot where a wire joins another one. */
export interface WireDot {
  readonly at: Spot;
  readonly state: WireState | null;
}

/** Less current than this is not shown. */
const LEAST_AMPS: Amps = 0.005;

/** Half the gap that an open wire shows. */
export const HALF_CUT: GridUnits = 0.5;

/** The way of a wire from its first point to its second, or of one loose end of it. */
export interface WireWay {
  readonly wire: Wire;
  readonly corners: readonly Spot[];
  /** The end that is on this page, where only that one is drawn. */
  readonly end?: 0 | 1;
}

/**
 * The wires of a page with what they share worked out, in the order in which they are drawn. One that looks as it last
 * did on its way is the same object as then, so that what was made from it is found again.
 */
export function layWires(setup: SheetSetup, ways: readonly WireWay[]): readonly SheetWire[] {
  const drawn = new Map<number, WireState | null>();
  return ways.map((way, index) => {
    const { wire, corners, end } = way;
    const live = liveOnPage(setup.live?.wires.get(wire.id) ?? null, end);
    const { steps, isShared, length } = stepsOfAll(ways)[index]!;
    const isDrawn = (step: number, state: WireState | null) => drawn.get(steps[step]!) === state;
    const [first, last] = [live?.state[0] ?? null, live?.state[1] ?? null];
    let from = 0;
    while (isShared && from < steps.length && isDrawn(from, first)) from++;
    let to = length;
    while (isShared && to > from && isDrawn(to - 1, last)) to--;
    const isBroken = live?.isBroken === true;
    const cut = first === last && !isBroken ? null : cutAt(corners, from, to);
    if (isShared) {
      steps.forEach((key, step) => {
        if (!drawn.has(key)) drawn.set(key, cut === null || step + 0.5 < cut ? first : last);
      });
    }
    const dots = [
      ...(from > 0 ? [{ at: spotAlong(corners, from).at, state: first }] : []),
      ...(to < length ? [{ at: spotAlong(corners, to).at, state: last }] : []),
    ];
    return lastLike({ wire, corners, live, flow: flowOf(live), from, to, cut, isBroken, dots }, setup.sight);
  });
}

/** The steps of each way, and whether another one takes any of them too; its length. */
const stepsOfAll = remember((ways: readonly WireWay[]) => {
  const taken = new Map<number, number>();
  for (const { corners } of ways) {
    for (const key of new Set(stepsOf(corners))) taken.set(key, (taken.get(key) ?? 0) + 1);
  }
  return ways.map(({ corners }) => {
    const steps = stepsOf(corners);
    return { steps, isShared: steps.some((key) => taken.get(key)! > 1), length: pathLength(corners) };
  });
});

/** How many layings along the same corners are remembered: a switch goes to and fro. */
const MOST_KEPT = 2;
/** What was laid last along the same corners: plain, live, and both for a sight with words; the latest first. */
const laidAlong = remember((_corners: readonly Spot[]): SheetWire[][] => [[], [], [], []]);

function lastLike(laid: SheetWire, { hasWords }: Sight): SheetWire {
  const kept = laidAlong(laid.corners)[(laid.live === null ? 0 : 1) + (hasWords ? 2 : 0)]!;
  const known = kept.find((each) => looksLike(each, laid, hasWords));
  if (known !== undefined) return known;
  kept.unshift(laid);
  kept.splice(MOST_KEPT);
  return laid;
}

/** Whether two layings along the same corners come to the same marks; volts count only where words say them. */
function looksLike(one: SheetWire, other: SheetWire, hasWords: boolean): boolean {
  return (
    one.wire === other.wire &&
    one.from === other.from &&
    one.to === other.to &&
    one.cut === other.cut &&
    one.flow === other.flow &&
    one.dots.length === other.dots.length &&
    one.dots.every(({ at, state }, index) => {
      const dot = other.dots[index]!;
      return state === dot.state && at.x === dot.at.x && at.y === dot.at.y;
    }) &&
    isLiveAlike(one.live, other.live, hasWords)
  );
}

function isLiveAlike(one: SheetWireLive | null, other: SheetWireLive | null, hasWords: boolean): boolean {
  if (one === null || other === null) return one === other;
  return (
    one.state[0] === other.state[0] &&
    one.state[1] === other.state[1] &&
    one.isBroken === other.isBroken &&
    one.alwaysFed === other.alwaysFed &&
    one.weak === other.weak &&
    (!hasWords || (readsAlike(one.volts[0], other.volts[0]) && readsAlike(one.volts[1], other.volts[1])))
  );
}

function flowOf(live: SheetWireLive | null): SheetWire["flow"] {
  if (live === null || Math.abs(live.amps) < LEAST_AMPS) return 0;
  return live.amps > 0 ? 1 : -1;
}

/** A loose end shows its own state along all that is drawn of it. */
function liveOnPage(live: SheetWireLive | null, end: 0 | 1 | undefined): SheetWireLive | null {
  if (live === null || end === undefined) return live;
  return { ...live, state: [live.state[end], live.state[end]], volts: [live.volts[end], live.volts[end]] };
}

/** More than twice as many units as any sheet is high. */
const ROW = 100_000;

/** One number for each spot whose coordinates are whole or end in a half. */
export function spotKey(x: GridUnits, y: GridUnits): number {
  return Math.round(2 * x) * ROW + Math.round(2 * y);
}

/** One key for each unit of a way, the same in both directions. */
const stepsOf = remember((corners: readonly Spot[]): readonly number[] => {
  const keys: number[] = [];
  for (let i = 1; i < corners.length; i++) {
    const [from, to] = [corners[i - 1]!, corners[i]!];
    const length = Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
    const [x, y] = [Math.sign(to.x - from.x), Math.sign(to.y - from.y)];
    for (let n = 0; n < length; n++) keys.push(spotKey(from.x + x * (n + 0.5), from.y + y * (n + 0.5)));
  }
  return keys;
});

/** The straight pieces of a stretch, each with the length at which it begins. */
export function piecesOf(corners: readonly Spot[], from: GridUnits, to: GridUnits) {
  const pieces: { readonly a: Spot; readonly b: Spot; readonly start: GridUnits; readonly length: GridUnits }[] = [];
  let passed = 0;
  for (let i = 1; i < corners.length; i++) {
    const length = pathLength([corners[i - 1]!, corners[i]!]);
    const start = Math.max(from, passed);
    const end = Math.min(to, passed + length);
    if (end - start > 1e-9) {
      pieces.push({ a: spotAlong(corners, start).at, b: spotAlong(corners, end).at, start, length: end - start });
    }
    passed += length;
  }
  return pieces;
}

/** The corners of a stretch. */
export function stretchOf(corners: readonly Spot[], from: GridUnits, to: GridUnits): readonly Spot[] {
  const pieces = piecesOf(corners, from, to);
  return pieces.length === 0 ? [] : [pieces[0]!.a, ...pieces.map(({ b }) => b)];
}

/** The middle of a stretch, moved onto the middle of its straight piece where it would fall near a corner. */
function cutAt(corners: readonly Spot[], from: GridUnits, to: GridUnits): GridUnits {
  const middle = (from + to) / 2;
  const piece = piecesOf(corners, from, to).find(({ start, length }) => middle <= start + length);
  if (piece === undefined) return middle;
  const room = 2 * HALF_CUT;
  if (piece.length < 2 * room) return piece.start + piece.length / 2;
  return Math.min(Math.max(middle, piece.start + room), piece.start + piece.length - room);
}
