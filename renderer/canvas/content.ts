import { remember } from "../../core/base/memo.ts";
import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { sheetBox } from "../../core/circuit/sheetBox.ts";
import { boundsOfSpots } from "../../core/drawing/measure.ts";
import { boxAround, type Corner } from "../../core/drawing/projection.ts";
import type { Look } from "../../core/parts/kind.ts";
import { paperOf } from "./paperEdge.ts";
import { type PaperBox, paperBox } from "./viewport.ts";

const NOTHING: PaperBox = { left: 0, top: 0, right: 0, bottom: 0 };

const contents = remember((_: Circuit) => new Map<string, PaperBox>());

/** The page of this id, if there is one. */
export function pageAt({ pages }: Circuit, id: string): Page | undefined {
  return pages.find((page) => page.id === id);
}

/** The box round what is drawn of a page at rest with words set for a zoom, or the paper where nothing is. */
export function contentOf(circuit: Circuit, page: string, look: Look, level: number): PaperBox {
  const key = `${look} ${level} ${page}`;
  const known = contents(circuit).get(key);
  if (known) return known;
  const drawn = sheetBox({ circuit, page, look, zoom: level });
  const box = withPapers(pageAt(circuit, page), drawn.ok && drawn.value ? paperBox(drawn.value) : null);
  contents(circuit).set(key, box);
  return box;
}

/** The box round the places of the parts of a page; null where there are none. */
export function placesOf({ placement }: Circuit, page: string): PaperBox | null {
  const places = Object.values(placement.parts).filter((place) => place.page === page);
  return places.length === 0 ? null : paperBox(boundsOfSpots(places));
}

/** Printed pages that are shown belong to what is fitted into the window, as far as they lie on the page. */
function withPapers(page: Page | undefined, drawn: PaperBox | null): PaperBox {
  if (!page) return drawn ?? NOTHING;
  const corners = (page.underlays ?? []).flatMap(({ isHidden, corners: each }) => (isHidden ? [] : each));
  if (corners.length === 0) return drawn ?? paperOf(page);
  const within = corners.map(
    ([x, y]): Corner => [Math.min(page.widthMm, Math.max(0, x)), Math.min(page.heightMm, Math.max(0, y))],
  );
  const spots: readonly Corner[] = drawn ? [[drawn.left, drawn.top], [drawn.right, drawn.bottom], ...within] : within;
  return boxAround(spots);
}
