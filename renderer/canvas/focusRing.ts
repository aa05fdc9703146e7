import type { Thing } from "../state/state.ts";
import { type Ground, traceBox } from "./halos.ts";
import { wireMiddle, wireRuns } from "./places.ts";
import { pixelOf } from "./viewport.ts";

/** Half the side of the ring round a pin or the middle of a wire, and how far it stands off a part, in pixels. */
const HALF_PIN = 10;
const OFF_PART = 6;

/** Paints the ring of the keyboard round a part, a pin, or the middle of a wire: accent over a gap of paper. */
export function paintFocus(ground: Ground, thing: Thing): void {
  const { canvas, tones } = ground;
  canvas.save();
  canvas.beginPath();
  if (thing.is === "part") traceBox(ground, thing.id, OFF_PART);
  else tracePin(ground, thing);
  canvas.lineWidth = 6;
  canvas.strokeStyle = tones.raised;
  canvas.stroke();
  canvas.lineWidth = 2;
  canvas.strokeStyle = tones.accent;
  canvas.stroke();
  canvas.restore();
}

function tracePin({ canvas, view, standing, marks }: Ground, thing: Thing): void {
  const spot = thing.is === "point" ? standing.spots.get(thing.id) : wireMiddle(wireRuns(marks, thing.id));
  if (!spot) return;
  const { x, y } = pixelOf(view, spot);
  canvas.roundRect(x - HALF_PIN, y - HALF_PIN, 2 * HALF_PIN, 2 * HALF_PIN, HALF_PIN);
}
