import type { GridUnits } from "../base/units.ts";
import type { Mark, Spot, TextMark } from "../drawing/mark.ts";
import { arcSweep, type Bounds, boundsOf } from "../drawing/measure.ts";

/** Side of the squares by which taken boxes are found again. */
const SQUARE: GridUnits = 4;
/** Squares are numbered along their columns, so many to each: more than any sheet is high. */
const ROW = 100_000;
/** Slanting and round lines are taken as boxes of about this size along them. */
const PIECE: GridUnits = 0.4;

/** Words keep this far from lines of symbols. */
export const FROM_SYMBOL: GridUnits = 0.18;
/** Other words keep this far from a word, above and below it, and on paper beside it. */
export const FROM_WORD: GridUnits = 0.15;
/** How far from its part a name, or a word beside it, stands at most where all is crowded. */
export const FARTHEST: GridUnits = 16;

/** What of a sheet is taken: boxes of words, pieces of lines. Words are set only where it is free. */
export class SheetRoom {
  private readonly squares = new Map<number, Bounds[]>();
  private readonly within: Bounds;
  private readonly under: SheetRoom | null;

  /** Nothing outside `within` is free, nor what is taken in the room under this one. */
  constructor(within: Bounds, under: SheetRoom | null = null) {
    this.within = within;
    this.under = under;
  }

  /** The same room, to try something in: what is taken there is not taken here. */
  copy(): SheetRoom {
    return new SheetRoom(this.within, this);
  }

  /** Takes a box, grown on all sides by `margin`. */
  take(box: Bounds, margin: GridUnits = 0): void {
    const taken = grown(box, margin);
    this.eachSquare(taken, (key) => {
      const list = this.squares.get(key);
      if (list) list.push(taken);
      else this.squares.set(key, [taken]);
      return false;
    });
  }

  /** Takes a word, with so much room beside it. */
  takeWord(word: TextMark, beside: GridUnits): void {
    const { left, right, ...upright } = boundsOf(word);
    const more = beside - FROM_WORD;
    this.take({ ...upright, left: left - more, right: right + more }, FROM_WORD);
  }

  /** Takes the ink of a mark; of an outline only its lines, so that words may stand inside it. */
  takeMark(mark: Mark, margin: GridUnits): void {
    for (const box of inkBoxes(mark)) this.take(box, margin);
  }

  /** True where the box, grown by `margin`, touches nothing taken and lies within the room. */
  isFree(wanted: Bounds, margin: GridUnits = 0): boolean {
    const box = grown(wanted, margin);
    const { left, top, right, bottom } = this.within;
    if (box.left < left || box.top < top || box.right > right || box.bottom > bottom) return false;
    return !this.isTouched(box);
  }

  private isTouched(box: Bounds): boolean {
    const isHit = this.eachSquare(box, (key) => this.squares.get(key)?.some((taken) => overlaps(taken, box)) ?? false);
    return isHit || (this.under?.isTouched(box) ?? false);
  }

  private eachSquare(box: Bounds, act: (key: number) => boolean): boolean {
    for (let x = Math.floor(box.left / SQUARE); x <= Math.floor(box.right / SQUARE); x++) {
      for (let y = Math.floor(box.top / SQUARE); y <= Math.floor(box.bottom / SQUARE); y++) {
        if (act(x * ROW + y)) return true;
      }
    }
    return false;
  }
}

function grown({ left, top, right, bottom }: Bounds, by: GridUnits): Bounds {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

/** True where two boxes share more than an edge. */
export function overlaps(one: Bounds, other: Bounds): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

/** Boxes that together cover the ink of a mark, without the weight of its lines. */
export function inkBoxes(mark: Mark): readonly Bounds[] {
  switch (mark.mark) {
    case "line":
      if (mark.filled) return [boundsOf(mark)];
      return pieces(mark.closed ? [...mark.spots, mark.spots[0]!] : mark.spots);
    case "circle":
      return mark.filled || mark.radius < 1 ? [boundsOf(mark)] : pieces(circleSpots(mark.at, mark.radius, 0, 360));
    case "arc":
      return pieces(circleSpots(mark.at, mark.radius, mark.from, arcSweep(mark.from, mark.to)));
    case "box": {
      const { x, y } = mark.at;
      const [right, bottom] = [x + mark.width, y + mark.height];
      return pieces([
        { x, y },
        { x: right, y },
        { x: right, y: bottom },
        { x, y: bottom },
        { x, y },
      ]);
    }
    default:
      return [boundsOf(mark)];
  }
}

function circleSpots(at: Spot, radius: GridUnits, from: number, sweep: number): readonly Spot[] {
  const count = Math.max(3, Math.ceil((radius * sweep * Math.PI) / 180 / PIECE));
  return Array.from({ length: count + 1 }, (_, i) => {
    const radians = ((from + (sweep * i) / count) * Math.PI) / 180;
    return { x: at.x + radius * Math.cos(radians), y: at.y + radius * Math.sin(radians) };
  });
}

function pieces(spots: readonly Spot[]): readonly Bounds[] {
  const boxes: Bounds[] = [];
  for (let i = 1; i < spots.length; i++) {
    const [from, to] = [spots[i - 1]!, spots[i]!];
    const isStraight = from.x === to.x || from.y === to.y;
    const count = isStraight ? 1 : Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / PIECE);
    for (let n = 0; n < count; n++) {
      const at = (share: number) => ({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
      const [a, b] = [at(n / count), at((n + 1) / count)];
      boxes.push({
        left: Math.min(a.x, b.x),
        top: Math.min(a.y, b.y),
        right: Math.max(a.x, b.x),
        bottom: Math.max(a.y, b.y),
      });
    }
  }
  return boxes;
}
