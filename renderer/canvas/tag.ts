import { INTERFACE_FONT, type Tones } from "./tones.ts";
import type { Pixel } from "./viewport.ts";

/** Height of a tag and room beside its words, pixels at any zoom. */
export const TAG_HEIGHT = 18;
const PAD = 6;

/** Makes ready for the words of tags, until the canvas is restored. */
export function setTagType(canvas: CanvasRenderingContext2D): void {
  canvas.font = `600 12px ${INTERFACE_FONT}`;
  canvas.textAlign = "left";
  canvas.textBaseline = "middle";
}

/** Width of a tag with these words. */
export function tagWidth(canvas: CanvasRenderingContext2D, words: string): number {
  return Math.ceil(canvas.measureText(words).width) + 2 * PAD;
}

/** A tag: where its pole begins, where its box is, and how it is filled. */
export interface Tag {
  readonly words: string;
  readonly from: Pixel;
  readonly left: number;
  readonly top: number;
  readonly corners: number | readonly [number, number, number, number];
  /** In ink with words of paper; else framed. */
  readonly isInverse: boolean;
}

/** Paints a tag on its pole; a rim of paper keeps it apart from the lines it lies over. */
export function paintTag(canvas: CanvasRenderingContext2D, tones: Tones, tag: Tag): void {
  const { words, from, left, top, corners, isInverse } = tag;
  canvas.beginPath();
  canvas.moveTo(from.x, from.y);
  canvas.lineTo(left, top < from.y ? top + TAG_HEIGHT : top);
  canvas.roundRect(left, top, tagWidth(canvas, words), TAG_HEIGHT, corners as number | number[]);
  canvas.lineWidth = 3;
  canvas.strokeStyle = tones.raised;
  canvas.stroke();
  canvas.lineWidth = 1.5;
  canvas.strokeStyle = tones.ink;
  canvas.stroke();
  canvas.fillStyle = isInverse ? tones.ink : tones.raised;
  canvas.fill();
  canvas.fillStyle = isInverse ? tones.raised : tones.ink;
  canvas.fillText(words, left + PAD, top + TAG_HEIGHT / 2 + 0.5);
}
