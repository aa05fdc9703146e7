import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { isInPicture, ontoPicture } from "../circuit/underlays.ts";
import type { Spot } from "../drawing/mark.ts";
import { spotAlong } from "../drawing/path.ts";
import { type Corner, inverse, projected, projectionOf, type Quad, rectangle } from "../drawing/projection.ts";
import { millimetresOf } from "../drawing/scale.ts";
import type { Printed } from "../parts/kind.ts";
import { shapeAt } from "./standOnPage.ts";
import { pathOf } from "./wirePath.ts";

/**
 * The spot of the topmost printed page in sight that lies under the middle of a part or wire; null where it is not drawn or
 * no printed page lies there.
 */
export function printedUnder(circuit: Circuit, id: string): Printed | null {
  const drawn = middleOf(circuit, id);
  const page = circuit.pages.find((each) => each.id === drawn?.page);
  if (!drawn || !page) return null;
  const spot: Corner = [millimetresOf(drawn.at.x), millimetresOf(drawn.at.y)];
  const underlays = (page.underlays ?? []).filter(({ isHidden, corners }) => !isHidden && isOn(corners, spot));
  const underlay = underlays.at(-1);
  if (!underlay) return null;
  const [x, y] = projected(ontoPicture(underlay), spot).map(Math.round) as [number, number];
  return isInPicture(underlay, [x, y]) ? { underlay: underlay.id, x, y } : null;
}

function middleOf(circuit: Circuit, id: string): { readonly page: string; readonly at: Spot } | null {
  const part = partAt(circuit, id);
  const place = circuit.placement.parts[id];
  if (part && place) {
    const { left, top, right, bottom } = shapeAt(circuit, part, place).outline;
    return { page: place.page, at: { x: (left + right) / 2, y: (top + bottom) / 2 } };
  }
  const wire = circuit.wires.find((each) => each.id === id);
  const path = wire ? pathOf(circuit, wire) : null;
  return path && { page: path.page.id, at: spotAlong(path.corners, path.length / 2).at };
}

/** Whether a spot of the page lies between the corners. */
function isOn(corners: Quad, spot: Corner): boolean {
  const [across, down] = projected(inverse(projectionOf(rectangle(0, 0, 1, 1), corners)), spot);
  return across >= 0 && across <= 1 && down >= 0 && down <= 1;
}
