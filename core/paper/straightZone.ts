import type { Circuit } from "../circuit/circuit.ts";
import { sheetArea, zoneOf } from "../circuit/sheetArea.ts";
import { sheetPage } from "../circuit/sheetPage.ts";
import type { BranchRow } from "../live/branch.ts";

/** Where a row stands on the drawing: `2 · D5`, the page left out where there is but one; "" for what stands nowhere. */
export function rowZone(circuit: Circuit, { entry, exit }: BranchRow): string {
  for (const [index, page] of circuit.pages.entries()) {
    const { spots } = sheetPage(circuit, page.id, "iec");
    const spot = spots.get(entry.point ?? "") ?? spots.get(exit.point ?? "");
    if (!spot) continue;
    const zone = zoneOf(sheetArea(page), spot);
    return circuit.pages.length > 1 ? `${index + 1} · ${zone}` : zone;
  }
  return "";
}
