import type { PartId } from "../../core/base/ids.ts";
import type { GridUnits } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { boxesOn, partsUnder } from "../../core/circuit/overlap.ts";
import type { Bounds } from "../../core/drawing/measure.ts";
import { CHIP_HEIGHT, paintChip } from "./chip.ts";
import type { Ground } from "./halos.ts";
import { pixelOf } from "./viewport.ts";

/** A part that stands, or would stand, on others. */
export interface StandsOn {
  readonly box: Bounds;
  readonly others: readonly PartId[];
}

/** Which of these parts would lie over others, shifted by so much on their page; those that go along do not count. */
export function standingOnOthers(
  circuit: Circuit,
  page: string,
  parts: readonly PartId[],
  dx: GridUnits,
  dy: GridUnits,
): readonly StandsOn[] {
  const going = new Set(parts);
  return boxesOn(circuit, page).flatMap(({ id, box }) => {
    if (!going.has(id)) return [];
    const there = { left: box.left + dx, top: box.top + dy, right: box.right + dx, bottom: box.bottom + dy };
    const others = partsUnder(circuit, page, there, going);
    return others.length > 0 ? [{ box: there, others }] : [];
  });
}

/** The words for it: `Stands on K2`. */
export function standsOnWords(others: readonly PartId[]): string {
  return `Stands on ${others.join(", ")}`;
}

const OFF = 4;

/** Paints an ink edge round what stands on something else, and on what. */
export function paintStandsOn(ground: Ground, all: readonly StandsOn[]): void {
  const { canvas, view, tones } = ground;
  for (const { box, others } of all) {
    const from = pixelOf(view, { x: box.left, y: box.top });
    const to = pixelOf(view, { x: box.right, y: box.bottom });
    canvas.save();
    canvas.strokeStyle = tones.ink;
    canvas.lineWidth = 2;
    canvas.setLineDash([6, 3]);
    canvas.strokeRect(from.x - OFF, from.y - OFF, to.x - from.x + 2 * OFF, to.y - from.y + 2 * OFF);
    canvas.setLineDash([]);
    paintChip(ground, standsOnWords(others), from.x - OFF, from.y - 2 * OFF - CHIP_HEIGHT);
    canvas.restore();
  }
}
