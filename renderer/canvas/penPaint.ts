import type { PointId } from "../../core/base/ids.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import { GRID_MM } from "../../core/drawing/scale.ts";
import type { Pair } from "../../core/edit/connectorSides.ts";
import type { Ghost } from "./ghost.ts";
import { type Ground, trace } from "./halos.ts";
import { paintKnots } from "./knots.ts";
import { fittedPaints } from "./painted.ts";
import { paintOn } from "./paintOn.ts";
import { paintStandsOn } from "./standsOn.ts";
import type { PenShown } from "./underWay.ts";
import { type Pixel, pixelOf } from "./viewport.ts";

const RING = 9;
const SQUARE = 7;

/** Paints what a tool has under way: the part that a click would place, the wire so far and where it would end. */
export function paintPen(ground: Ground, palette: Palette, { ghost, line, end, gathered, pairs }: PenShown): void {
  const { canvas, view, tones } = ground;
  if (ghost) paintGhost(ground, palette, ghost);
  paintBundle(ground, gathered, pairs);
  if (!end && line.length === 0) return;
  canvas.save();
  canvas.strokeStyle = tones.accent;
  canvas.fillStyle = tones.accent;
  canvas.lineWidth = 2;
  if (line.length > 1) {
    canvas.beginPath();
    trace(canvas, view, line);
    canvas.stroke();
  }
  if (end) {
    const { x, y } = pixelOf(view, end.spot);
    canvas.beginPath();
    // A ring round a terminal that would be taken, a filled square where a wire would be joined, a small one on paper.
    if (end.point !== null) canvas.arc(x, y, RING, 0, 2 * Math.PI);
    else canvas.rect(x - SQUARE / 2, y - SQUARE / 2, SQUARE, SQUARE);
    if (end.wire !== null) canvas.fill();
    canvas.stroke();
  }
  canvas.restore();
}

/** A knot with its number on each terminal that is gathered, and where its wire would go. */
function paintBundle(ground: Ground, gathered: readonly PointId[], pairs: readonly Pair[]): void {
  const { canvas, view, standing, tones } = ground;
  canvas.save();
  canvas.strokeStyle = tones.accent;
  canvas.lineWidth = 1.5;
  canvas.setLineDash([6, 4]);
  for (const { from, to } of pairs) {
    const ends = [from, to].flatMap((point) => standing.spots.get(point) ?? []);
    canvas.beginPath();
    trace(canvas, view, ends);
    canvas.stroke();
  }
  canvas.restore();
  const number = (point: PointId): number => gathered.indexOf(point) + 1;
  // Where all go to one terminal it has no number of its own.
  const ends = new Set(pairs.map(({ to }) => to)).size === pairs.length ? pairs : [];
  paintKnots(ground, [
    ...gathered.map((point) => ({ point, number: number(point), is: "next" }) as const),
    ...ends.map(({ from, to }) => ({ point: to, number: number(from), is: "waiting" }) as const),
  ]);
}

function paintGhost(ground: Ground, palette: Palette, { marks, shift, standsOn }: Ghost): void {
  const { canvas, view } = ground;
  canvas.save();
  canvas.globalAlpha = 0.65;
  canvas.translate(view.x + shift.x * GRID_MM * view.scale, view.y + shift.y * GRID_MM * view.scale);
  canvas.scale(view.scale, view.scale);
  for (const mark of marks) paintOn(canvas, fittedPaints(mark, palette, view.scale), view.scale);
  canvas.restore();
  paintStandsOn(ground, standsOn);
}

/** Paints the box by which several things are chosen. */
export function paintFrame(
  { canvas, tones }: Ground,
  { from, to }: { readonly from: Pixel; readonly to: Pixel },
): void {
  canvas.save();
  canvas.fillStyle = tones.halo;
  canvas.strokeStyle = tones.accent;
  canvas.lineWidth = 1;
  canvas.beginPath();
  canvas.rect(from.x, from.y, to.x - from.x, to.y - from.y);
  canvas.fill();
  canvas.stroke();
  canvas.restore();
}
