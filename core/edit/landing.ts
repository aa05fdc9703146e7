import type { PartId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { Circuit, PartPlace } from "../circuit/circuit.ts";
import { boxesOn, boxIn, hides } from "../circuit/overlap.ts";
import { overlaps } from "../circuit/sheetRoom.ts";
import type { Bounds } from "../drawing/measure.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import type { Part } from "../parts/kind.ts";
import type { Fragment } from "./fragment.ts";

/** So far is looked for a free place each way, and in such steps, in grid units. */
const FARTHEST: GridUnits = 80;
const STEP: GridUnits = 2;
/** Room left to what stands there: nearer, two terminals would look like one. */
const ROOM: GridUnits = 1;
/** Up and to the left comes after as far down and to the right. */
const BACKWARDS = 0.5;

/**
 * Where a fragment is wanted: what is added to its places, in grid units, and the page of each of its parts. Where
 * something stands there it lands beside.
 */
export interface Landing {
  readonly x: GridUnits;
  readonly y: GridUnits;
  pageOf(part: PartId): string;
}

/** So far to the right and down, in grid units. */
export type Shift = readonly [GridUnits, GridUnits];

/** Ways to shift, the shortest first; listed once they are first asked for. */
let shifts: readonly Shift[] | null = null;

/** A part that is to be put on a page. */
export interface Arriving {
  readonly part: Part;
  readonly place: PartPlace;
}

/** The parts of a fragment that stand somewhere, where they are wanted. */
export function arrivingOf({ parts, places }: Fragment, { x, y, pageOf }: Landing): readonly Arriving[] {
  return parts.flatMap((part) => {
    const place = places[part.id];
    return place ? [{ part, place: { ...place, page: pageOf(part.id), x: place.x + x, y: place.y + y } }] : [];
  });
}

/**
 * How far parts that come in together are best shifted, to the right and down in grid units: as little as leaves them whole
 * on their pages and clear of all that stands there. Where there is no such place they at least hide nothing; where they
 * do not fit at all, nothing is shifted.
 */
export function clearShift(circuit: Circuit, arriving: readonly Arriving[]): Shift {
  const boxes = arriving.flatMap(({ part, place }) => {
    const box = boxIn(circuit, part, place);
    return box ? [{ page: place.page, box }] : [];
  });
  const pages = new Map(circuit.pages.map((page) => [page.id, page]));
  shifts ??= everyShift();
  const isOn = (shift: Shift): boolean =>
    boxes.every(({ page, box }) => {
      const { left, top, right, bottom } = shifted(box, shift);
      const sheet = pages.get(page);
      if (!sheet) return false;
      return left >= 0 && top >= 0 && right <= gridUnitsOf(sheet.widthMm) && bottom <= gridUnitsOf(sheet.heightMm);
    });
  const leaves = (shift: Shift, isBad: (one: Bounds, other: Bounds) => boolean): boolean =>
    boxes.every(({ page, box }) => {
      const there = shifted(box, shift);
      return boxesOn(circuit, page).every((standing) => !isBad(there, standing.box));
    });
  return (
    shifts.find((shift) => isOn(shift) && leaves(shift, (one, other) => overlaps(grown(one), other))) ??
    shifts.find((shift) => isOn(shift) && leaves(shift, hides)) ?? [0, 0]
  );
}

function shifted({ left, top, right, bottom }: Bounds, [dx, dy]: Shift): Bounds {
  return { left: left + dx, top: top + dy, right: right + dx, bottom: bottom + dy };
}

function grown({ left, top, right, bottom }: Bounds): Bounds {
  return { left: left - ROOM, top: top - ROOM, right: right + ROOM, bottom: bottom + ROOM };
}

function everyShift(): readonly Shift[] {
  const steps = Array.from({ length: (2 * FARTHEST) / STEP + 1 }, (_, index) => index * STEP - FARTHEST);
  const all = steps.flatMap((dx) => steps.map((dy): Shift => [dx, dy]));
  const cost = ([dx, dy]: Shift): number => Math.hypot(dx, dy) + (dx < 0 ? BACKWARDS : 0) + (dy < 0 ? BACKWARDS : 0);
  return all.sort((one, other) => cost(one) - cost(other));
}
