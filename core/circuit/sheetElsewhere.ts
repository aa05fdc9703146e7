import type { PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { SHEET_WORDS } from "../base/words/sheet.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Circuit } from "./circuit.ts";
import { type TerminalSpot, terminalSpots } from "./placeSymbol.ts";
import { sheetArea, zoneOf } from "./sheetArea.ts";
import type { SheetPart } from "./sheetSetup.ts";

/** Every placed terminal of every page. */
const allSpots = remember((circuit: Circuit): ReadonlyMap<PointId, TerminalSpot & { readonly page: string }> => {
  const spots = new Map<PointId, TerminalSpot & { page: string }>();
  for (const { id } of circuit.pages) {
    for (const [point, spot] of terminalSpots(circuit, id)) spots.set(point, { ...spot, page: id });
  }
  return spots;
});

/** Where a spot of a page is, as flags say it: `page 4 · D2`. */
function placeText(circuit: Circuit, page: string, spot: Spot): string {
  const number = circuit.pages.findIndex(({ id }) => id === page) + 1;
  return `${SHEET_WORDS.page}\u00A0${number} · ${zoneOf(sheetArea(circuit.pages[number - 1]!), spot)}`;
}

/** Where a point is, as flags say it; that it is not placed where it stands on no page. */
export function whereIs(circuit: Circuit, point: PointId): string {
  const spot = allSpots(circuit).get(point);
  return spot === undefined ? SHEET_WORDS.notPlaced : placeText(circuit, spot.page, spot);
}

/** Where the other ends of a page link are; that it joins nothing where there are none. */
export function otherLinks(circuit: Circuit, { part, view, kind }: SheetPart): readonly string[] {
  if (kind.name !== "page-link") return [];
  const name = view.word("name").trim();
  const others = circuit.parts.filter(
    (other) =>
      other.id !== part.id &&
      other.kind === kind.name &&
      name !== "" &&
      String(other.settings?.name ?? "").trim() === name,
  );
  const places = others.flatMap(({ id }): readonly string[] => {
    const place = circuit.placement.parts[id];
    const isOnPage = place !== undefined && circuit.pages.some((page) => page.id === place.page);
    return isOnPage ? [placeText(circuit, place.page, place)] : [];
  });
  return places.length > 0 ? places : [SHEET_WORDS.notJoined];
}
