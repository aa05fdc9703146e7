import { projectionOf } from "../../core/drawing/projection.ts";
import { type Trouble, troubleIn } from "../workers/trouble.ts";
import { isStraight, type Lay } from "./lay.ts";
import { halved, laidDown, type Pixels, treat } from "./pixels.ts";

/** A printed page on its way to be made ready. */
export interface LayAsked {
  readonly number: number;
  readonly lay: Lay;
  readonly file: Blob;
}

/** It on its way back: the picture, then halves of it for views further away; none where it could not be decoded or the program itself erred. */
export interface LayAnswered extends Partial<Trouble> {
  readonly number: number;
  readonly levels: readonly ImageBitmap[];
}

/** A level smaller than this needs no smaller one, pixels of its shorter side. */
const LEAST_LEVEL = 300;

/** The picture that was decoded last: while one page is adjusted it is asked for again and again. */
let last: { readonly sha256: string; readonly bitmap: ImageBitmap } | null = null;

self.onmessage = async ({ data: { number, lay, file } }: MessageEvent<LayAsked>) => {
  const answer = await answered(number, lay, file);
  self.postMessage(answer, { transfer: [...answer.levels] });
};

async function answered(number: number, lay: Lay, file: Blob): Promise<LayAnswered> {
  try {
    return { number, levels: await ready(lay, file) };
  } catch (error) {
    return { number, levels: [], ...(isUndecoded(error) ? {} : troubleIn(error)) };
  }
}

/** A picture that is none is told by the browser in a way of its own (HTML, createImageBitmap). */
function isUndecoded(error: unknown): boolean {
  return error instanceof DOMException && error.name === "InvalidStateError";
}

async function ready(lay: Lay, file: Blob): Promise<readonly ImageBitmap[]> {
  if (last?.sha256 !== lay.sha256) {
    last?.bitmap.close();
    last = { sha256: lay.sha256, bitmap: await createImageBitmap(file) };
  }
  const pixels = isStraight(lay) ? drawn(last.bitmap, lay) : warped(last.bitmap, lay);
  treat(pixels, lay);
  const levels = [pixels];
  for (let each = pixels; Math.min(each.width, each.height) > LEAST_LEVEL; levels.push(each)) each = halved(each);
  return Promise.all(levels.map(({ data, width, height }) => createImageBitmap(new ImageData(data, width, height))));
}

/** Stretched and turned by the canvas. */
function drawn(bitmap: ImageBitmap, { cut, onto, width, height }: Lay): Pixels {
  const map = projectionOf(cut, onto);
  const [a, b, c, d, e, f] = map.map((each) => each / map[8]) as unknown as typeof map;
  const canvas = contextOf(width, height);
  canvas.imageSmoothingQuality = "high";
  canvas.setTransform(a, d, b, e, c, f);
  canvas.beginPath();
  for (const [x, y] of cut) canvas.lineTo(x, y);
  canvas.clip();
  canvas.drawImage(bitmap, 0, 0);
  return canvas.getImageData(0, 0, width, height) as Pixels;
}

/** Laid down pixel by pixel, from a picture that is brought near the wanted size first so that thin lines are not skipped. */
function warped(bitmap: ImageBitmap, { cut, onto, width, height }: Lay): Pixels {
  const span = (quad: Lay["cut"]): number =>
    Math.max(...quad.map(([x, y], index) => Math.hypot(quad[(index + 1) % 4]![0] - x, quad[(index + 1) % 4]![1] - y)));
  const scale = Math.min(1, (1.5 * span(onto)) / span(cut));
  const [wide, high] = [Math.max(1, Math.round(bitmap.width * scale)), Math.max(1, Math.round(bitmap.height * scale))];
  const canvas = contextOf(wide, high);
  canvas.imageSmoothingQuality = "high";
  canvas.drawImage(bitmap, 0, 0, wide, high);
  const small = cut.map(([x, y]) => [(x * wide) / bitmap.width, (y * high) / bitmap.height]) as unknown as Lay["cut"];
  const source = canvas.getImageData(0, 0, wide, high) as Pixels;
  return laidDown(source, small, onto, width, height);
}

function contextOf(width: number, height: number): OffscreenCanvasRenderingContext2D {
  const context = new OffscreenCanvas(width, height).getContext("2d", { willReadFrequently: true });
  if (!context) throw new Error("no canvas");
  return context;
}
