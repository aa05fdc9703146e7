import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { PHOTO_SIDE } from "../../core/circuit/pictures.ts";
import { whiteCanvas } from "../printed/encoded.ts";
import { pictureSource } from "../printed/pictureSource.ts";

/** A file larger than this is not read, bytes: no camera of a workshop makes one. */
const MOST_BYTES = 200_000_000;
const QUALITY = 0.85;

/**
 * A file as the photo of a place: upright, brought down to size, and without what a camera notes beside the picture, such as
 * where it was taken. Refuses `printed-large`, `file-unreadable`, and `picture-...` for what is no picture or a damaged one.
 */
export async function photoOf(file: File): Promise<Outcome<Uint8Array>> {
  if (file.size > MOST_BYTES) return refuse("printed-large", { most: MOST_BYTES / 1e6 });
  const bytes = await file.arrayBuffer().catch(() => null);
  if (bytes === null) return refuse("file-unreadable", { file: file.name });
  const source = await pictureSource(file.name, new Uint8Array(bytes));
  if (!source.ok) return source;
  try {
    const [canvas] = whiteCanvas(1, 1);
    await source.value.paint(1, canvas, PHOTO_SIDE);
    return ok(await webp(canvas));
  } finally {
    source.value.close();
  }
}

function webp(canvas: HTMLCanvasElement): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const take = (blob: Blob | null): void => {
      if (blob) void blob.arrayBuffer().then((bytes) => resolve(new Uint8Array(bytes)), reject);
      else reject(new Error("no picture came of the canvas"));
    };
    canvas.toBlob(take, "image/webp", QUALITY);
  });
}
