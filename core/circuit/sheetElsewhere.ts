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

/** Where spots of a page are, as flags say it: `page 4 · D2`, `page 3 · A1, A5`. */
function placeText(circuit: Circuit, page: string, spots: readonly Spot[]): string {
  const number = circuit.pages.findIndex(({ id }) => id === page) + 1;
  const area = sheetArea(circuit.pages[number - 1]!);
  return `${SHEET_WORDS.page}\u00A0${number} · ${spots.map((spot) => zoneOf(area, spot)).join(", ")}`;
}

/** Where a point is, as flags say it; that it is not placed where it stands on no page. */
export function whereIs(circuit: Circuit, point: PointId): string {
  const spot = allSpots(circuit).get(point);
  return spot === undefined ? SHEET_WORDS.notPlaced : placeText(circuit, spot.page, [spot]);
}

/** Where the other ends of a page link are, page by page; that it joins nothing where there are none. */
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
  const places = circuit.pages.flatMap((page): readonly string[] => {
    const spots = others.flatMap(({ id }) => {
      const place = circuit.placement.parts[id];
      return place?.page === page.id ? [place] : [];
    });
    return spots.length > 0 ? [placeText(circuit, page.id, spots)] : [];
  });
  return places.length > 0 ? places : [SHEET_WORDS.notJoined];
}
