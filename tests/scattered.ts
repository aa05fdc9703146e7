import type { Circuit, PartPlace } from "../core/circuit/circuit.ts";
import { sheetArea } from "../core/circuit/sheetArea.ts";
import { sheetPage } from "../core/circuit/sheetPage.ts";
import { lotsOf } from "./lots.ts";

/** The circuit with the parts of a page thrown about in the room for the drawing, pinned ones excepted, and all bends gone. */
export function scattered(circuit: Circuit, page: string, seed: number): Circuit {
  const lots = lotsOf(seed);
  const { drawing } = sheetArea(circuit.pages.find(({ id }) => id === page)!);
  const thrown = sheetPage(circuit, page, "iec").parts.flatMap(({ part, placed, rest }) => {
    const place = circuit.placement.parts[part.id]!;
    if (place.pinned) return [];
    const { left, right, top, bottom } = placed(rest).outline;
    const at = (from: number, to: number): number => Math.ceil(from + 1 + lots.between(0, Math.max(0, to - from - 3)));
    const there: PartPlace = {
      ...place,
      x: at(drawing.left, drawing.right - (right - left)),
      y: at(drawing.top, drawing.bottom - (bottom - top)),
    };
    return [[part.id, there] as const];
  });
  const parts = { ...circuit.placement.parts, ...Object.fromEntries(thrown) };
  return { ...circuit, placement: { parts, wires: {} } };
}
