import { CHIP_HEIGHT, paintChip } from "./chip.ts";
import { type Ground, trace } from "./halos.ts";
import type { ThrowControl, ThrowPlace } from "./throwPlaces.ts";
import { pixelOf } from "./viewport.ts";

/** What a click would throw, shown while the pointer is on its place. */
export interface ThrowPreview {
  readonly place: ThrowPlace;
  readonly control: ThrowControl;
  readonly position: string;
  readonly words: string;
}

const DISC = 12;
const CHIP_OFF = 18;

/** Paints the blades where they would lie, faintly, a disc on the place itself, and the name of the position beside it. */
export function paintPreview(ground: Ground, { place, control, position, words }: ThrowPreview): void {
  const { canvas, view, tones } = ground;
  canvas.save();
  const tip = pixelOf(view, place.tip);
  canvas.fillStyle = tones.halo;
  canvas.beginPath();
  canvas.arc(tip.x, tip.y, DISC, 0, 2 * Math.PI);
  canvas.fill();
  canvas.strokeStyle = tones.edge;
  canvas.globalAlpha = 0.75;
  canvas.lineCap = "round";
  canvas.lineWidth = Math.max(2, 0.8 * view.scale);
  canvas.setLineDash([1, Math.max(4, 1.5 * view.scale)]);
  for (const blade of control.blades.get(position) ?? []) {
    canvas.beginPath();
    trace(canvas, view, blade);
    canvas.stroke();
  }
  canvas.globalAlpha = 1;
  canvas.setLineDash([]);
  paintChip(ground, words, tip.x + CHIP_OFF, tip.y - CHIP_OFF - CHIP_HEIGHT / 2);
  canvas.restore();
}
