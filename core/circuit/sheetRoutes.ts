import type { GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { PlacedShape, TerminalSpot } from "./placeSymbol.ts";
import { type Routes, routeWires } from "./route.ts";
import type { RouteEnd } from "./routeEnds.ts";
import type { RouteMemory } from "./routeMemory.ts";
import type { RouteWire } from "./routePage.ts";
import type { SheetSetup } from "./sheetSetup.ts";

/**
 * Corners of all wires that have both ends on this page, round its symbols and `bodies`, off the words where they can.
 * What is left of the laying `before` is taken from it.
 */
export function sheetRoutes(
  setup: SheetSetup,
  bodies: readonly Bounds[],
  words: readonly Bounds[],
  before: RouteMemory | null = null,
): Routes {
  const { circuit, parts, area } = setup;
  const wires = setup.wires.flatMap(({ wire, ends: [from, to] }): readonly RouteWire[] => {
    if (from === undefined || to === undefined) return [];
    const bends = circuit.placement.wires[wire.id];
    return [
      { id: wire.id, from: endAt(from), to: endAt(to), ...(bends !== undefined && bends.length > 0 && { bends }) },
    ];
  });
  const outlines = parts.map(({ shape }) => shape.outline);
  const across = parts.flatMap(({ shape }) => waysAcross(shape));
  const bounds = boundsRound(area.drawing, outlines);
  return routeWires({ bounds, bodies: [...outlines, ...bodies], words, across, wires }, before);
}

function endAt({ x, y, side, body }: TerminalSpot & { readonly body: number }): RouteEnd {
  return { spot: { x, y }, side, body };
}

/** How far a wire that crosses a bar keeps from its terminals and its ends. */
const FROM_TAP: GridUnits = 2;

/** Straight ways across a symbol that is a bar, from edge to edge, between its terminals; none across any other. */
export function waysAcross({ outline, bar, terminals }: PlacedShape): readonly Bounds[] {
  if (!bar) return [];
  const isLevel = bar[0].y === bar[1].y;
  const along = (spot: Spot): GridUnits => (isLevel ? spot.x : spot.y);
  const taken = [...Object.values(terminals), ...bar].map(along);
  const [from, to] = [Math.min(...bar.map(along)), Math.max(...bar.map(along))];
  const between = Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
  const free = between.filter((at) => taken.every((tap) => Math.abs(at - tap) >= FROM_TAP));
  return free.map((at) => (isLevel ? { ...outline, left: at, right: at } : { ...outline, top: at, bottom: at }));
}

/** The room for the drawing, grown where parts have been placed outside it. */
function boundsRound(drawing: Bounds, outlines: readonly Bounds[]): Bounds {
  return outlines.reduce(
    (all, { left, top, right, bottom }) => ({
      left: Math.min(all.left, left - 1),
      top: Math.min(all.top, top - 1),
      right: Math.max(all.right, right + 1),
      bottom: Math.max(all.bottom, bottom + 1),
    }),
    { left: drawing.left + 1, top: drawing.top + 1, right: drawing.right - 1, bottom: drawing.bottom - 1 },
  );
}
