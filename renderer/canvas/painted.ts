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
  /** In the order in which they are laid down. */
  readonly marks: readonly PaintedMark[];
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
  const { found, left } = foundAgain(marks, last?.marks ?? []);
  const queues = queuesOf(left);
  const come: PaintedMark[] = [];
  let fresh = 0;
  const all = marks.map((mark, index): PaintedMark => {
    const same = found[index] ?? (known.has(mark) ? null : take(queues.get(mark.of ?? ""), mark));
    if (same) return same;
    let made = known.get(mark);
    if (!made) {
      made = { mark, paints: fittedPaints(mark, palette, pixels), box: paperBox(boundsOf(mark), EDGE) };
      known.set(mark, made);
      fresh++;
    }
    come.push(made);
    return made;
  });
  const gone = [...queues.values()].flatMap((queue) => queue.marks.filter((_, at) => !queue.taken.has(at)));
  return { palette, pixels, marks: all, altered: last && { gone, come }, fresh, known };
}

/** How far ahead the same mark is looked for where two drawings part. */
const AHEAD = 64;

/** For each mark what the very same object came to in the drawing before, and what is left over there. */
function foundAgain(marks: readonly Mark[], before: readonly PaintedMark[]) {
  const found: (PaintedMark | null)[] = [];
  const left: PaintedMark[] = [];
  let at = 0;
  for (const mark of marks) {
    let ahead = at;
    const end = Math.min(before.length, at + AHEAD);
    while (ahead < end && before[ahead]!.mark !== mark) ahead++;
    if (ahead === end) {
      found.push(null);
      continue;
    }
    for (let passed = at; passed < ahead; passed++) left.push(before[passed]!);
    found.push(before[ahead]!);
    at = ahead + 1;
  }
  for (; at < before.length; at++) left.push(before[at]!);
  return { found, left };
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
