import { createCanvas, ImageData } from "@napi-rs/canvas";
import { eachCorner, type Quad, rectangle } from "../../core/drawing/projection.ts";
import { laidDown, type Pixels } from "../../renderer/printed/pixels.ts";

/** A photograph as it is taken, pixels, and where in it the corners of the sheet are. */
export interface Photographed {
  readonly jpeg: Buffer;
  readonly width: number;
  readonly height: number;
  readonly corners: Quad;
}

/** How a photograph is taken. */
export interface Taking {
  /** Pixels for each of those of the plain photograph, which has 1,400 by 1,050. */
  readonly fine?: number;
  /** Steps of brightness by which each pixel may be off. */
  readonly noise?: number;
  /** How well the JPEG is kept, of 100. */
  readonly quality?: number;
}

const PLAIN = { width: 1_400, height: 1_050 } as const;
const CORNERS: Quad = [
  [210, 190],
  [1_180, 120],
  [1_290, 930],
  [130, 830],
];
/** The bench that the sheet lies on. */
const BENCH = [120, 120, 118] as const;
/** How much of the light is gone at the right edge. */
const SHADE = 0.35;

/** A sheet on a grey bench, taken at an angle, darker towards its right, as a JPEG; the same each time. */
export function photographed(sheet: Pixels, { fine = 1, noise = 0, quality = 92 }: Taking = {}): Photographed {
  const [width, height] = [PLAIN.width * fine, PLAIN.height * fine];
  const corners = eachCorner(CORNERS, ([x, y]) => [x * fine, y * fine]);
  const { data } = laidDown(sheet, rectangle(0, 0, sheet.width, sheet.height), corners, width, height);
  let lot = 1;
  for (let at = 0; at < data.length; at += 4) {
    const light = 1 - SHADE * (((at / 4) % width) / width);
    // Numbers by lot as Lehmer made them: each is the last times 48,271, less whole times 2^31 - 1.
    lot = (lot * 48_271) % 2_147_483_647;
    const grain = noise * ((2 * lot) / 2_147_483_647 - 1);
    const isBench = data[at + 3] === 0;
    for (let channel = 0; channel < 3; channel++)
      data[at + channel] = (isBench ? BENCH[channel]! : data[at + channel]!) * light + grain;
    data[at + 3] = 255;
  }
  const canvas = createCanvas(width, height);
  canvas.getContext("2d").putImageData(new ImageData(data, width, height), 0, 0);
  return { jpeg: canvas.toBuffer("image/jpeg", quality), width, height, corners };
}
