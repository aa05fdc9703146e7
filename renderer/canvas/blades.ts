import type { LineMark, Spot } from "../../core/drawing/mark.ts";
import { millimetresOf } from "../../core/drawing/scale.ts";
import type { Ground } from "./halos.ts";
import { fittedPaints, isOff, isSame, type Painted, type PaintedMark } from "./painted.ts";
import { paintOn } from "./paintOn.ts";
import { paperBox } from "./viewport.ts";

/** How long a thrown blade turns to its new place, milliseconds. */
export const TURN_MS = 200;

/** A blade on its way: as it will lie, and where its tip was. */
interface TurningBlade {
  readonly painted: PaintedMark;
  readonly mark: LineMark;
  readonly from: Spot;
}

/** Blades on their way in a drawing, and what of it lies over them: the rings of their parts. */
export interface Turning extends Pick<Painted, "palette" | "pixels"> {
  readonly blades: readonly TurningBlade[];
  readonly rings: readonly PaintedMark[];
}

/** The blades that lie otherwise than in the drawing before: same part, same pivot, another tip. */
export function turningIn(painted: Painted): Turning {
  const { palette, pixels, altered } = painted;
  const lying = new Map(bladesAmong(altered?.gone ?? []).map(({ mark }) => [pivotOf(mark), mark.spots.at(-1)!]));
  const blades = bladesAmong(altered?.come ?? []).flatMap((each) => {
    const from = lying.get(pivotOf(each.mark));
    return from && !isSame(from, each.mark.spots.at(-1)!) ? [{ painted: each, mark: each.mark, from }] : [];
  });
  return { palette, pixels, blades, rings: blades.flatMap((blade) => ringsAt(painted, blade)) };
}

/** The rings of the part of a blade that the blade may turn over: those within twice its length. */
function ringsAt(painted: Painted, { mark, from }: TurningBlade): readonly PaintedMark[] {
  const foot = mark.spots[0]!;
  const reach = 2 * Math.max(lengthOf(foot, from), lengthOf(foot, mark.spots.at(-1)!));
  const near = paperBox({ left: foot.x, top: foot.y, right: foot.x, bottom: foot.y }, millimetresOf(reach));
  return painted.marks.filter(({ mark: ring }, index) => {
    return !isOff(painted, index, near) && ring.of === mark.of && "role" in ring && ring.role === "terminal";
  });
}

type PaintedLine = PaintedMark & { readonly mark: LineMark };

function bladesAmong(marks: readonly PaintedMark[]): readonly PaintedLine[] {
  return marks.filter((each): each is PaintedLine => each.mark.mark === "line" && each.mark.role === "contact-now");
}

function pivotOf({ of, spots }: LineMark): string {
  return `${of} ${spots[0]!.x} ${spots[0]!.y}`;
}

/** Paints the blades at a share of their way, with the rings over them. */
export function paintTurning({ canvas, view }: Ground, turning: Turning, share: number): void {
  const { blades, rings, palette, pixels } = turning;
  canvas.save();
  canvas.translate(view.x, view.y);
  canvas.scale(view.scale, view.scale);
  for (const blade of blades) paintOn(canvas, fittedPaints(turned(blade, eased(share)), palette, pixels), pixels);
  for (const { paints } of rings) paintOn(canvas, paints, pixels);
  canvas.restore();
}

/** The blade at a share of its turn: angle and length go from the one place to the other. */
function turned({ mark, from }: TurningBlade, share: number): LineMark {
  const foot = mark.spots[0]!;
  const to = mark.spots.at(-1)!;
  const [start, end] = [angleOf(foot, from), angleOf(foot, to)];
  const angle = start + shortWay(end - start) * share;
  const length = lengthOf(foot, from) + (lengthOf(foot, to) - lengthOf(foot, from)) * share;
  return { ...mark, spots: [foot, { x: foot.x + length * Math.cos(angle), y: foot.y + length * Math.sin(angle) }] };
}

function angleOf(foot: Spot, tip: Spot): number {
  return Math.atan2(tip.y - foot.y, tip.x - foot.x);
}

function lengthOf(foot: Spot, tip: Spot): number {
  return Math.hypot(tip.x - foot.x, tip.y - foot.y);
}

function shortWay(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

/** Fast at first, slow at the end. */
function eased(share: number): number {
  return 1 - (1 - Math.min(1, Math.max(0, share))) ** 3;
}
