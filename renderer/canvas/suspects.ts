import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import { pathLength, spotAlong } from "../../core/drawing/path.ts";
import type { Fault } from "../../core/live/fault.ts";
import type { Live } from "../../core/live/live.ts";
import { thingNamed } from "../state/places.ts";
import type { SuspectMark } from "../state/suspectNow.ts";
import { type Ground, traceBox } from "./halos.ts";
import { partBox, wireRuns } from "./places.ts";
import { pixelOf } from "./viewport.ts";

/** Half the length and width of a capsule round a wire, pixels at any zoom: a small one leaves the words beside a wire alone. */
const SHOWN_CAPSULE = { length: 24, width: 9 };
const SMALL_CAPSULE = { length: 12, width: 6 };
/** The strokes at a break. */
const STROKE = 8;
const BETWEEN_STROKES = 6;
/** The ring round a pin, and how far the one round a part stands off its ink. */
const PIN_RING = 11;
const OFF_PART = 4;
const FULL = 2.4;
const THIN = 1.4;
/** A rim of paper keeps the one that is shown apart from the lines it lies over; round a part it would hide its words. */
const RIM = 2.4;

/** Paints every suspect in ink: a capsule round its wire, with two strokes where it is open, or a ring round part and pin. */
export function paintSuspects(ground: Ground, circuit: Circuit, live: Live, marks: readonly SuspectMark[]): void {
  const { canvas, tones } = ground;
  canvas.save();
  canvas.lineCap = "round";
  for (const { suspect, isShown } of marks) {
    for (const fault of suspect.faults) {
      const ring = ringPath(ground, circuit, fault, isShown ? SHOWN_CAPSULE : SMALL_CAPSULE);
      if (!ring) continue;
      if (isShown && thingNamed(circuit, fault.target)?.is !== "part") {
        canvas.strokeStyle = tones.raised;
        canvas.lineWidth = FULL + RIM;
        canvas.stroke(ring);
      }
      canvas.strokeStyle = tones.ink;
      canvas.lineWidth = isShown ? FULL : THIN;
      canvas.stroke(ring);
      // What is shown as open has its strokes in the drawing itself.
      if (isShown && fault.mode === "open" && live.wires.get(fault.target)?.isBroken === false)
        paintStrokes(ground, fault.target);
    }
  }
  canvas.restore();
}

/** The outline of a suspect on this page, in pixels; null where it is on another one. */
function ringPath(ground: Ground, circuit: Circuit, { target }: Fault, size: typeof SHOWN_CAPSULE): Path2D | null {
  const { view, standing, marks } = ground;
  const ring = new Path2D();
  const spot = standing.spots.get(target) ?? standing.spots.get(`${target}a`);
  if (spot) {
    const { x, y } = pixelOf(view, spot);
    ring.arc(x, y, PIN_RING, 0, 2 * Math.PI);
    return ring;
  }
  if (thingNamed(circuit, target)?.is === "wire") return capsule(ground, target, size);
  if (!partBox(marks, target)) return null;
  traceBox(ground, target, OFF_PART, ring);
  return ring;
}

/** Where a wire is open, or would be, and the way it runs there, radians; null where it is not on this page. */
function breakOf({ marks }: Ground, wire: string): { readonly at: Spot; readonly angle: number } | null {
  const [first, second] = wireRuns(marks, wire);
  if (!first) return null;
  const length = pathLength(first);
  const { at, degrees } = spotAlong(first, second ? length : length / 2);
  const other = second?.[0] ?? at;
  return { at: { x: (at.x + other.x) / 2, y: (at.y + other.y) / 2 }, angle: (degrees * Math.PI) / 180 };
}

function capsule(ground: Ground, wire: string, { length, width }: typeof SHOWN_CAPSULE): Path2D | null {
  const found = breakOf(ground, wire);
  if (!found) return null;
  const { x, y } = pixelOf(ground.view, found.at);
  const ring = new Path2D();
  const upright = new Path2D();
  upright.roundRect(-length, -width, 2 * length, 2 * width, width);
  ring.addPath(upright, new DOMMatrix().translate(x, y).rotate((found.angle * 180) / Math.PI));
  return ring;
}

/** Two slanted strokes across a wire that is drawn whole, with paper between them. */
function paintStrokes(ground: Ground, wire: string): void {
  const found = breakOf(ground, wire);
  if (!found) return;
  const { canvas, view, tones } = ground;
  const { x, y } = pixelOf(view, found.at);
  canvas.save();
  canvas.translate(x, y);
  canvas.rotate(found.angle);
  for (const [colour, width] of [
    [tones.raised, FULL + 2 * RIM],
    [tones.ink, FULL],
  ] as const) {
    canvas.strokeStyle = colour;
    canvas.lineWidth = width;
    for (const side of [-1, 1]) {
      canvas.beginPath();
      canvas.moveTo((side * BETWEEN_STROKES) / 2 - 3, STROKE);
      canvas.lineTo((side * BETWEEN_STROKES) / 2 + 3, -STROKE);
      canvas.stroke();
    }
  }
  canvas.restore();
}
