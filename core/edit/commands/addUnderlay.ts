import { type Outcome, refuse } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import { PICTURE_TYPES, type Picture, type Underlay } from "../../circuit/circuit.ts";
import { fitted, underlaysOf } from "../../circuit/underlays.ts";
import type { Quad } from "../../drawing/projection.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { nextId } from "../ids.ts";
import { pageOf } from "../pageFields.ts";
import { labelNeeded } from "../typed.ts";
import { lieRefusal, MOST_UNDERLAYS, rounded } from "../underlayFields.ts";

/** A printed page that is brought in; without corners it is laid as large as the page takes. */
export interface UnderlayGiven {
  readonly title: string;
  readonly image: Picture;
  readonly corners?: Quad;
}

/** Most pixels along a side and in all, as a circuit file takes them. */
const MOST = { side: 12_000, millions: 24 } as const;

/**
 * Puts a printed page under the drawing of a page, over those that lie there. Refuses `page-unknown`, `label-empty`,
 * `label-long`, `underlays-many`, `picture-described`, `picture-pixels`, and corners as `lieRefusal` does.
 */
export function addUnderlay(bench: Bench, pageId: string, given: UnderlayGiven): Outcome<Edit> {
  const page = pageOf(bench.circuit, pageId);
  if (!page.ok) return page;
  const title = labelNeeded(given.title);
  if (!title.ok) return title;
  const { underlays = [] } = page.value;
  if (underlays.length >= MOST_UNDERLAYS) return refuse("underlays-many", { most: MOST_UNDERLAYS });
  const { sha256, mime, widthPx, heightPx } = given.image;
  const isSide = (side: number): boolean => Number.isInteger(side) && side >= 1 && side <= MOST.side;
  const isDescribed = /^[0-9a-f]{64}$/.test(sha256) && PICTURE_TYPES.includes(mime);
  if (!isDescribed || !isSide(widthPx) || !isSide(heightPx)) return refuse("picture-described");
  if (widthPx * heightPx > MOST.millions * 1e6) return refuse("picture-pixels", { most: MOST.millions });
  const underlay: Underlay = {
    id: nextId("u", new Set(underlaysOf(bench.circuit).map(({ underlay }) => underlay.id))),
    title: title.value,
    image: { sha256, mime, widthPx, heightPx },
    corners: rounded(given.corners ?? fitted(page.value, widthPx, heightPx)),
  };
  const refusal = lieRefusal(page.value, underlay);
  if (refusal) return { ok: false, refusal };
  return editOf(bench, PRINTED_NAMES.add(title.value), [
    { change: "item", list: "pages", id: pageId, field: "underlays", value: [...underlays, underlay] },
  ]);
}
