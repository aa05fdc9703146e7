import type { Page } from "../../core/circuit/circuit.ts";
import { drawingBoxMm } from "../../core/circuit/sheetArea.ts";
import { strengthInPrint, underlaysInPrint } from "../../core/circuit/underlays.ts";
import { layOf } from "../printed/lay.ts";
import type { Pictures } from "../printed/pictures.ts";

/** Dots to the millimetre on paper, 200 to the inch, and the most that one page may have: A3 comes to 7.7 million. */
const DOTS = 200 / 25.4;
const MOST_PIXELS = 9_000_000;
const QUALITY = 0.85;

/**
 * What lies under a page as one JPEG that fills the room for the drawing: white where nothing does, else each printed page as
 * it is shown, paler. Null where none of them can be shown.
 */
export async function underPage(page: Page, pictures: Pictures): Promise<Blob | null> {
  const { left, top, right, bottom } = drawingBoxMm(page);
  const dots = Math.min(DOTS, Math.sqrt(MOST_PIXELS / ((right - left) * (bottom - top))));
  const canvas = new OffscreenCanvas(Math.round((right - left) * dots), Math.round((bottom - top) * dots));
  const context = canvas.getContext("2d");
  if (!context) throw new Error("no canvas of this size");
  context.fillStyle = "#ffffff";
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = "high";
  let isEmpty = true;
  for (const underlay of underlaysInPrint(page)) {
    const { lay, box } = layOf(underlay, false, MOST_PIXELS);
    const levels = await pictures.laid(lay, `${underlay.id} print`);
    if (!levels) continue;
    isEmpty = false;
    const [x, y] = [(box.left - left) * dots, (box.top - top) * dots];
    const [width, height] = [(box.right - box.left) * dots, (box.bottom - box.top) * dots];
    // The smallest that is still as fine as the paper: a larger one would lose thin lines on the way.
    const level = levels.findLast((each) => each.width >= width) ?? levels[0]!;
    context.globalAlpha = strengthInPrint(underlay);
    context.drawImage(level, x, y, width, height);
    for (const each of levels) each.close();
  }
  return isEmpty ? null : canvas.convertToBlob({ type: "image/jpeg", quality: QUALITY });
}
