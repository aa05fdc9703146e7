import type { PointId } from "../../core/base/ids.ts";
import { isBySense } from "../../core/diagnose/step.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { conditionText } from "../../core/live/condition.ts";
import { valueText } from "../words/reading.ts";
import type { Ground } from "./halos.ts";
import { INTERFACE_FONT } from "./tones.ts";
import { pixelOf } from "./viewport.ts";

/** What was read at a point, as its flag says it: "11.9 V", "dim 7.2 V?". */
export interface ReadHere {
  readonly point: PointId;
  readonly words: string;
}

/**
 * What was read in the condition that is shown now, the last at each point. What was read in another one has no place beside
 * the states that this one gives, and what was struck out has none at all.
 */
export function readHere({
  circuit,
  condition,
  readings,
}: Pick<Bench, "circuit" | "condition" | "readings">): readonly ReadHere[] {
  const now = conditionText(condition);
  const read = new Map<PointId, string>();
  for (const reading of readings) {
    const { red, instrument, standing } = reading;
    if (standing === "struck" || isBySense(instrument) || conditionText(reading.condition) !== now) continue;
    const value = valueText(circuit, reading);
    read.set(red, standing === "doubted" ? `${value}?` : value);
  }
  return [...read].map(([point, words]) => ({ point, words }));
}

/** Height of a flag, its room beside the words, and the length of its pole, pixels at any zoom. */
const HEIGHT = 18;
const PAD = 6;
const POLE = 10;

/** Paints what was read as an inverse flag on each point, up and to the right of it. */
export function paintReadings({ canvas, view, standing, tones }: Ground, readings: readonly ReadHere[]): void {
  canvas.save();
  canvas.font = `600 12px ${INTERFACE_FONT}`;
  canvas.textAlign = "left";
  canvas.textBaseline = "middle";
  for (const { point, words } of readings) {
    const spot = standing.spots.get(point);
    if (!spot) continue;
    const { x, y } = pixelOf(view, spot);
    const [left, foot] = [Math.round(x), Math.round(y)];
    const width = Math.ceil(canvas.measureText(words).width) + 2 * PAD;
    canvas.beginPath();
    canvas.moveTo(left, foot);
    canvas.lineTo(left, foot - POLE);
    canvas.roundRect(left, foot - POLE - HEIGHT, width, HEIGHT, [4, 4, 4, 0]);
    // A rim of paper keeps it apart from the lines it lies over.
    canvas.lineWidth = 3;
    canvas.strokeStyle = tones.raised;
    canvas.stroke();
    canvas.lineWidth = 1.5;
    canvas.strokeStyle = tones.ink;
    canvas.stroke();
    canvas.fillStyle = tones.ink;
    canvas.fill();
    canvas.fillStyle = tones.raised;
    canvas.fillText(words, left + PAD, foot - POLE - HEIGHT / 2 + 0.5);
  }
  canvas.restore();
}
