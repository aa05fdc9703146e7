import PDFDocument from "pdfkit";
import type { Pixels } from "../../renderer/printed/pixels.ts";
import { type Photographed, photographed } from "./photographed.ts";

/** The sheet of the photograph in tenths of a millimetre: A4 with a green rim and a red field. */
const SHEET = { width: 1_188, height: 840, rim: 20 } as const;
/** Where the red field lies, as shares of the sheet. */
export const FIELD = { left: 0.6, top: 0.25, right: 0.75, bottom: 0.45 } as const;

/** A photograph of the sheet taken at an angle on a grey bench. */
export function photograph(): Photographed {
  return photographed(sheet());
}

function sheet(): Pixels {
  const { width, height, rim } = SHEET;
  const data = new Uint8ClampedArray(width * height * 4);
  const colourAt = (x: number, y: number): readonly number[] => {
    if (x < rim || y < rim || x >= width - rim || y >= height - rim) return [0, 150, 60, 255];
    const [across, down] = [x / width, y / height];
    const isField = across > FIELD.left && across < FIELD.right && down > FIELD.top && down < FIELD.bottom;
    return isField ? [200, 20, 20, 255] : [245, 245, 240, 255];
  };
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) data.set(colourAt(x, y), (y * width + x) * 4);
  return { width, height, data };
}

/** A PDF with so many pages, each with a red field and its number; locked where a password is given. */
export function pdf(pages: number, password?: string): Promise<Buffer> {
  const document = new PDFDocument({
    size: "A4",
    layout: "landscape",
    autoFirstPage: false,
    ...(password !== undefined && { userPassword: password }),
  });
  const pieces: Buffer[] = [];
  document.on("data", (piece: Buffer) => pieces.push(piece));
  const ended = new Promise<Buffer>((resolve) => document.once("end", () => resolve(Buffer.concat(pieces))));
  for (let page = 1; page <= pages; page++) {
    document.addPage();
    document.fontSize(80).fillColor("black").text(String(page), 100, 100);
    document.rect(500, 200, 120, 120).fill([200, 20, 20]);
  }
  document.end();
  return ended;
}
