/** A PNG larger than this is a scan or a photograph, which loses nothing that can be seen as WebP. */
const MOST_PNG_BYTES = 4_000_000;
const QUALITY = 0.92;

/** A canvas as the bytes of a picture's file: PNG for what is drawn, WebP for what is photographed. */
export async function encoded(canvas: HTMLCanvasElement): Promise<Uint8Array> {
  const png = await blobOf(canvas, "image/png");
  const best = png.size > MOST_PNG_BYTES ? await blobOf(canvas, "image/webp") : png;
  return new Uint8Array(await best.arrayBuffer());
}

function blobOf(canvas: HTMLCanvasElement, type: string): Promise<Blob> {
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture came of the canvas"))), type, QUALITY);
  });
}

/** A canvas of this size with white under everything. */
export function whiteCanvas(width: number, height: number): readonly [HTMLCanvasElement, CanvasRenderingContext2D] {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) throw new Error("no canvas of this size");
  context.fillStyle = "#ffffff";
  context.fillRect(0, 0, width, height);
  return [canvas, context];
}
