import type { Wanted } from "./dockPlace.ts";
import type { SheetSurface } from "./surface.ts";
import { pixelOf } from "./viewport.ts";

/** A terminal without a wire is likelier to be the next one. */
const WITHOUT_WIRE = 3;
const WITH_WIRE = 1;

/** The terminals of the page where the next wire may begin or end, in pixels of the window. */
export function wantedNext({ standing, shown, view }: SheetSurface): readonly Wanted[] {
  const wired = new Set(shown.circuit.wires.flatMap(({ from, to }) => [from, to]));
  return [...standing.points].map(([point, spot]) => ({
    at: pixelOf(view, spot),
    weight: wired.has(point) ? WITH_WIRE : WITHOUT_WIRE,
  }));
}
