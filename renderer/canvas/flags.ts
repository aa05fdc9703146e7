import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { Ground } from "./halos.ts";
import { partBox, wireMiddle, wireRuns } from "./places.ts";
import { pixelOf } from "./viewport.ts";

/** Size of a flag and its pole, pixels at any zoom. */
const POLE = 22;
const WIDTH = 13;
const HEIGHT = 9;
const NOTCH = 3.5;

/** Where a planted fault sits: the corner of its part, the middle of its wire, its cavity. Null where it is elsewhere. */
function flagSpot({ marks, standing }: Ground, circuit: Circuit, target: string): Spot | null {
  const spot = standing.spots.get(target) ?? standing.spots.get(`${target}a`);
  if (spot) return spot;
  if (circuit.wires.some(({ id }) => id === target)) return wireMiddle(wireRuns(marks, target));
  const box = partBox(marks, target);
  return box && { x: box.left, y: box.top };
}

/** Paints a flag in ink on everything that has a planted fault, several faults of one thing with one flag. */
export function paintFlags(ground: Ground, circuit: Circuit, targets: readonly string[]): void {
  const { canvas, view, tones } = ground;
  canvas.save();
  canvas.lineWidth = 1.8;
  canvas.lineJoin = "round";
  for (const target of new Set(targets)) {
    const spot = flagSpot(ground, circuit, target);
    if (!spot) continue;
    const { x: left, y } = pixelOf(view, spot);
    const [x, top] = [Math.round(left), Math.round(y) - POLE];
    canvas.strokeStyle = tones.ink;
    canvas.fillStyle = tones.ink;
    canvas.beginPath();
    canvas.moveTo(x, y);
    canvas.lineTo(x, top);
    canvas.stroke();
    canvas.beginPath();
    canvas.moveTo(x, top);
    canvas.lineTo(x + WIDTH, top);
    canvas.lineTo(x + WIDTH - NOTCH, top + HEIGHT / 2);
    canvas.lineTo(x + WIDTH, top + HEIGHT);
    canvas.lineTo(x, top + HEIGHT);
    canvas.closePath();
    canvas.fill();
    // A rim of paper keeps it apart from the lines it lies over.
    canvas.strokeStyle = tones.raised;
    canvas.lineWidth = 1;
    canvas.stroke();
    canvas.lineWidth = 1.8;
  }
  canvas.restore();
}
