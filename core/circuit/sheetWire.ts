import { remember } from "../base/memo.ts";
import type { WireState } from "../base/states.ts";
import type { GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import { pathLength, spotAlong } from "../drawing/path.ts";
import type { Wire } from "./circuit.ts";
import type { SheetWireLive } from "./sheetSetup.ts";

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

/** Where each of these wires is among those of another time, by their corners; -1 where it is not. */
export function placesAmong(before: readonly SheetWire[], now: readonly SheetWire[]): readonly number[] {
  const isAlong = (wire: SheetWire, index: number) => wire === before[index] || wire.corners === before[index]!.corners;
  if (before.length === now.length && now.every(isAlong)) return now.map((_, index) => index);
  const places = new Map<readonly Spot[], number>(before.map(({ corners }, index) => [corners, index]));
  return now.map(({ corners }) => places.get(corners) ?? -1);
}

/** A spot where a wire joins another one. */
export interface WireDot {
  readonly at: Spot;
  readonly state: WireState | null;
}

/** Half the gap that an open wire shows. */
export const HALF_CUT: GridUnits = 0.5;

/** The way of a wire from its first point to its second, or of one loose end of it. */
export interface WireWay {
  readonly wire: Wire;
  readonly corners: readonly Spot[];
  /** The end that is on this page, where only that one is drawn. */
  readonly end?: 0 | 1;
}

/** More than twice as many units as any sheet is high. */
const ROW = 100_000;

/** One number for each spot whose coordinates are whole or end in a half. */
export function spotKey(x: GridUnits, y: GridUnits): number {
  return Math.round(2 * x) * ROW + Math.round(2 * y);
}

/** One key for each unit of a way, the same in both directions. */
export const stepsOf = remember((corners: readonly Spot[]): readonly number[] => {
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
export function cutAt(corners: readonly Spot[], from: GridUnits, to: GridUnits): GridUnits {
  const middle = (from + to) / 2;
  const piece = piecesOf(corners, from, to).find(({ start, length }) => middle <= start + length);
  if (piece === undefined) return middle;
  const room = 2 * HALF_CUT;
  if (piece.length < 2 * room) return piece.start + piece.length / 2;
  return Math.min(Math.max(middle, piece.start + room), piece.start + piece.length - room);
}
