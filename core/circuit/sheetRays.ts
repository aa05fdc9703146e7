import type { GridUnits } from "../base/units.ts";
import type { CircleMark, LineMark, Mark } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";

/** Rays stand off the circle of the lamp by so much, and are so long. */
const OFF: GridUnits = 0.35;
const LENGTH: GridUnits = 0.7;
/** Away from the leads, which go up, down, left or right. */
const DEGREES = [22.5, 67.5, 112.5, 157.5, 202.5, 247.5, 292.5, 337.5];
/** Of a lamp that burns dim every other ray is drawn. */
const DIM_STEP = 2;

/** Rays round every lamp that is lit; those that would touch a word are left out. */
export function rayMarks({ live, parts }: SheetSetup, room: SheetRoom): readonly Mark[] {
  if (live === null) return [];
  return parts.flatMap((part) => {
    const doing = part.kind.shines ? live.parts.get(part.part.id)?.doing : null;
    if (doing !== "on" && doing !== "flashing" && doing !== "dim") return [];
    const degrees = doing === "dim" ? DEGREES.filter((_, index) => index % DIM_STEP === 0) : DEGREES;
    const bulbs = bulbsOf(part);
    // Of two filaments the part does not say which one burns: the word beside it must do.
    if (bulbs.length !== 1) return [];
    return degrees.map((turn) => rayOf(bulbs[0]!, turn, part.part.id)).filter((ray) => room.isFree(boundsOf(ray)));
  });
}

/** The circles of its symbol: one for each filament. */
function bulbsOf({ shape: { marks } }: SheetPart): readonly CircleMark[] {
  const circles = marks.filter((mark): mark is CircleMark => mark.mark === "circle");
  const largest = Math.max(...circles.map(({ radius }) => radius));
  return circles.filter(({ radius }) => radius === largest);
}

function rayOf({ at, radius }: CircleMark, degrees: number, of: string): LineMark {
  const radians = (degrees * Math.PI) / 180;
  const spot = (away: GridUnits) => ({ x: at.x + away * Math.cos(radians), y: at.y + away * Math.sin(radians) });
  return { mark: "line", spots: [spot(radius + OFF), spot(radius + OFF + LENGTH)], role: "ray", of };
}
