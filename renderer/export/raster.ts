import type { Share } from "../../core/base/units.ts";

/** Longest side of a picture, pixels: what every browser gives a canvas. */
const MOST_PIXELS = 16_000;
/** Most pixels of a picture in all: some browsers give a canvas of more none at all. */
const MOST_AREA = 16_384 * 8_192;
/** Pixels to the millimetre of a picture of one times: the screen's 96 to the inch. */
const PIXELS_PER_MM = 96 / 25.4;

/** A size in millimetres. */
interface SizeMm {
  readonly width: number;
  readonly height: number;
}

/** An SVG, its fonts in it, painted at so many times the size of a screen; less where that is more than a canvas holds. */
export async function painted(svg: string, times: Share): Promise<HTMLCanvasElement> {
  const { width, height } = sizeOf(svg);
  const scale = Math.min(
    times * PIXELS_PER_MM,
    MOST_PIXELS / Math.max(width, height),
    Math.sqrt(MOST_AREA / (width * height)),
  );
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const image = await imageOf(svg);
  canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
}

/** A canvas as the bytes of a PNG. */
export async function pngOf(canvas: HTMLCanvasElement): Promise<Uint8Array> {
  const blob = await new Promise<Blob | null>((made) => canvas.toBlob(made, "image/png"));
  if (!blob) throw new Error("broken invariant: a canvas of this size gives a PNG");
  return new Uint8Array(await blob.arrayBuffer());
}

/** An SVG says its size in millimetres. */
function sizeOf(svg: string): SizeMm {
  const [, width = "1", height = "1"] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
  return { width: Number(width), height: Number(height) };
}

async function imageOf(svg: string): Promise<HTMLImageElement> {
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    return image;
  } finally {
    URL.revokeObjectURL(address);
  }
}
