import type { Mark, Spot } from "../../core/drawing/mark.ts";
import type { Thing } from "../state/state.ts";
import { partBox, wireRuns } from "./places.ts";
import type { Standing } from "./standing.ts";
import type { Tones } from "./tones.ts";
import { pixelOf, type Viewport } from "./viewport.ts";

/** Width of a halo round a wire, and how far it stands off a part or a pin, in pixels at any zoom. */
const HALO = 16;
const BAND = 12;
const OFF_PART = 8;
const PIN_RADIUS = 12;

/** What lies under the drawing: what is chosen, what the pointer or the panel is on, and what differs from the good circuit. */
export interface Under {
  readonly chosen: readonly Thing[];
  readonly hovered: Thing | null;
  readonly different: ReadonlySet<string>;
}

/** Where things are, for whoever paints under or over the drawing. */
export interface Ground {
  readonly canvas: CanvasRenderingContext2D;
  readonly view: Viewport;
  readonly marks: readonly Mark[];
  readonly standing: Standing;
  readonly tones: Tones;
}

/** Paints it in pixels of the window. A band tells what differs, a halo what is chosen, a pale one what is pointed at. */
export function paintUnder(ground: Ground, { chosen, hovered, different }: Under): void {
  const { tones, standing } = ground;
  for (const id of different) {
    const thing: Thing = { is: standing.parts.has(id) ? "part" : "wire", id };
    paintHalo(ground, thing, tones.rule, BAND);
  }
  const isChosen = chosen.some((each) => isSameThing(hovered, each));
  if (hovered && !isChosen) paintHalo(ground, hovered, tones.hover, HALO);
  for (const each of chosen) paintHalo(ground, each, tones.halo, HALO);
}

function paintHalo(ground: Ground, thing: Thing, colour: string, width: number): void {
  const { canvas, view, marks, standing } = ground;
  canvas.save();
  canvas.fillStyle = colour;
  canvas.strokeStyle = colour;
  canvas.beginPath();
  switch (thing.is) {
    case "wire":
      canvas.lineWidth = width;
      canvas.lineCap = "round";
      canvas.lineJoin = "round";
      for (const run of wireRuns(marks, thing.id)) trace(canvas, view, run);
      canvas.stroke();
      break;
    case "point": {
      const spot = standing.spots.get(thing.id);
      if (!spot) break;
      const { x, y } = pixelOf(view, spot);
      canvas.arc(x, y, PIN_RADIUS, 0, 2 * Math.PI);
      canvas.fill();
      break;
    }
    case "part":
      traceBox(ground, thing.id, width === BAND ? OFF_PART - 2 : OFF_PART);
      canvas.fill();
      break;
  }
  canvas.restore();
}

/** The way along spots of the drawing, in pixels. */
export function trace(canvas: CanvasRenderingContext2D, view: Viewport, run: readonly Spot[]): void {
  run.forEach((spot, index) => {
    const { x, y } = pixelOf(view, spot);
    if (index === 0) canvas.moveTo(x, y);
    else canvas.lineTo(x, y);
  });
}

/** The box round a part, `off` pixels from its ink, on the canvas or on a path that is given. */
export function traceBox(
  { canvas, view, marks }: Ground,
  part: string,
  off: number,
  path: CanvasRenderingContext2D | Path2D = canvas,
): void {
  const box = partBox(marks, part);
  if (!box) return;
  const a = pixelOf(view, { x: box.left, y: box.top });
  const b = pixelOf(view, { x: box.right, y: box.bottom });
  path.roundRect(a.x - off, a.y - off, b.x - a.x + 2 * off, b.y - a.y + 2 * off, off);
}

/** Whether two are the same thing. */
export function isSameThing(one: Thing | null, other: Thing | null): boolean {
  return one === other || (one !== null && other !== null && one.is === other.is && one.id === other.id);
}
