import type { Ground } from "./halos.ts";
import { INTERFACE_FONT } from "./tones.ts";

/** Height of a chip, pixels. */
export const CHIP_HEIGHT = 22;
const CHIP_PAD = 8;

/** Paints some words on a raised ground, its left top corner at these pixels of the window. */
export function paintChip({ canvas, tones }: Ground, words: string, left: number, top: number): void {
  canvas.font = `600 12px ${INTERFACE_FONT}`;
  const width = Math.ceil(canvas.measureText(words).width) + 2 * CHIP_PAD;
  const [x, y] = [Math.round(left), Math.round(top)];
  canvas.beginPath();
  canvas.roundRect(x, y, width, CHIP_HEIGHT, 6);
  canvas.fillStyle = tones.raised;
  canvas.shadowColor = "#00000040";
  canvas.shadowBlur = 8;
  canvas.shadowOffsetY = 2;
  canvas.fill();
  canvas.shadowColor = "transparent";
  canvas.lineWidth = 1;
  canvas.strokeStyle = tones.rule;
  canvas.stroke();
  canvas.fillStyle = tones.ink;
  canvas.textAlign = "left";
  canvas.textBaseline = "middle";
  canvas.fillText(words, x + CHIP_PAD, y + CHIP_HEIGHT / 2 + 0.5);
}
