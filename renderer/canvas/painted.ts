import type { Palette } from "../../core/drawing/ink.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { boundsOf } from "../../core/drawing/measure.ts";
import type { Paint } from "../../core/drawing/paint.ts";
import { paintsOf } from "../../core/drawing/paintMark.ts";
import { fitMark, fitPaint, fitStroke } from "./pixelFit.ts";
import { type PaperBox, paperBox } from "./viewport.ts";

/** A mark with what it comes to in ink and where that lies. */
export interface PaintedMark {
  readonly mark: Mark;
  readonly paints: readonly Paint[];
  readonly box: PaperBox;
}

/** A drawing ready to be laid down. */
export interface Painted {
  readonly palette: Palette;
  /** Screen pixels for each millimetre that the marks are fitted to. */
  readonly pixels: number;
  /** The drawing itself. */
  readonly drawing: readonly Mark[];
  /** In the order in which they are laid down. */
  readonly marks: readonly PaintedMark[];
  /** Left, top, right and bottom of the box of each mark, one after the other. */
  readonly boxes: Float64Array;
  /** What differs from the drawing before; null where all does, for that was fitted to other pixels or other inks. */
  readonly altered: Altered | null;
  /** How many marks had to be painted anew. */
  readonly fresh: number;
  /** What marks came to at this palette and size, by the mark itself. */
  readonly known: WeakMap<Mark, PaintedMark>;
}

/** What of the drawing before is not in a drawing, and what of it was not in that. */
export interface Altered {
  readonly gone: readonly PaintedMark[];
  readonly come: readonly PaintedMark[];
}

/**
 * Paints a drawing, and takes from the one before whatever is the same: a mark that is the same object is found at once;
 * else marks are plain data, and those of one part or wire are compared with its former ones, in order.
 */
export function painted(
  marks: readonly Mark[],
  palette: Palette,
  pixels: number,
  before: Painted | null = null,
): Painted {
  const last = before?.palette === palette && before.pixels === pixels ? before : null;
  const known = last?.known ?? new WeakMap<Mark, PaintedMark>();
  const runs = runsOf(marks, last?.drawing ?? []);
  const queues = queuesOf(leftBy(runs, last?.marks ?? []));
  const all: PaintedMark[] = new Array(marks.length);
  const boxes = new Float64Array(EDGES * marks.length);
  const come: PaintedMark[] = [];
  let fresh = 0;
  const paint = (mark: Mark): PaintedMark => {
    const same = known.has(mark) ? null : take(queues.get(mark.of ?? ""), mark);
    if (same) return same;
    let made = known.get(mark);
    if (!made) {
      made = { mark, paints: fittedPaints(mark, palette, pixels), box: paperBox(boundsOf(mark), EDGE) };
      known.set(mark, made);
      fresh++;
    }
    come.push(made);
    return made;
  };
  let next = 0;
  const paintUpTo = (end: number): void => {
    for (; next < end; next++) {
      const each = paint(marks[next]!);
      all[next] = each;
      boxes.set([each.box.left, each.box.top, each.box.right, each.box.bottom], EDGES * next);
    }
  };
  for (const { at, from, count } of runs) {
    paintUpTo(at);
    for (let i = 0; i < count; i++) all[at + i] = last!.marks[from + i]!;
    boxes.set(last!.boxes.subarray(EDGES * from, EDGES * (from + count)), EDGES * at);
    next = at + count;
  }
  paintUpTo(marks.length);
  const gone = [...queues.values()].flatMap((queue) => queue.marks.filter((_, at) => !queue.taken.has(at)));
  return { palette, pixels, drawing: marks, marks: all, boxes, altered: last && { gone, come }, fresh, known };
}

/** Edges of a box. */
const EDGES = 4;

/** Whether the box of a mark, by its number, lies off another one. Read from one row of numbers, for a page has far more marks than are near anything. */
export function isOff(
  { boxes }: Pick<Painted, "boxes">,
  index: number,
  { left, top, right, bottom }: PaperBox,
): boolean {
  const at = EDGES * index;
  return boxes[at]! > right || boxes[at + 2]! < left || boxes[at + 1]! > bottom || boxes[at + 3]! < top;
}

/** Marks that are the very same objects in two drawings: so many from `at` in the one and `from` in the other. */
interface Run {
  readonly at: number;
  readonly from: number;
  readonly count: number;
}

/** How far ahead the same mark is looked for where two drawings part. */
const AHEAD = 64;

function runsOf(marks: readonly Mark[], before: readonly Mark[]): readonly Run[] {
  const runs: Run[] = [];
  let [at, from] = [0, 0];
  while (at < marks.length && from < before.length) {
    let count = 0;
    while (at + count < marks.length && from + count < before.length && marks[at + count] === before[from + count])
      count++;
    if (count > 0) runs.push({ at, from, count });
    at += count;
    from += count;
    if (at === marks.length) break;
    const end = Math.min(before.length, from + AHEAD);
    let found = from;
    while (found < end && before[found] !== marks[at]) found++;
    if (found < end) from = found;
    else at++;
  }
  return runs;
}

/** What no run holds of a drawing. */
function leftBy(runs: readonly Run[], before: readonly PaintedMark[]): readonly PaintedMark[] {
  const left: PaintedMark[] = [];
  let next = 0;
  for (const { from, count } of runs) {
    for (; next < from; next++) left.push(before[next]!);
    next = from + count;
  }
  for (; next < before.length; next++) left.push(before[next]!);
  return left;
}

/** Room round the ink of a mark for what fitting it to pixels adds, millimetres. */
export const EDGE = 1;

/** The paints of a mark that is laid down on pixels of this size. */
export function fittedPaints(mark: Mark, palette: Palette, pixels: number): readonly Paint[] {
  const paints = paintsOf(fitMark(mark, pixels), palette, (stroke) => fitStroke(stroke, pixels));
  return mark.mark === "swatch" ? paints.map((paint) => fitPaint(paint, pixels)) : paints;
}

/** Marks of one thing not yet found again; those before `next` are passed. */
interface Queue {
  readonly marks: PaintedMark[];
  readonly taken: Set<number>;
  next: number;
}

function queuesOf(marks: readonly PaintedMark[]): ReadonlyMap<string, Queue> {
  const found = new Map<string, Queue>();
  for (const each of marks) {
    const of = each.mark.of ?? "";
    const queue = found.get(of) ?? { marks: [], taken: new Set(), next: 0 };
    queue.marks.push(each);
    found.set(of, queue);
  }
  return found;
}

/** The next former mark that is the same. What comes before it is passed only once one is found. */
function take(queue: Queue | undefined, mark: Mark): PaintedMark | null {
  if (queue === undefined) return null;
  for (let at = queue.next; at < queue.marks.length; at++) {
    const candidate = queue.marks[at]!;
    if (!isSame(candidate.mark, mark)) continue;
    queue.next = at + 1;
    queue.taken.add(at);
    return candidate;
  }
  return null;
}

/** Whether two pieces of plain data say the same. */
export function isSame(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one)) {
    return Array.isArray(other) && one.length === other.length && one.every((each, i) => isSame(each, other[i]));
  }
  const [a, b] = [one as Record<string, unknown>, other as Record<string, unknown>];
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => isSame(a[name], b[name]));
}
