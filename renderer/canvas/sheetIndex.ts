import type { WireId } from "../../core/base/ids.ts";
import type { GridUnits } from "../../core/base/units.ts";
import type { Mark, Spot } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOf, distanceTo } from "../../core/drawing/measure.ts";
import { distanceToPath } from "../../core/drawing/path.ts";
import type { Thing } from "../state/state.ts";
import type { Standing } from "./standing.ts";
import type { ThrowPlace } from "./throwPlaces.ts";

/** What a pointer meets: a part, wire or point, or a place to throw a switch to. */
export type Hit = { readonly thing: Thing; readonly place: ThrowPlace | null };

/** Half the side of the area by which a pin or a switch's place is met, at any zoom, in pixels. */
export const HALF_TARGET = 12;
/** How near a line is met, in pixels. */
const NEAR_LINE = 6;
/** Side of the squares by which marks are found. */
const SQUARE: GridUnits = 8;

/** What stands on a page by where it is. Made once for a drawing; a question looks at a few marks only. */
export class SheetIndex {
  private readonly squares = new Map<string, number[]>();
  private readonly marks: readonly Mark[];
  private readonly wires: ReadonlySet<WireId>;
  private readonly standing: Standing;
  private readonly places: readonly ThrowPlace[];

  constructor(marks: readonly Mark[], wires: ReadonlySet<WireId>, standing: Standing, places: readonly ThrowPlace[]) {
    this.marks = marks;
    this.wires = wires;
    this.standing = standing;
    this.places = places;
    marks.forEach((mark, index) => {
      if (mark.of === undefined) return;
      eachSquare(boundsOf(mark), (key) => {
        const list = this.squares.get(key);
        if (list) list.push(index);
        else this.squares.set(key, [index]);
      });
    });
  }

  /**
   * What is met at a spot: the nearest pin or switch's place within its target, else the nearest line or word, else the
   * body under it. Null on bare paper. `pixel` is the length of a screen pixel in grid units.
   */
  hitAt(spot: Spot, pixel: GridUnits): Hit | null {
    const target = HALF_TARGET * pixel;
    const pin = nearest(this.standing.points, ([, at]) => Math.hypot(at.x - spot.x, at.y - spot.y));
    const place = nearest(this.places, (each) => distanceToPlace(each, spot));
    if (place && place.distance <= target && place.distance < (pin?.distance ?? Number.POSITIVE_INFINITY)) {
      return { thing: { is: "part", id: place.found.part }, place: place.found };
    }
    if (pin && pin.distance <= target) return { thing: { is: "point", id: pin.found[0] }, place: null };
    const thing = this.thingAt(spot, NEAR_LINE * pixel);
    return thing && { thing, place: null };
  }

  private thingAt(spot: Spot, reach: GridUnits): Thing | null {
    let best: { readonly of: string; readonly distance: GridUnits } | null = null;
    const around = { left: spot.x - reach, top: spot.y - reach, right: spot.x + reach, bottom: spot.y + reach };
    const tried = new Set<number>();
    eachSquare(around, (key) => {
      for (const index of this.squares.get(key) ?? []) {
        if (tried.has(index)) continue;
        tried.add(index);
        const mark = this.marks[index]!;
        // A body is met where no line or word is near.
        const isBody = "role" in mark && mark.role === "body";
        const distance = distanceTo(mark, spot);
        const counted = isBody ? distance + reach : distance;
        if (distance <= reach && (best === null || counted <= best.distance))
          best = { of: mark.of!, distance: counted };
      }
    });
    const found = best as { readonly of: string } | null;
    if (found !== null) return { is: this.wires.has(found.of) ? "wire" : "part", id: found.of };
    for (const { part, box } of this.standing.parts.values()) if (isIn(box, spot)) return { is: "part", id: part.id };
    return null;
  }
}

/** From the middle of where the blade would lie to its tip: the half that moves most. */
function distanceToPlace({ foot, tip }: ThrowPlace, spot: Spot): GridUnits {
  const middle = { x: (foot.x + tip.x) / 2, y: (foot.y + tip.y) / 2 };
  return distanceToPath([middle, tip], spot);
}

function nearest<T>(
  all: Iterable<T>,
  distanceOf: (each: T) => GridUnits,
): { readonly found: T; readonly distance: GridUnits } | null {
  let best: { found: T; distance: GridUnits } | null = null;
  for (const found of all) {
    const distance = distanceOf(found);
    if (best === null || distance < best.distance) best = { found, distance };
  }
  return best;
}

function isIn({ left, top, right, bottom }: Bounds, { x, y }: Spot): boolean {
  return x >= left && x <= right && y >= top && y <= bottom;
}

function eachSquare({ left, top, right, bottom }: Bounds, act: (key: string) => void): void {
  for (let x = Math.floor(left / SQUARE); x <= Math.floor(right / SQUARE); x++) {
    for (let y = Math.floor(top / SQUARE); y <= Math.floor(bottom / SQUARE); y++) act(`${x} ${y}`);
  }
}
