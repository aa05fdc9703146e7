import { createCanvas, loadImage } from "@napi-rs/canvas";
import type { Page } from "@playwright/test";
import type { Millimetres } from "../../../core/base/units.ts";
import type { Spot } from "../../../core/drawing/mark.ts";
import type { Pixels } from "../../../renderer/printed/pixels.ts";

/** How dark a picture is at a spot of the paper in millimetres: 0 paper, 1 ink. */
export type Darkness = (spot: Spot) => number;

/** Half the side of the square that is compared, how far it is looked for, and the step of both, millimetres. */
const REACH = { square: 9, far: 5, step: 0.25 } as const;

/** What is painted of the printed pages in sight, under all that is drawn. */
export async function paintedPaper(page: Page): Promise<Pixels> {
  const address = await page.evaluate(() =>
    document.querySelector<HTMLCanvasElement>(".sheet-layers canvas")!.toDataURL("image/png"),
  );
  const picture = await loadImage(Buffer.from(address.slice(address.indexOf(",") + 1), "base64"));
  const context = createCanvas(picture.width, picture.height).getContext("2d");
  context.drawImage(picture, 0, 0);
  const { data } = context.getImageData(0, 0, picture.width, picture.height);
  return { width: picture.width, height: picture.height, data: new Uint8ClampedArray(data) };
}

/** The share of a picture that is not clear. */
export function coverOf({ data }: Pixels): number {
  let covered = 0;
  for (let at = 3; at < data.length; at += 4) if (data[at]! > 60) covered++;
  return (4 * covered) / data.length;
}

/** How dark a picture is, where `pixelOf` says which of its pixels shows a spot. */
export function darknessOf({ width, height, data }: Pixels, pixelOf: (spot: Spot) => Spot): Darkness {
  return (spot) => {
    const pixel = pixelOf(spot);
    const [x, y] = [Math.round(pixel.x), Math.round(pixel.y)];
    if (x < 0 || y < 0 || x >= width || y >= height) return 0;
    const at = (y * width + x) * 4;
    return (data[at + 3]! / 255) * (1 - data[at + 1]! / 255);
  };
}

/**
 * How far apart two pictures show what is round a spot, millimetres: the way by which the square round it has to be moved in
 * the second until both are most alike, by the correlation of their darkness.
 */
export function wayApart(
  one: Darkness,
  other: Darkness,
  { x, y }: Spot,
): { readonly dx: Millimetres; readonly dy: Millimetres } {
  const { square, far, step } = REACH;
  const side = Math.round((2 * square) / step) + 1;
  const wide = Math.round((2 * (square + far)) / step) + 1;
  const grid = (of: Darkness, half: number, count: number): Float64Array =>
    Float64Array.from({ length: count * count }, (_, at) =>
      of({ x: x - half + step * (at % count), y: y - half + step * Math.floor(at / count) }),
    );
  const [mine, theirs] = [grid(one, square, side), grid(other, square + far, wide)];
  const mean = mine.reduce((sum, value) => sum + value, 0) / mine.length;
  const ways = wide - side + 1;
  let best = { likeness: Number.NEGATIVE_INFINITY, dx: 0, dy: 0 };
  for (let down = 0; down < ways; down++) {
    for (let right = 0; right < ways; right++) {
      let [both, sum, squares] = [0, 0, 0];
      for (let at = 0; at < mine.length; at++) {
        const value = theirs[(down + Math.floor(at / side)) * wide + right + (at % side)]!;
        both += (mine[at]! - mean) * value;
        sum += value;
        squares += value * value;
      }
      const spread = squares - (sum * sum) / mine.length;
      const likeness = spread > 0 ? both / Math.sqrt(spread) : Number.NEGATIVE_INFINITY;
      if (likeness > best.likeness) best = { likeness, dx: right * step - far, dy: down * step - far };
    }
  }
  return { dx: best.dx, dy: best.dy };
}
