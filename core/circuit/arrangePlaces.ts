import type { PartId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { ArrangeAnswer, ArrangeNode, ArrangeQuestion, Places } from "./arrange.ts";
import { placeIn } from "./arrangeQuestion.ts";
import { boxOf, poseOf, type Spread } from "./arrangeSpread.ts";
import type { Circuit, Page, PartPlace } from "./circuit.ts";
import { sheetArea } from "./sheetArea.ts";
import { sheetPage } from "./sheetPage.ts";
import { overlaps } from "./sheetRoom.ts";

/** Room that parts keep between each other for wires and words, grid units; where a page is crowded, less. */
const APART: readonly GridUnits[] = [3, 2, 1, 0];
/** For parts whose room was weighed already: anything more would bend wires that are straight. */
export const AS_WEIGHED: readonly GridUnits[] = [0];
/** Room to the frame. */
const FROM_FRAME: GridUnits = 4;

/** What the parts that move have to keep within, and clear of. */
export interface ArrangeRoom {
  readonly area: Bounds;
  readonly standing: readonly Bounds[];
}

/** The room of a page for those that may move: within the frame, banner and title block, clear of all that stay. */
export function arrangeRoom(circuit: Circuit, page: Page, question: ArrangeQuestion): ArrangeRoom {
  const { left, top, right, bottom } = sheetArea(page).drawing;
  const asked = new Set(question.nodes.map(({ id }) => id));
  return {
    area: {
      left: Math.ceil(left + FROM_FRAME),
      top: Math.ceil(top + FROM_FRAME),
      right: Math.floor(right - FROM_FRAME),
      bottom: Math.floor(bottom - FROM_FRAME),
    },
    standing: sheetPage(circuit, page.id, "iec").parts.flatMap((each) =>
      asked.has(each.part.id) ? [] : [each.placed(each.rest).outline],
    ),
  };
}

/** The places that an answer comes to on the page, snapped to the grid; null where the page has no room for them. */
export function answeredPlaces({ nodes }: ArrangeQuestion, answer: ArrangeAnswer, room: ArrangeRoom): Places | null {
  const corners = setOnPage(nodes, answer, room.area);
  const wanted = nodes.map((node) => ({ node, pose: node.poses[0], ...(corners.get(node.id) ?? node.place) }));
  return clearPlaces(wanted, room);
}

/** The places where the parts stand now, cleared of each other; null where the page has no room for them. */
export function presentPlaces({ nodes }: ArrangeQuestion, room: ArrangeRoom): Places | null {
  const wanted = nodes.map((node) => ({ node, pose: poseOf(node, node.place), x: node.place.x, y: node.place.y }));
  return clearPlaces(wanted, room);
}

/**
 * Parts in the free places nearest to where they are wanted, as far `apart` of each other and of what stays as there is
 * room for; the biggest choose first. Null where the page has no room for them.
 */
export function clearPlaces(
  wanted: readonly Spread[],
  room: ArrangeRoom,
  apart: readonly GridUnits[] = APART,
): Places | null {
  for (const each of apart) {
    const places = setApart(wanted, room, each);
    if (places) return places;
  }
  return null;
}

type Corners = ReadonlyMap<PartId, { readonly x: number; readonly y: number }>;

/** Moves the layout to where the parts that stay belong in it, or to the middle; pressed together where it is too big. */
function setOnPage(nodes: readonly ArrangeNode[], answer: ArrangeAnswer, area: Bounds): Corners {
  const laid = nodes.flatMap((node) => (answer[node.id] ? [{ node, ...answer[node.id]! }] : []));
  const across = axis(
    laid.map(({ node, x }) => ({ at: x, size: node.poses[0].width, stays: node.isFixed ? node.place.x : null })),
    area.left,
    area.right,
  );
  const down = axis(
    laid.map(({ node, y }) => ({ at: y, size: node.poses[0].height, stays: node.isFixed ? node.place.y : null })),
    area.top,
    area.bottom,
  );
  return new Map(laid.map(({ node }, index) => [node.id, { x: across[index]!, y: down[index]! }]));
}

interface Along {
  readonly at: number;
  readonly size: GridUnits;
  readonly stays: GridUnits | null;
}

function axis(laid: readonly Along[], from: GridUnits, to: GridUnits): readonly GridUnits[] {
  const first = Math.min(...laid.map(({ at }) => at));
  const last = Math.max(...laid.map(({ at, size }) => at + size));
  const scale = Math.min(1, (to - from) / (last - first));
  const pressed = laid.map(({ at, size }) => {
    // The middle of a part moves, so that the outermost keep inside.
    const middle = (at + size / 2 - first) * scale;
    return Math.min(Math.max(middle - size / 2, 0), (last - first) * scale - size);
  });
  const shifts = laid.flatMap(({ stays }, index) => (stays === null ? [] : [stays - pressed[index]!]));
  const middle = from + (to - from - (last - first) * scale) / 2;
  const shift = Math.round(shifts.length > 0 ? median(shifts) : middle);
  return pressed.map((at, index) => {
    const rounded = Math.round(at + shift);
    return Math.min(Math.max(rounded, from), Math.max(from, to - laid[index]!.size));
  });
}

function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}

function setApart(wanted: readonly Spread[], { area, standing }: ArrangeRoom, apart: GridUnits): Places | null {
  const taken = [...standing, ...wanted.filter(({ node }) => node.isFixed).map(boxOf)];
  const places = new Map<PartId, PartPlace>();
  const free = wanted.filter(({ node }) => !node.isFixed);
  const sizeOf = ({ pose }: Spread): number => pose.width * pose.height;
  for (const each of free.sort((a, b) => sizeOf(b) - sizeOf(a))) {
    const at = nearest(each, (x, y) => {
      const box = boxOf({ ...each, x, y });
      const isInside =
        box.left >= area.left && box.top >= area.top && box.right <= area.right && box.bottom <= area.bottom;
      return isInside && !taken.some((other) => overlaps(grown(other, apart), box));
    });
    if (!at) return null;
    places.set(each.node.id, placeIn(each.node.place, each.pose, at));
    taken.push(boxOf({ ...each, ...at }));
  }
  return places;
}

/** As far as any sheet is wide. */
const FARTHEST: GridUnits = 200;

/** The free spot nearest to one, ring by ring. */
function nearest({ x, y }: { readonly x: number; readonly y: number }, isFree: (x: number, y: number) => boolean) {
  if (isFree(x, y)) return { x, y };
  for (let ring = 1; ring < FARTHEST; ring++) {
    for (let step = -ring; step <= ring; step++) {
      for (const [dx, dy] of [
        [step, -ring],
        [step, ring],
        [-ring, step],
        [ring, step],
      ] as const) {
        if (isFree(x + dx, y + dy)) return { x: x + dx, y: y + dy };
      }
    }
  }
  return null;
}

function grown({ left, top, right, bottom }: Bounds, by: GridUnits): Bounds {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}
