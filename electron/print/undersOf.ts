import { type Outcome, ok, type Refusal, refuse } from "../../core/base/outcome.ts";
import type { Circuit, Page, Underlay } from "../../core/circuit/circuit.ts";
import { drawingBoxMm } from "../../core/circuit/sheetArea.ts";
import { ontoPage, strengthInPrint, underlaysInPrint } from "../../core/circuit/underlays.ts";
import { mappedQuad, rectangle } from "../../core/drawing/projection.ts";
import type { SheetAsk } from "../../schemas/calls/print.ts";
import { pictureHead } from "../../schemas/pictureHead.ts";
import type { PictureFile } from "../store/pictureFile.ts";
import { isPrintable } from "./printable.ts";
import { cornersOf, type Under } from "./under.ts";

/** Pictures under each sheet of those that are asked for; empty where they are no circuit sheets. */
export type UndersOfSheets = readonly (readonly Under[])[];

/** A page of the circuit with what lies under it, made ready as one JPEG that fills the room for the drawing. */
export interface ReadyUnder {
  readonly page: string;
  readonly jpeg: Uint8Array;
}

/** What the window made ready for its pages. Refuses as `pictureHead` does, and `picture-damaged` for what is no JPEG. */
export function readyUnders(circuit: Circuit, ask: SheetAsk, ready: readonly ReadyUnder[]): Outcome<UndersOfSheets> {
  for (const { jpeg } of ready) {
    const head = pictureHead(jpeg);
    if (!head.ok) return head;
    if (head.value.mime !== "image/jpeg" || !isPrintable(jpeg)) return refuse("picture-damaged");
  }
  return ok(
    pagesAsked(circuit, ask).map((page) => {
      const box = cornersOf(drawingBoxMm(page));
      return ready.flatMap((each) =>
        each.page === page.id ? [{ bytes: each.jpeg, corners: box, within: [box], strength: 1 }] : [],
      );
    }),
  );
}

/**
 * Printed pages as their files are, paler. White paper and contrast are the window's, and so is a photograph made square:
 * what is left out is told.
 */
export function plainUnders(
  circuit: Circuit,
  ask: SheetAsk,
  files: readonly PictureFile[],
): { readonly under: UndersOfSheets; readonly leftOut: readonly Refusal[] } {
  const leftOut: Refusal[] = [];
  const under = pagesAsked(circuit, ask).map((page) =>
    underlaysInPrint(page).flatMap((underlay): readonly Under[] => {
      const file = files.find(({ picture }) => picture.sha256 === underlay.image.sha256);
      const plain = plainUnder(page, underlay, file);
      if (plain.ok) return [plain.value];
      leftOut.push(plain.refusal);
      return [];
    }),
  );
  return { under, leftOut };
}

/** So little of a projective part is none: over a whole picture it comes to less than a dot. */
const ASKEW = 1e-7;

function plainUnder(page: Page, underlay: Underlay, file: PictureFile | undefined): Outcome<Under> {
  const { title, image, corners } = underlay;
  if (!file) return refuse("under-missing", { title });
  if (image.mime === "image/webp") return refuse("under-webp", { title });
  if (!isPrintable(file.bytes)) return refuse("under-damaged", { title });
  const map = ontoPage(underlay);
  if (Math.hypot(map[6], map[7]) > ASKEW * Math.abs(map[8])) return refuse("under-photo", { title });
  const whole = mappedQuad(map, rectangle(0, 0, image.widthPx, image.heightPx));
  const within = [cornersOf(drawingBoxMm(page)), corners];
  return ok({ bytes: file.bytes, corners: whole, within, strength: strengthInPrint(underlay) });
}

/** The pages whose circuit sheets are asked for, in the order of the sheets. */
function pagesAsked({ pages }: Circuit, { what, page }: SheetAsk): readonly Page[] {
  if (what !== "sheet") return [];
  return page === undefined ? pages : pages.filter(({ id }) => id === page);
}
