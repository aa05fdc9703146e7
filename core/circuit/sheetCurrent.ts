import { remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import { chevronMarks } from "../drawing/glyph.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import { spotAlong } from "../drawing/path.ts";
import type { Altered } from "./sheetAltered.ts";
import { BusySpots } from "./sheetBusy.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import { piecesOf, type SheetWire } from "./sheetWire.ts";

/** One chevron for each stretch of about this length, clear of corners and joins. */
const EVERY: GridUnits = 14;
/** Half the width of a chevron with its edge of paper. */
const REACH: GridUnits = 0.58;
const SHORTEST: GridUnits = 3.4;
/** How far from a wire there may be something that moves its chevrons. */
const NEAR: GridUnits = 2;

/** The chevrons of a wire as they last stood. */
interface Stood {
  readonly wire: SheetWire;
  readonly marks: readonly Mark[];
}

/** The chevrons of one page at one sight as they last stood, by the corners of their wires. */
export class CurrentMemory {
  private last: ReadonlyMap<readonly Spot[], Stood> = new Map();
  private readonly busy = new BusySpots();

  /**
   * Chevrons of current, + to -, on every longer straight piece, clear of the words taken in the room. Where nothing is
   * altered they stay as they are.
   */
  currentMarks(wires: readonly SheetWire[], room: SheetRoom, altered: Altered): readonly Mark[] {
    const { last } = this;
    const along = new Set(wires.map(({ corners }) => corners));
    for (const [corners, { wire }] of last) if (!along.has(corners)) this.replace(wire, null, altered);
    for (const wire of wires) this.replace(last.get(wire.corners)?.wire ?? null, wire, altered);
    this.last = new Map(
      wires.map((wire) => {
        const before = last.get(wire.corners);
        const isSame = before?.wire === wire && !altered.isNear(stretchOf(wire));
        return [wire.corners, isSame ? before : { wire, marks: chevronsOf(wire, this.busy, room) }] as const;
      }),
    );
    return [...this.last.values()].flatMap(({ marks }) => marks);
  }

  private replace(before: SheetWire | null, after: SheetWire | null, altered: Altered): void {
    if (before && after && (before === after || liesAlike(before, after))) return;
    if (before) this.busy.remove(before);
    if (after) this.busy.add(after);
    altered.note([before, after].flatMap((wire) => (wire ? [stretchOf(wire)] : [])));
  }
}

function chevronsOf(sheetWire: SheetWire, busy: BusySpots, room: SheetRoom): readonly Mark[] {
  const { live, flow, corners, from, to, cut, isBroken, wire } = sheetWire;
  if (live === null || isBroken || flow === 0) return [];
  return piecesOf(corners, from, to).flatMap(({ start, length }) => {
    if (length < SHORTEST) return [];
    const count = Math.max(1, Math.round(length / EVERY));
    return Array.from({ length: count }, (_, i) => start + (length * (i + 0.5)) / count).flatMap((wanted) => {
      const place = clearPlace(corners, wanted, Math.min(length / count / 2, 4), busy, room);
      if (place === null) return [];
      const { at, degrees } = spotAlong(corners, place);
      const state = live.state[cut !== null && place > cut ? 1 : 0];
      return chevronMarks(at, flow > 0 ? degrees : degrees + 180, state, wire.id);
    });
  });
}

/** The place nearest to the wanted length that is clear of corners, ends, joins and crossings. */
function clearPlace(
  corners: SheetWire["corners"],
  wanted: GridUnits,
  most: GridUnits,
  busy: BusySpots,
  room: SheetRoom,
): GridUnits | null {
  for (let shift = 0; shift <= most; shift += 0.5) {
    for (const place of [wanted + shift, wanted - shift]) {
      const { at } = spotAlong(corners, place);
      const box = { left: at.x, top: at.y, right: at.x, bottom: at.y };
      if (busy.isClear(at) && room.isFree(box, REACH)) return place;
    }
  }
  return null;
}

/** Whether two layings of one wire pass and end at the same spots. */
function liesAlike(one: SheetWire, other: SheetWire): boolean {
  return (
    one.corners === other.corners &&
    one.from === other.from &&
    one.to === other.to &&
    one.dots.length === other.dots.length &&
    one.dots.every(({ at }, index) => at.x === other.dots[index]!.at.x && at.y === other.dots[index]!.at.y)
  );
}

/** The box round a wire and all that its chevrons may have to keep clear of. */
const stretchOf = remember(({ corners }: SheetWire): Bounds => {
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return {
    left: Math.min(...xs) - NEAR,
    top: Math.min(...ys) - NEAR,
    right: Math.max(...xs) + NEAR,
    bottom: Math.max(...ys) + NEAR,
  };
});
