import type { LineMark, Mark, Spot } from "../../core/drawing/mark.ts";
import type { Ground } from "./halos.ts";
import { fittedPaints, isSame, type Painted } from "./painted.ts";
import { paintOn } from "./paintOn.ts";

/** How long a thrown blade turns to its new place, milliseconds. */
export const TURN_MS = 200;

/** A blade on its way: as it will lie, and where its tip was. */
export interface TurningBlade {
  readonly mark: LineMark;
  readonly from: Spot;
}

/** The blades that lie otherwise in a drawing than in the one before: same part, same pivot, another tip. */
export function turningBlades(before: Painted, after: Painted): readonly TurningBlade[] {
  const lying = new Map<string, Spot>();
  for (const mark of bladesIn(before, after.changed)) lying.set(pivotOf(mark), mark.spots.at(-1)!);
  return bladesIn(after, after.changed).flatMap((mark) => {
    const from = lying.get(pivotOf(mark));
    return from && !isSame(from, mark.spots.at(-1)!) ? [{ mark, from }] : [];
  });
}

function bladesIn({ marks }: Painted, changed: ReadonlySet<string>): readonly LineMark[] {
  return marks.flatMap(({ mark }) =>
    mark.mark === "line" && mark.role === "contact-now" && changed.has(mark.of ?? "") ? [mark] : [],
  );
}

function pivotOf({ of, spots }: LineMark): string {
  return `${of} ${spots[0]!.x} ${spots[0]!.y}`;
}

/** Paints the blades at a share of their way, with the rings of their parts over them. */
export function paintTurning(ground: Ground, painted: Painted, blades: readonly TurningBlade[], share: number): void {
  if (blades.length === 0) return;
  const { canvas, view } = ground;
  const parts = new Set(blades.map(({ mark }) => mark.of));
  canvas.save();
  canvas.translate(view.x, view.y);
  canvas.scale(view.scale, view.scale);
  const lay = (mark: Mark): void =>
    paintOn(canvas, fittedPaints(mark, painted.palette, painted.pixels), painted.pixels);
  for (const blade of blades) lay(turned(blade, eased(share)));
  for (const { mark } of painted.marks) if (parts.has(mark.of) && "role" in mark && mark.role === "terminal") lay(mark);
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
