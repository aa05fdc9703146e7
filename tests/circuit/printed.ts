import type { Circuit, Underlay } from "../../core/circuit/circuit.ts";
import { rectangle } from "../../core/drawing/projection.ts";

/** A scanned sheet that lies straight under its page. */
export const SHEET: Underlay = {
  id: "u1",
  title: "Vents.pdf, page 3",
  image: { sha256: "5e".repeat(32), mime: "image/png", widthPx: 2_339, heightPx: 1_654 },
  corners: rectangle(0, 0, 297, 210),
};

/** A photograph of a sheet, taken at an angle and laid as it is. */
export const PHOTO: Underlay = {
  id: "u2",
  title: "Photograph",
  image: { sha256: "0f".repeat(32), mime: "image/jpeg", widthPx: 2_048, heightPx: 1_536 },
  corners: rectangle(20, 10, 200, 150),
  opacity: 0.4,
};

/** A circuit with both under its first page, more of the sheet where asked, and its first switch tied to the sheet. */
export function printedOn(circuit: Circuit, sheet: Partial<Underlay> = {}, more = 0): Circuit {
  const extra = Array.from({ length: more }, (_, index): Underlay => ({ ...SHEET, id: `u${index + 3}` }));
  const [first, ...pages] = circuit.pages;
  return {
    ...circuit,
    pages: [{ ...first!, underlays: [{ ...SHEET, ...sheet }, PHOTO, ...extra] }, ...pages],
    parts: circuit.parts.map((part) =>
      part.id === "S1" ? { ...part, printed: { underlay: "u1", x: 300, y: 200 } } : part,
    ),
  };
}
