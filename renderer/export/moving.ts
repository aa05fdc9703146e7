import { encode } from "modern-gif";
import type { Seconds } from "../../core/base/units.ts";
import { painted } from "./raster.ts";

/** A picture and how long it stands. */
export interface Still {
  readonly svg: string;
  readonly seconds: Seconds;
}

/** Colours of a drawing with its edges smoothed: far fewer than a GIF holds. */
const COLOURS = 128;

/** Pictures of one size, one after the other and round again, as the bytes of a GIF. */
export async function movingPicture(stills: readonly Still[]): Promise<Uint8Array> {
  const canvases = await Promise.all(stills.map(({ svg }) => painted(svg, 1)));
  const { width = 1, height = 1 } = canvases[0] ?? {};
  const frames = canvases.map((data, at) => ({ data, delay: stills[at]!.seconds * 1_000 }));
  return new Uint8Array(await encode({ width, height, frames, maxColors: COLOURS, looped: true, loopCount: 0 }));
}
