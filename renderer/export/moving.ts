import { encode } from "modern-gif";
import workerUrl from "modern-gif/worker?url";
import type { Seconds } from "../../core/base/units.ts";
import { painted } from "./raster.ts";

/** A picture and how long it stands. */
export interface Still {
  readonly svg: string;
  readonly seconds: Seconds;
}

/** All colours that a GIF holds beside the one it keeps for what is clear: a hue that tells a state must not be merged away. */
const COLOURS = 255;

/** Pictures of a screen's size up to this many; more of them are painted smaller, so that all take no more room in memory. */
const FULL_SIZE = 40;

function scaleFor(count: number): number {
  return Math.min(1, Math.sqrt(FULL_SIZE / count));
}

/** Pictures of one size, one after the other and round again, as the bytes of a GIF. */
export async function movingPicture(stills: readonly Still[]): Promise<Uint8Array> {
  const frames: { readonly data: Uint8ClampedArray<ArrayBuffer>; readonly delay: number }[] = [];
  let [width, height] = [1, 1];
  // One after the other: a canvas is let go before the next is painted.
  for (const { svg, seconds } of stills) {
    const canvas = await painted(svg, scaleFor(stills.length));
    ({ width, height } = canvas);
    frames.push({ data: pixelsOf(canvas), delay: seconds * 1_000 });
  }
  const gif = await encode({ width, height, frames, maxColors: COLOURS, looped: true, loopCount: 0, workerUrl });
  return new Uint8Array(gif);
}

/** Only pixels can go to the thread that packs them; a canvas cannot. */
function pixelsOf(canvas: HTMLCanvasElement): Uint8ClampedArray<ArrayBuffer> {
  return canvas.getContext("2d")!.getImageData(0, 0, canvas.width, canvas.height).data;
}
