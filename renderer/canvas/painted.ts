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

/** A drawing ready to be laid down, in the order of its marks. */
export interface Painted {
  readonly palette: Palette;
  /** Screen pixels for each millimetre that the marks are fitted to. */
  readonly pixels: number;
  readonly marks: readonly PaintedMark[];
  /** Parts and wires whose marks are not those of the drawing before; "" stands for marks that belong to none. */
  readonly changed: ReadonlySet<string>;
  /** How many marks had to be painted anew. */
  readonly fresh: number;
}

/**
 * Paints a drawing, and takes from the one before whatever is the same: marks are plain data, so those of one part or
 * wire are compared with its former ones, in order.
 */
export function painted(
  marks: readonly Mark[],
  palette: Palette,
  pixels: number,
  before: Painted | null = null,
): Painted {
  const isLike = before?.palette === palette && before.pixels === pixels;
  const known = isLike ? queues(before.marks) : new Map<string, Queue>();
  const changed = new Set<string>();
  let fresh = 0;
  const all = marks.map((mark): PaintedMark => {
    const of = mark.of ?? "";
    const queue = known.get(of);
    const same = queue && take(queue, mark);
    if (same) return same;
    fresh++;
    changed.add(of);
    return { mark, paints: fittedPaints(mark, palette, pixels), box: paperBox(boundsOf(mark), EDGE) };
  });
  for (const [of, { left }] of known) if (left > 0) changed.add(of);
  return { palette, pixels, marks: all, changed, fresh };
}

/** Room round the ink of a mark for what fitting it to pixels adds, millimetres. */
const EDGE = 1;

/** The paints of a mark that is laid down on pixels of this size. */
export function fittedPaints(mark: Mark, palette: Palette, pixels: number): readonly Paint[] {
  const paints = paintsOf(fitMark(mark, pixels), palette, (stroke) => fitStroke(stroke, pixels));
  return mark.mark === "swatch" ? paints.map((paint) => fitPaint(paint, pixels)) : paints;
}

/** Marks of one thing not yet found again; those before `next` are passed. */
interface Queue {
  readonly marks: readonly PaintedMark[];
  next: number;
  left: number;
}

function queues(marks: readonly PaintedMark[]): ReadonlyMap<string, Queue> {
  const found = new Map<string, { marks: PaintedMark[]; next: number; left: number }>();
  for (const each of marks) {
    const of = each.mark.of ?? "";
    const queue = found.get(of) ?? { marks: [], next: 0, left: 0 };
    queue.marks.push(each);
    queue.left++;
    found.set(of, queue);
  }
  return found;
}

/** The next former mark that is the same. What comes before it is passed only once one is found. */
function take(queue: Queue, mark: Mark): PaintedMark | null {
  for (let at = queue.next; at < queue.marks.length; at++) {
    const candidate = queue.marks[at]!;
    if (!isSame(candidate.mark, mark)) continue;
    queue.next = at + 1;
    queue.left--;
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
