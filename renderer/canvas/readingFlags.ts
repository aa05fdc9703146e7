import type { PointId } from "../../core/base/ids.ts";
import { isBySense } from "../../core/diagnose/step.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { conditionText } from "../../core/live/condition.ts";
import { valueText } from "../words/reading.ts";
import type { Ground } from "./halos.ts";
import { paintTag, setTagType, TAG_HEIGHT } from "./tag.ts";
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

/** Length of a flag's pole, pixels at any zoom. */
const POLE = 10;

/** Paints what was read as an inverse flag on each point, up and to the right of it. */
export function paintReadings({ canvas, view, standing, tones }: Ground, readings: readonly ReadHere[]): void {
  canvas.save();
  setTagType(canvas);
  for (const { point, words } of readings) {
    const spot = standing.spots.get(point);
    if (!spot) continue;
    const { x, y } = pixelOf(view, spot);
    const from = { x: Math.round(x), y: Math.round(y) };
    const top = from.y - POLE - TAG_HEIGHT;
    paintTag(canvas, tones, { words, from, left: from.x, top, corners: [4, 4, 4, 0], isInverse: true });
  }
  canvas.restore();
}
