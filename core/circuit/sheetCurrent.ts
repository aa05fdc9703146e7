import type { Amps, GridUnits } from "../base/units.ts";
import { chevronMarks } from "../drawing/glyph.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import { spotAlong } from "../drawing/path.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import { piecesOf, type SheetWire, spotKey } from "./sheetWire.ts";

/** One chevron for each stretch of about this length, clear of corners and joins. */
const EVERY: GridUnits = 14;
const CLEAR: GridUnits = 1.4;
/** Half the width of a chevron with its edge of paper. */
const REACH: GridUnits = 0.58;
const SHORTEST: GridUnits = 3.4;
/** Less current than this is not shown. */
const LEAST_AMPS: Amps = 0.005;
/** Side of the squares by which busy spots are found again; no less than CLEAR, so that they lie in or next to one. */
const SQUARE: GridUnits = 2;

/** Spots where no chevron may stand, by the square that they lie in. */
type Busy = ReadonlyMap<number, readonly Spot[]>;

/** Chevrons of current, + to -, on every longer straight piece, clear of the words taken in the room. */
export function currentMarks(wires: readonly SheetWire[], room: SheetRoom): readonly Mark[] {
  const busy = busySpots(wires);
  return wires.flatMap(({ live, corners, from, to, cut, isBroken, wire }) => {
    if (live === null || isBroken || Math.abs(live.amps) < LEAST_AMPS) return [];
    return piecesOf(corners, from, to).flatMap(({ start, length }) => {
      if (length < SHORTEST) return [];
      const count = Math.max(1, Math.round(length / EVERY));
      return Array.from({ length: count }, (_, i) => start + (length * (i + 0.5)) / count).flatMap((wanted) => {
        const place = clearPlace(corners, wanted, Math.min(length / count / 2, 4), busy, room);
        if (place === null) return [];
        const { at, degrees } = spotAlong(corners, place);
        return chevronMarks(
          at,
          live.amps > 0 ? degrees : degrees + 180,
          live.state[cut !== null && place > cut ? 1 : 0],
          wire.id,
        );
      });
    });
  });
}

/** The place nearest to the wanted length that is clear of corners, ends, joins and crossings. */
function clearPlace(
  corners: readonly Spot[],
  wanted: GridUnits,
  most: GridUnits,
  busy: Busy,
  room: SheetRoom,
): GridUnits | null {
  for (let shift = 0; shift <= most; shift += 0.5) {
    for (const place of [wanted + shift, wanted - shift]) {
      const { at } = spotAlong(corners, place);
      const box = { left: at.x, top: at.y, right: at.x, bottom: at.y };
      if (isClear(at, busy) && room.isFree(box, REACH)) return place;
    }
  }
  return null;
}

function isClear(at: Spot, busy: Busy): boolean {
  const [column, row] = [Math.floor(at.x / SQUARE), Math.floor(at.y / SQUARE)];
  for (let x = column - 1; x <= column + 1; x++) {
    for (let y = row - 1; y <= row + 1; y++) {
      const near = busy.get(spotKey(x, y));
      if (near?.some((spot) => Math.hypot(at.x - spot.x, at.y - spot.y) < CLEAR)) return false;
    }
  }
  return true;
}

/** Corners, ends, joins and crossings of all wires. */
function busySpots(wires: readonly SheetWire[]): Busy {
  const busy = new Map<number, Spot[]>();
  const add = (spot: Spot): void => {
    const key = spotKey(Math.floor(spot.x / SQUARE), Math.floor(spot.y / SQUARE));
    const list = busy.get(key);
    if (list) list.push(spot);
    else busy.set(key, [spot]);
  };
  const passed = new Set<number>();
  for (const { corners, dots, from, to } of wires) {
    corners.forEach(add);
    for (const { at } of dots) add(at);
    for (const { a, b, length } of piecesOf(corners, from, to)) {
      for (let n = 1; n < length; n++) {
        const at = { x: a.x + ((b.x - a.x) * n) / length, y: a.y + ((b.y - a.y) * n) / length };
        const key = spotKey(at.x, at.y);
        if (passed.has(key)) add(at);
        else passed.add(key);
      }
    }
  }
  return busy;
}
