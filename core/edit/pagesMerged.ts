import { type Outcome, ok } from "../base/outcome.ts";
import type { GridUnits } from "../base/units.ts";
import type { Circuit, Page, Underlay } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { boxAround, moved } from "../drawing/projection.ts";
import { gridUnitsOf, millimetresOf } from "../drawing/scale.ts";
import type { Change } from "./change.ts";
import { sizeRefusal } from "./pageFields.ts";
import { placing, shapeAt } from "./standOnPage.ts";
import { rounded } from "./underlayFields.ts";
import { pageWith } from "./wireEnds.ts";

/** Room for names and wires between the two drawings, and between a drawing and the edge of its page. */
const BETWEEN: GridUnits = 12;
const EDGE: GridUnits = 8;

interface Box {
  readonly left: GridUnits;
  readonly top: GridUnits;
  readonly right: GridUnits;
  readonly bottom: GridUnits;
}

/** How far the drawing of a page moves on another, and how large that must be for both. */
interface Beside {
  readonly dx: GridUnits;
  readonly dy: GridUnits;
  readonly width: GridUnits;
  readonly height: GridUnits;
}

/**
 * The changes that bring all of a page onto another one, beside what stands there or below it, whichever asks for the
 * smaller page: parts, bends, printed pages. The page that is left stays, with nothing on it. Refuses `page-size`.
 */
export function broughtOver(circuit: Circuit, from: Page, onto: Page): Outcome<readonly Change[]> {
  const { dx, dy, width, height } = besideOf(circuit, from, onto);
  const sized = { ...onto, widthMm: grownTo(onto.widthMm, width), heightMm: grownTo(onto.heightMm, height) };
  const refusal = sizeRefusal(sized.widthMm, sized.heightMm);
  if (refusal) return { ok: false, refusal };
  const changes: Change[] = (["widthMm", "heightMm"] as const).flatMap((field) =>
    sized[field] === onto[field] ? [] : [{ change: "item", list: "pages", id: onto.id, field, value: sized[field] }],
  );
  const grown: Circuit = { ...circuit, pages: circuit.pages.map((page) => (page === onto ? sized : page)) };
  for (const [id, place] of Object.entries(circuit.placement.parts)) {
    if (place.page !== from.id) continue;
    const placed = placing(grown, partAt(circuit, id)!, { ...place, page: onto.id, x: place.x + dx, y: place.y + dy });
    if (!placed.ok) return placed;
    changes.push(placed.value);
  }
  return ok([...changes, ...bendsMoved(circuit, from, dx, dy), ...printsMoved(from, onto, dx, dy)]);
}

function grownTo(now: number, units: GridUnits): number {
  return Math.max(now, millimetresOf(Math.ceil(units)));
}

function bendsMoved(circuit: Circuit, from: Page, dx: GridUnits, dy: GridUnits): readonly Change[] {
  return circuit.wires.flatMap(({ id, from: one, to }): readonly Change[] => {
    const bends = circuit.placement.wires[id];
    if (!bends || pageWith(circuit, [one, to])?.id !== from.id) return [];
    return [{ change: "entry", record: "bends", key: id, value: bends.map(([x, y]) => [x + dx, y + dy] as const) }];
  });
}

/** Printed pages go along under the drawing that they lie under, above those that lie there. */
function printsMoved(from: Page, onto: Page, dx: GridUnits, dy: GridUnits): readonly Change[] {
  const lie = (underlay: Underlay): Underlay => ({
    ...underlay,
    corners: rounded(moved(underlay.corners, millimetresOf(dx), millimetresOf(dy))),
  });
  const coming = from.underlays ?? [];
  if (coming.length === 0) return [];
  const value = [...(onto.underlays ?? []), ...coming.map(lie)];
  return [
    { change: "item", list: "pages", id: from.id, field: "underlays" },
    { change: "item", list: "pages", id: onto.id, field: "underlays", value },
  ];
}

function besideOf(circuit: Circuit, from: Page, onto: Page): Beside {
  const [going, standing] = [drawnOn(circuit, from), drawnOn(circuit, onto)];
  const [width, height] = [gridUnitsOf(onto.widthMm), gridUnitsOf(onto.heightMm)];
  if (!going || !standing) return { dx: 0, dy: 0, width: far(going?.right, width), height: far(going?.bottom, height) };
  // What has room above or left of it is drawn up to the edge before the page grows.
  const slack = (start: GridUnits, end: GridUnits, side: GridUnits): GridUnits =>
    -Math.floor(Math.max(0, Math.min(start - EDGE, end + EDGE - side)));
  const [up, left] = [slack(going.top, going.bottom, height), slack(going.left, going.right, width)];
  const across = Math.ceil(standing.right + BETWEEN - going.left);
  const down = Math.ceil(standing.bottom + BETWEEN - going.top);
  const ways = [
    { dx: across, dy: up },
    { dx: left, dy: down },
  ].map(
    ({ dx, dy }): Beside => ({ dx, dy, width: far(going.right + dx, width), height: far(going.bottom + dy, height) }),
  );
  return ways.reduce((best, way) => (way.width * way.height < best.width * best.height ? way : best));
}

/** How large a side must be for a drawing that ends there, and is at least. */
function far(end: GridUnits | undefined, least: GridUnits): GridUnits {
  return end === undefined ? least : Math.max(least, end + EDGE);
}

/** The box round all that stands or lies on a page; undefined where that is nothing. */
function drawnOn(circuit: Circuit, page: Page): Box | undefined {
  const { placement, wires } = circuit;
  const boxes: Box[] = [];
  for (const [id, place] of Object.entries(placement.parts))
    if (place.page === page.id) boxes.push(shapeAt(circuit, partAt(circuit, id)!, place).outline);
  for (const { id, from, to } of wires) {
    const bends = placement.wires[id] ?? [];
    if (bends.length > 0 && pageWith(circuit, [from, to])?.id === page.id) boxes.push(boxAround(bends));
  }
  for (const { corners } of page.underlays ?? [])
    boxes.push(boxAround(corners.map(([x, y]) => [gridUnitsOf(x), gridUnitsOf(y)] as const)));
  if (boxes.length === 0) return undefined;
  return boxAround(boxes.flatMap(({ left, top, right, bottom }) => [[left, top] as const, [right, bottom] as const]));
}
