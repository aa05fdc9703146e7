import type { Spot } from "../../core/drawing/mark.ts";
import type { Thing } from "../state/state.ts";
import type { PixelBox } from "./cardPlace.ts";
import { wireRuns } from "./places.ts";
import type { SheetSurface } from "./surface.ts";
import { pixelOf } from "./viewport.ts";

/** Covering a wire that is explained costs this much more than covering a part; other lines cost little. */
const OWN_WIRE = 8;
const PART = 1;
/** Half the width that a wire is given, pixels. */
const ROUND_WIRE = 10;

/** What a card about a thing should not cover: its own wires above all, then the parts of the page. */
export function clearBoxes(
  { marks, standing, view, shown }: SheetSurface,
  thing: Thing,
): readonly { readonly box: PixelBox; readonly weight: number }[] {
  const wires = thing.is === "wire" ? [thing.id] : wiresAt(shown.circuit, thing.id);
  const own = wires
    .flatMap((wire) => wireRuns(marks, wire))
    .flatMap((run) => run.slice(1).map((spot, index) => ({ box: pieceBox(run[index]!, spot), weight: OWN_WIRE })));
  const parts = [...standing.parts.values()].map(({ box: { left, top, right, bottom } }) => {
    const [from, to] = [pixelOf(view, { x: left, y: top }), pixelOf(view, { x: right, y: bottom })];
    return { box: { left: from.x, top: from.y, right: to.x, bottom: to.y }, weight: PART };
  });
  return [...own, ...parts];

  function pieceBox(from: Spot, to: Spot): PixelBox {
    const [a, b] = [pixelOf(view, from), pixelOf(view, to)];
    return {
      left: Math.min(a.x, b.x) - ROUND_WIRE,
      top: Math.min(a.y, b.y) - ROUND_WIRE,
      right: Math.max(a.x, b.x) + ROUND_WIRE,
      bottom: Math.max(a.y, b.y) + ROUND_WIRE,
    };
  }
}

function wiresAt({ wires }: SheetSurface["shown"]["circuit"], point: string): readonly string[] {
  return wires.flatMap(({ id, from, to }) => (from === point || to === point ? [id] : []));
}
