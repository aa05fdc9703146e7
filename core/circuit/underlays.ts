import type { Millimetres, Share } from "../base/units.ts";
import {
  type Corner,
  inverse,
  type Projection,
  projected,
  projectionOf,
  type Quad,
  rectangle,
} from "../drawing/projection.ts";
import type { Printed } from "../parts/kind.ts";
import type { Circuit, Page, Underlay } from "./circuit.ts";

/** How a printed page is shown where nothing is said: pale, so that what is drawn over it stands out. */
export const FIRST_LOOK: { readonly opacity: Share; readonly contrast: number } = { opacity: 0.6, contrast: 1 };

/** On paper it is so much paler than on the screen: drawn wires, black on some printers, must stand out over printed ones. */
const PALER_IN_PRINT: Share = 0.5;

/** Least area of three corners of a printed page, in square millimetres, and of its cut, in square pixels. */
export const LEAST_AREA = { corners: 4, cut: 16 } as const;

/** A printed page with the page of the circuit under whose drawing it lies. */
export interface Lying {
  readonly page: Page;
  readonly underlay: Underlay;
}

/** The printed page of this id, or null. */
export function underlayAt({ pages }: Circuit, id: string): Lying | null {
  for (const page of pages) {
    const underlay = page.underlays?.find((each) => each.id === id);
    if (underlay) return { page, underlay };
  }
  return null;
}

/** Every printed page of a circuit, page by page, the lowest first. */
export function underlaysOf({ pages }: Circuit): readonly Lying[] {
  return pages.flatMap((page) => (page.underlays ?? []).map((underlay) => ({ page, underlay })));
}

/** How strongly a printed page is printed under the drawing. */
export function strengthInPrint({ opacity = FIRST_LOOK.opacity }: Pick<Underlay, "opacity">): Share {
  return opacity * PALER_IN_PRINT;
}

/** The printed pages under a page that show in print, the lowest first. */
export function underlaysInPrint({ underlays = [] }: Page): readonly Underlay[] {
  return underlays.filter(({ isHidden = false }) => !isHidden);
}

/** The four corners of the picture that are shown, in its pixels: the cut, else the whole picture. */
export function cutOf({ cut, image }: Pick<Underlay, "cut" | "image">): Quad {
  return cut ?? rectangle(0, 0, image.widthPx, image.heightPx);
}

/** The map from pixels of the picture to millimetres of the page. */
export function ontoPage(underlay: Underlay): Projection {
  return projectionOf(cutOf(underlay), underlay.corners);
}

/** The map from millimetres of the page to pixels of the picture. */
export function ontoPicture(underlay: Underlay): Projection {
  return inverse(ontoPage(underlay));
}

/** Whether a spot in pixels lies in the picture. */
export function isInPicture({ image }: Pick<Underlay, "image">, [x, y]: Corner): boolean {
  return x >= 0 && y >= 0 && x <= image.widthPx && y <= image.heightPx;
}

/** Where what is tied to a printed page stands on it: the page of the circuit and millimetres there; null where it is gone. */
export function printedSpot(
  circuit: Circuit,
  { underlay: id, x, y }: Printed,
): (Lying & { readonly x: Millimetres; readonly y: Millimetres }) | null {
  const lying = underlayAt(circuit, id);
  if (!lying) return null;
  const [across, down] = projected(ontoPage(lying.underlay), [x, y]);
  return { ...lying, x: across, y: down };
}

/**
 * Where a picture of this size lies when it is brought in: as large as the page takes, its sides as they are to each
 * other, in the middle.
 */
export function fitted(page: Pick<Page, "widthMm" | "heightMm">, width: number, height: number): Quad {
  const scale = Math.min(page.widthMm / width, page.heightMm / height);
  const [across, down] = [width * scale, height * scale];
  return rectangle((page.widthMm - across) / 2, (page.heightMm - down) / 2, across, down);
}
