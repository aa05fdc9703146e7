import type { Share } from "../../core/base/units.ts";
import type { Circuit, Underlay } from "../../core/circuit/circuit.ts";
import { FIRST_LOOK, fitted } from "../../core/circuit/underlays.ts";
import type { PaperBox } from "../canvas/viewport.ts";
import type { Adjusting } from "../state/state.ts";

/** A printed page ready to be painted: pictures of it, the largest first, and the box of the page that they fill. */
export interface Paper {
  readonly id: string;
  readonly levels: readonly ImageBitmap[];
  readonly box: PaperBox;
  readonly opacity: Share;
}

/** What a printed page is shown as, and whether it is still being moved about. */
export interface Wanted {
  readonly underlay: Underlay;
  readonly isMoving: boolean;
}

/**
 * The printed pages to be shown under a page, the lowest first. One that is being adjusted lies as it would; while its corners
 * are sought in a photograph it lies there whole and plain.
 */
export function papersWanted(circuit: Circuit, pageId: string, adjusting: Adjusting | null): readonly Wanted[] {
  const page = circuit.pages.find(({ id }) => id === pageId);
  if (!page) return [];
  return (page.underlays ?? []).flatMap((underlay): readonly Wanted[] => {
    if (adjusting?.underlay === underlay.id) {
      if (adjusting.how === "lay") return [{ underlay: { ...underlay, corners: adjusting.quad }, isMoving: true }];
      if (adjusting.how === "crop") return [{ underlay, isMoving: false }];
      const { id, title, image } = underlay;
      const corners = fitted(page, image.widthPx, image.heightPx);
      return [{ underlay: { id, title, image, corners, opacity: 1 }, isMoving: false }];
    }
    return underlay.isHidden ? [] : [{ underlay, isMoving: false }];
  });
}

/** How strongly a printed page is painted. */
export function strengthOf({ opacity = FIRST_LOOK.opacity }: Underlay): Share {
  return opacity;
}
