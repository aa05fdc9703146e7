import { createCanvas, ImageData } from "@napi-rs/canvas";
import PDFDocument from "pdfkit";
import { type Corner, type Quad, rectangle } from "../../core/drawing/projection.ts";
import { laidDown, type Pixels } from "../../renderer/printed/pixels.ts";

/** The sheet of the photograph in tenths of a millimetre: A4 with a green rim and a red field. */
const SHEET = { width: 1_188, height: 840, rim: 20 } as const;
/** Where the red field lies, as shares of the sheet. */
export const FIELD = { left: 0.6, top: 0.25, right: 0.75, bottom: 0.45 } as const;

/** The photograph, and where in it the corners of the sheet are, pixels. */
export const PHOTO = { width: 1_400, height: 1_050 } as const;
export const CORNERS: Quad = [
  [210, 190],
  [1_180, 120],
  [1_290, 930],
  [130, 830],
];

/** A photograph of the sheet taken at an angle on a grey bench, darker towards its right, as a JPEG. */
export function photograph(): Buffer {
  const lying = laidDown(sheet(), rectangle(0, 0, SHEET.width, SHEET.height), CORNERS, PHOTO.width, PHOTO.height);
  const { data } = lying;
  for (let at = 0; at < data.length; at += 4) {
    const light = 1 - 0.35 * (((at / 4) % PHOTO.width) / PHOTO.width);
    const [red, green, blue] = data[at + 3] === 0 ? [120, 120, 118] : [data[at]!, data[at + 1]!, data[at + 2]!];
    data.set([red * light, green * light, blue * light, 255], at);
  }
  const canvas = createCanvas(PHOTO.width, PHOTO.height);
  canvas.getContext("2d").putImageData(new ImageData(data, PHOTO.width, PHOTO.height), 0, 0);
  return canvas.toBuffer("image/jpeg", 92);
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

/** A spot between two others, as shares of the way. */
export function between([x0, y0]: Corner, [x1, y1]: Corner, across: number, down: number): Corner {
  return [x0 + (x1 - x0) * across, y0 + (y1 - y0) * down];
}
