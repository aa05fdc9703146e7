import type { PartId } from "../../core/base/ids.ts";
import type { GridUnits } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import { GRID_MM } from "../../core/drawing/scale.ts";
import { type Ground, trace } from "./halos.ts";
import type { Painted } from "./painted.ts";
import { paintOn } from "./paintOn.ts";
import { paintStandsOn } from "./standsOn.ts";
import type { Carried } from "./underWay.ts";
import { pixelOf } from "./viewport.ts";

/** Paints what is carried where it would be put down. */
export function paintCarried(ground: Ground, circuit: Circuit, painted: Painted, carried: Carried): void {
  if (carried.is === "parts") {
    paintParts(ground, circuit, painted, carried);
    paintStandsOn(ground, carried.standsOn);
  } else paintLine(ground, carried.line, carried.is === "end" && carried.point !== null);
}

interface Parts {
  readonly parts: readonly PartId[];
  readonly dx: GridUnits;
  readonly dy: GridUnits;
}

/** Parts faintly, with straight lines to where their wires come from. */
function paintParts(
  { canvas, view, standing, tones }: Ground,
  circuit: Circuit,
  painted: Painted,
  carried: Parts,
): void {
  const { dx, dy } = carried;
  const parts = new Set(carried.parts);
  canvas.save();
  canvas.strokeStyle = tones.edge;
  canvas.lineWidth = 1;
  canvas.setLineDash([3, 3]);
  for (const { from, to } of circuit.wires) {
    const ends = [from, to].flatMap((point) => standing.spots.get(point) ?? []);
    if (ends.length < 2 || !ends.some((end) => parts.has(end.part))) continue;
    const moved = ends.map((end): Spot => (parts.has(end.part) ? { x: end.x + dx, y: end.y + dy } : end));
    canvas.beginPath();
    trace(canvas, view, moved);
    canvas.stroke();
  }
  canvas.restore();
  canvas.save();
  canvas.globalAlpha = 0.7;
  canvas.translate(view.x + dx * GRID_MM * view.scale, view.y + dy * GRID_MM * view.scale);
  canvas.scale(view.scale, view.scale);
  for (const { mark, paints } of painted.marks) {
    if (mark.of !== undefined && parts.has(mark.of)) paintOn(canvas, paints, painted.pixels);
  }
  canvas.restore();
}

const SQUARE = 8;

/** A wire as it would lie; its free end is filled once there is a point under it. */
function paintLine({ canvas, view, tones }: Ground, line: readonly Spot[], isMet: boolean): void {
  canvas.save();
  canvas.strokeStyle = tones.accent;
  canvas.fillStyle = tones.accent;
  canvas.lineWidth = 2;
  canvas.setLineDash([6, 4]);
  canvas.beginPath();
  trace(canvas, view, line);
  canvas.stroke();
  const { x, y } = pixelOf(view, line.at(-1)!);
  if (isMet) canvas.fillRect(x - SQUARE / 2, y - SQUARE / 2, SQUARE, SQUARE);
  canvas.restore();
}
