import type { GridUnits } from "../base/units.ts";
import type { CircleMark, LineMark, Mark } from "../drawing/mark.ts";
import { type Bounds, boundsOf, boundsOfAll } from "../drawing/measure.ts";
import type { Doing } from "../parts/kind.ts";
import type { Altered } from "./sheetAltered.ts";
import { ListsAgain } from "./sheetLists.ts";
import { NO_BOX, type SheetRoom } from "./sheetRoom.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";

/** Rays stand off the circle of the lamp by so much, and are so long. */
const OFF: GridUnits = 0.35;
const LENGTH: GridUnits = 0.7;
/** Away from the leads, which go up, down, left or right. */
const DEGREES = [22.5, 67.5, 112.5, 157.5, 202.5, 247.5, 292.5, 337.5];
/** Of a lamp that burns dim every other ray is drawn. */
const DIM_STEP = 2;

/** The rays of one lamp, and all that they rest on. */
interface Rays {
  readonly part: SheetPart;
  readonly doing: Doing["doing"] | null;
  readonly marks: readonly Mark[];
  /** The box round those that were asked for. */
  readonly reach: Bounds;
}

/** The rays of one page at one sight as they last stood. */
export class RayMemory {
  private page: SheetSetup["wiresAt"] | null = null;
  private lamps: readonly number[] = [];
  private rays: readonly Rays[] = [];
  private readonly all = new ListsAgain<Rays, Mark>();

  /** Rays round every lamp that is lit; those that would touch a word are left out. */
  draw({ live, parts, wiresAt }: SheetSetup, room: SheetRoom, altered: Altered): readonly Mark[] {
    if (wiresAt !== this.page) this.lamps = parts.flatMap(({ kind }, index) => (kind.shines ? [index] : []));
    this.page = wiresAt;
    this.rays = this.lamps.map((index, place): Rays => {
      const part = parts[index]!;
      const doing = live?.parts.get(part.part.id)?.doing ?? null;
      const last = this.rays[place];
      const isSame = last?.part === part && last.doing === doing && !altered.isNear(last.reach);
      return isSame ? last : raysOf(part, doing, room);
    });
    return this.all.join(this.rays, ({ marks }) => marks);
  }
}

function raysOf(part: SheetPart, doing: Rays["doing"], room: SheetRoom): Rays {
  const isLit = doing === "on" || doing === "flashing" || doing === "dim";
  const bulbs = isLit ? bulbsOf(part) : [];
  // Of two filaments the part does not say which one burns: the word beside it must do.
  if (bulbs.length !== 1) return { part, doing, marks: [], reach: NO_BOX };
  const degrees = doing === "dim" ? DEGREES.filter((_, index) => index % DIM_STEP === 0) : DEGREES;
  const rays = degrees.map((turn) => rayOf(bulbs[0]!, turn, part.part.id));
  const reach = boundsOfAll(rays) ?? NO_BOX;
  return { part, doing, marks: rays.filter((ray) => room.isFree(boundsOf(ray))), reach };
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
