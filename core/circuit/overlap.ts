import type { PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import type { Bounds } from "../drawing/measure.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit, PartPlace } from "./circuit.ts";
import { placeSymbol } from "./placeSymbol.ts";
import { restPose } from "./sheetPose.ts";
import { overlaps } from "./sheetRoom.ts";

/** A part that stands on a page, and the box of its symbol there, in grid units. */
export interface Boxed {
  readonly id: PartId;
  readonly box: Bounds;
}

/** The box that a part takes in a place, at rest; null for a kind that is not known. */
export function boxIn(circuit: Circuit, part: Part, place: PartPlace): Bounds | null {
  const kind = kindOf(part.kind);
  if (!kind) return null;
  const view = viewOf(kind, part, circuit.nominalVolts);
  return placeSymbol(kind.symbol(view, restPose(kind, view), "iec"), place).outline;
}

const boxes = remember((circuit: Circuit): ReadonlyMap<string, readonly Boxed[]> => {
  const pages = new Map<string, Boxed[]>();
  for (const part of circuit.parts) {
    const place = circuit.placement.parts[part.id];
    const box = place && boxIn(circuit, part, place);
    if (!place || !box) continue;
    const page = pages.get(place.page);
    if (page) page.push({ id: part.id, box });
    else pages.set(place.page, [{ id: part.id, box }]);
  }
  return pages;
});

/** The boxes of all parts that stand on a page, in the order of the circuit. */
export function boxesOn(circuit: Circuit, page: string): readonly Boxed[] {
  return boxes(circuit).get(page) ?? [];
}

/** The parts of a page over which a box lies, but for some that are not asked about. */
export function partsUnder(
  circuit: Circuit,
  page: string,
  box: Bounds,
  but: ReadonlySet<PartId> = NOBODY,
): readonly PartId[] {
  return boxesOn(circuit, page).flatMap(({ id, box: other }) => (!but.has(id) && overlaps(box, other) ? [id] : []));
}

/** True where one box lies just over the other: what is below can no longer be seen. */
export function hides(one: Bounds, other: Bounds): boolean {
  return (["left", "top", "right", "bottom"] as const).every((side) => Math.abs(one[side] - other[side]) < SAME);
}

const NOBODY: ReadonlySet<PartId> = new Set();
/** Edges nearer than this are one. */
const SAME: GridUnits = 0.25;
