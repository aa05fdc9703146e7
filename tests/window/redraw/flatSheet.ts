import { createCanvas } from "@napi-rs/canvas";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Pixels } from "../../../renderer/printed/pixels.ts";

/** Dots to the millimetre that a sheet is drawn with here: 150 to the inch, nearly. */
export const DOTS = 6;
/** Points of a PDF to the millimetre. */
const POINTS = 72 / 25.4;

/** The first page of a PDF as a picture, as it would come flat from a scanner. */
export async function flatSheet(pdf: Uint8Array): Promise<Pixels> {
  const loading = getDocument({ data: new Uint8Array(pdf) });
  const page = await (await loading.promise).getPage(1);
  const viewport = page.getViewport({ scale: DOTS / POINTS });
  const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
  const context = canvas.getContext("2d");
  // The reader is written for a page's canvas, and takes this one as well.
  await page.render({ canvas: canvas as unknown as HTMLCanvasElement, viewport }).promise;
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
  await loading.destroy();
  return { width: canvas.width, height: canvas.height, data: new Uint8ClampedArray(data) };
}
