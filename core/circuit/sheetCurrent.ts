import { remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import { chevronMarks } from "../drawing/glyph.ts";
import type { Mark } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import { spotAlong } from "../drawing/path.ts";
import type { Altered } from "./sheetAltered.ts";
import { BusySpots } from "./sheetBusy.ts";
import { ListsAgain } from "./sheetLists.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import { piecesOf, placesAmong, type SheetWire } from "./sheetWire.ts";

/** One chevron for each stretch of about this length, clear of corners and joins. */
const EVERY: GridUnits = 14;
/** Half the width of a chevron with its edge of paper. */
const REACH: GridUnits = 0.58;
const SHORTEST: GridUnits = 3.4;
/** How far from a wire there may be something that moves its chevrons. */
const NEAR: GridUnits = 2;

/** The chevrons of one wire. */
type Chevrons = readonly Mark[];

/** The chevrons of one page at one sight as they last stood, by the corners of their wires. */
export class CurrentMemory {
  private wires: readonly SheetWire[] = [];
  private chevrons: readonly Chevrons[] = [];
  private readonly busy = new BusySpots();
  private readonly all = new ListsAgain<Chevrons, Mark>();

  /**
   * Chevrons of current, + to -, on every longer straight piece, clear of the words taken in the room. Where nothing is
   * altered they stay as they are.
   */
  currentMarks(wires: readonly SheetWire[], room: SheetRoom, altered: Altered): readonly Mark[] {
    const places = placesAmong(this.wires, wires);
    this.replaceAll(wires, places, altered);
    const chevrons = wires.map((wire, index): Chevrons => {
      const place = places[index]!;
      const isSame = wire === this.wires[place] && !(runs(wire) && altered.isNear(stretchOf(wire)));
      return isSame ? this.chevrons[place]! : runs(wire) ? chevronsOf(wire, this.busy, room) : NONE;
    });
    this.wires = wires;
    this.chevrons = chevrons;
    return this.all.join(chevrons, (each) => each);
  }

  private replaceAll(wires: readonly SheetWire[], places: readonly number[], altered: Altered): void {
    const { wires: before } = this;
    if (places.length !== before.length || places.some((place, index) => place !== index)) {
      const kept = new Set(places);
      for (const [place, wire] of before.entries()) if (!kept.has(place)) this.replace(wire, null, altered);
    }
    for (const [index, wire] of wires.entries()) {
      const last = before[places[index]!] ?? null;
      if (wire !== last) this.replace(last, wire, altered);
    }
  }

  private replace(before: SheetWire | null, after: SheetWire | null, altered: Altered): void {
    if (before && after && liesAlike(before, after)) return;
    if (before) this.busy.remove(before);
    if (after) this.busy.add(after);
    altered.note([before, after].flatMap((wire) => (wire ? [stretchOf(wire)] : [])));
  }
}

const NONE: Chevrons = [];

/** Whether current is shown to run in a wire. */
function runs({ live, flow, isBroken }: SheetWire): boolean {
  return live !== null && !isBroken && flow !== 0;
}

function chevronsOf(sheetWire: SheetWire, busy: BusySpots, room: SheetRoom): Chevrons {
  const { live, flow, corners, from, to, cut, wire } = sheetWire;
  if (live === null) return NONE;
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
