import type { PointId } from "../../core/base/ids.ts";
import type { Side } from "../../core/parts/kind.ts";
import type { Ground } from "./halos.ts";
import { INTERFACE_FONT } from "./tones.ts";
import { type Pixel, pixelOf } from "./viewport.ts";

/** A step of the probe order pinned on its point: the next one, one that waits, or one that is done. */
export interface Knot {
  readonly point: PointId;
  readonly number: number;
  readonly is: "next" | "waiting" | "done";
}

/** Side of a knot and its corners, pixels at any zoom. */
const SIDE = 20;
const CORNER = 5;
/** From the middle of one to that of the next, so that none covers another. */
const BETWEEN = 24;
/** From the terminal out along its wire, so that ring and name of the terminal stay in sight. */
const OFF_POINT = 13;

const OUTWARD: Readonly<Record<Side, Pixel>> = {
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
};

/** A knot with the middle of its square. */
export interface PlacedKnot {
  readonly knot: Knot;
  readonly at: Pixel;
}

/** Where the knots of a page stand in the window: those that would cover each other side by side, the next one on the wire itself. */
export function placedKnots(
  { view, standing }: Pick<Ground, "view" | "standing">,
  knots: readonly Knot[],
): readonly PlacedKnot[] {
  const placed: PlacedKnot[] = [];
  const isTaken = ({ x, y }: Pixel): boolean =>
    placed.some(({ at }) => Math.abs(at.x - x) < BETWEEN && Math.abs(at.y - y) < BETWEEN);
  for (const knot of [...knots].sort((one, other) => Number(other.is === "next") - Number(one.is === "next"))) {
    const spot = standing.spots.get(knot.point);
    if (!spot) continue;
    const { x, y } = pixelOf(view, spot);
    const out = OUTWARD[spot.side];
    // Beside an upright wire they go to the right, below each other along a level one.
    const aside = out.x === 0 ? { x: BETWEEN, y: 0 } : { x: 0, y: BETWEEN };
    let at = { x: x + out.x * OFF_POINT, y: y + out.y * OFF_POINT };
    while (isTaken(at)) at = { x: at.x + aside.x, y: at.y + aside.y };
    placed.push({ knot, at });
  }
  return placed;
}

/** Paints the knots: the next one filled, those that wait outlined, those that are done with a tick. */
export function paintKnots(ground: Ground, knots: readonly Knot[]): void {
  const { canvas, tones } = ground;
  canvas.save();
  // The next step lies over its neighbours.
  for (const { knot, at } of [...placedKnots(ground, knots)].reverse()) {
    const [x, y] = [Math.round(at.x), Math.round(at.y)];
    canvas.beginPath();
    canvas.roundRect(x - SIDE / 2, y - SIDE / 2, SIDE, SIDE, CORNER);
    canvas.fillStyle = knot.is === "next" ? tones.accent : knot.is === "done" ? tones.desk : tones.raised;
    canvas.fill();
    canvas.lineWidth = 1.6;
    canvas.strokeStyle = knot.is === "done" ? tones.edge : tones.accent;
    canvas.stroke();
    const colour = knot.is === "next" ? tones.onAccent : knot.is === "done" ? tones.quiet : tones.accent;
    if (knot.is === "done") paintTick(canvas, { x, y }, colour);
    else paintDigits(canvas, { x, y }, `${knot.number}`, colour);
  }
  canvas.restore();
}

function paintDigits(canvas: CanvasRenderingContext2D, { x, y }: Pixel, digits: string, colour: string): void {
  canvas.fillStyle = colour;
  canvas.font = `700 ${digits.length > 1 ? 11 : 13}px ${INTERFACE_FONT}`;
  canvas.textAlign = "center";
  canvas.textBaseline = "middle";
  canvas.fillText(digits, x, y + 0.5);
}

function paintTick(canvas: CanvasRenderingContext2D, { x, y }: Pixel, colour: string): void {
  canvas.strokeStyle = colour;
  canvas.lineCap = "round";
  canvas.lineJoin = "round";
  canvas.beginPath();
  canvas.moveTo(x - 4.5, y + 0.5);
  canvas.lineTo(x - 1.5, y + 3.5);
  canvas.lineTo(x + 4.5, y - 3.5);
  canvas.stroke();
}
