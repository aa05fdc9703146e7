import type { GridUnits } from "../base/units.ts";
import type { Mark, Spot, TextMark } from "../drawing/mark.ts";
import { arcSweep, type Bounds, boundsOf } from "../drawing/measure.ts";

/** Side of the squares by which taken boxes are found again. */
const SQUARE: GridUnits = 4;
/** Slanting and round lines are taken as boxes of about this size along them. */
const PIECE: GridUnits = 0.4;

const NO_SQUARES = new Int32Array(0);

/** So many links a room has space for at first. */
const FIRST_LINKS = 1024;

function grown<Numbers extends Int32Array | Float64Array>(few: Numbers, many: Numbers): Numbers {
  many.set(few);
  return many;
}

/** Words keep this far from lines of symbols. */
export const FROM_SYMBOL: GridUnits = 0.18;
/** Other words keep this far from a word, above and below it, and on paper beside it. */
export const FROM_WORD: GridUnits = 0.15;
/** How far from its part a name, or a word beside it, stands at most where all is crowded. */
export const FARTHEST: GridUnits = 16;

/** What of a sheet is taken: boxes of words, pieces of lines. Words are set only where it is free. */
export class SheetRoom {
  private readonly within: Bounds;
  private readonly under: SheetRoom | null;
  private readonly columns: number;
  private readonly rows: number;
  /** The last link of each square, row by row; 0 where nothing lies in it. No squares until something is taken. */
  private last = NO_SQUARES;
  /** Squares in which something lies, one bit for each, so many words to a row: most that a box lies in are empty. */
  private occupied = NO_SQUARES;
  private readonly words: number;
  /** By link: the one before it in its square, and where its box begins in `boxes`; counted from 1. */
  private links = new Int32Array(2 * FIRST_LINKS);
  private linkCount = 1;
  /** Left, top, right and bottom of every box taken, one after the other. */
  private boxes = new Float64Array(FIRST_LINKS);
  private edgeCount = 0;
  /** The box round all that was asked for since it was last begun. */
  private readonly asked: { -readonly [edge in keyof Bounds]: GridUnits } = { ...NO_BOX };

  /** Nothing outside `within` is free, nor what is taken in the room under this one. */
  constructor(within: Bounds, under: SheetRoom | null = null) {
    this.within = within;
    this.under = under;
    this.columns = Math.max(1, Math.floor((within.right - within.left) / SQUARE) + 1);
    this.rows = Math.max(1, Math.floor((within.bottom - within.top) / SQUARE) + 1);
    this.words = ((this.columns - 1) >> 5) + 1;
  }

  /** The same room, to try something in: what is taken there is not taken here. */
  copy(): SheetRoom {
    return new SheetRoom(this.within, this);
  }

  /** Takes a box, grown on all sides by `margin`. */
  take(box: Bounds, margin: GridUnits = 0): void {
    this.takeBox(box.left - margin, box.top - margin, box.right + margin, box.bottom + margin);
  }

  /** Takes boxes given by their edges one after the other, each grown by `margin`. */
  takeAll(boxes: readonly GridUnits[], margin: GridUnits = 0): void {
    for (let i = 0; i < boxes.length; i += 4)
      this.takeBox(boxes[i]! - margin, boxes[i + 1]! - margin, boxes[i + 2]! + margin, boxes[i + 3]! + margin);
  }

  /** Takes a box that may be given back; comes back with its number. */
  lend({ left, top, right, bottom }: Bounds): number {
    const number = this.edgeCount;
    this.takeBox(left, top, right, bottom);
    return number;
  }

  /** Frees what was lent under a number. Its place in the squares stays, so a room is made anew once most is given back. */
  giveBack(number: number): void {
    this.boxes.fill(Number.NaN, number, number + 4);
  }

  private takeBox(left: GridUnits, top: GridUnits, right: GridUnits, bottom: GridUnits): void {
    const { within, columns, rows } = this;
    if (this.last === NO_SQUARES) {
      this.last = new Int32Array(columns * rows);
      this.occupied = new Int32Array(this.words * rows);
    }
    const { last } = this;
    const fromX = Math.max(0, Math.floor((left - within.left) / SQUARE));
    const fromY = Math.max(0, Math.floor((top - within.top) / SQUARE));
    const toX = Math.min(columns - 1, Math.floor((right - within.left) / SQUARE));
    const toY = Math.min(rows - 1, Math.floor((bottom - within.top) / SQUARE));
    const start = this.edgeCount;
    if (start + 4 > this.boxes.length) this.boxes = grown(this.boxes, new Float64Array(2 * this.boxes.length));
    this.boxes[start] = left;
    this.boxes[start + 1] = top;
    this.boxes[start + 2] = right;
    this.boxes[start + 3] = bottom;
    this.edgeCount += 4;
    for (let y = fromY; y <= toY; y++) {
      for (let x = fromX; x <= toX; x++) {
        const square = y * columns + x;
        const link = this.linkCount++;
        if (2 * link >= this.links.length) this.links = grown(this.links, new Int32Array(2 * this.links.length));
        this.links[2 * link] = last[square]!;
        this.links[2 * link + 1] = start;
        last[square] = link;
        this.occupied[y * this.words + (x >> 5)]! |= 1 << (x & 31);
      }
    }
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
  isFree({ left, top, right, bottom }: Bounds, margin: GridUnits = 0): boolean {
    return this.hasRoom(left - margin, top - margin, right + margin, bottom + margin);
  }

  /** The same for a box given by its edges. */
  hasRoom(left: GridUnits, top: GridUnits, right: GridUnits, bottom: GridUnits): boolean {
    const { within, asked } = this;
    if (left < asked.left) asked.left = left;
    if (top < asked.top) asked.top = top;
    if (right > asked.right) asked.right = right;
    if (bottom > asked.bottom) asked.bottom = bottom;
    if (left < within.left || top < within.top || right > within.right || bottom > within.bottom) return false;
    return !this.isTouched(left, top, right, bottom);
  }

  /** Begins to tell what is asked for and taken from here on; comes back with how much is taken already. */
  begin(): number {
    Object.assign(this.asked, NO_BOX);
    return this.edgeCount;
  }

  /** What is asked for depends on this box too. */
  ask({ left, top, right, bottom }: Bounds): void {
    const { asked } = this;
    if (left < asked.left) asked.left = left;
    if (top < asked.top) asked.top = top;
    if (right > asked.right) asked.right = right;
    if (bottom > asked.bottom) asked.bottom = bottom;
  }

  /** The box round all that was asked for since it was begun; one that nothing touches where nothing was. */
  seen(): Bounds {
    return { ...this.asked };
  }

  /** The edges of the boxes taken since so much was taken. */
  takenSince(count: number): readonly GridUnits[] {
    return Array.from(this.boxes.subarray(count, this.edgeCount));
  }

  /** Where this room differs from another one; null where they are not of one size. Rooms under them are not looked at. */
  differences(other: SheetRoom): Differences | null {
    const [one, two] = [this.within, other.within];
    const isAlike =
      one.left === two.left && one.top === two.top && one.right === two.right && one.bottom === two.bottom;
    if (!isAlike) return null;
    const differs = new Differences(one, this.columns, this.rows);
    for (let square = 0; square < this.columns * this.rows; square++) {
      if (!this.isSameSquare(other, square)) differs.markSquare(square);
    }
    return differs;
  }

  /** The same with the rooms under both of them. */
  allDifferences(other: SheetRoom): Differences | null {
    const differs = this.differences(other);
    if (this.under === null && other.under === null) return differs;
    const under = this.under && other.under && this.under.allDifferences(other.under);
    if (differs === null || under === null) return null;
    differs.add(under);
    return differs;
  }

  private isSameSquare(other: SheetRoom, square: number): boolean {
    let link = this.last[square] ?? 0;
    let theirs = other.last[square] ?? 0;
    while (link !== 0 && theirs !== 0) {
      const [box, their] = [this.links[2 * link + 1]!, other.links[2 * theirs + 1]!];
      for (let i = 0; i < 4; i++) if (this.boxes[box + i] !== other.boxes[their + i]) return false;
      link = this.links[2 * link]!;
      theirs = other.links[2 * theirs]!;
    }
    return link === theirs;
  }

  private isTouched(left: GridUnits, top: GridUnits, right: GridUnits, bottom: GridUnits): boolean {
    const { within, columns } = this;
    if (this.last === NO_SQUARES) return this.under?.isTouched(left, top, right, bottom) ?? false;
    const fromX = Math.floor((left - within.left) / SQUARE);
    const fromY = Math.floor((top - within.top) / SQUARE);
    const toX = Math.floor((right - within.left) / SQUARE);
    const toY = Math.floor((bottom - within.top) / SQUARE);
    // A square that the box covers is taken sooner than one at its edge.
    const middle = ((fromY + toY) >> 1) * columns + ((fromX + toX) >> 1);
    if (toX > fromX + 1 && toY > fromY + 1 && this.isTouchedIn(middle, left, top, right, bottom)) return true;
    for (let y = fromY; y <= toY; y++) {
      for (let word = fromX >> 5; word <= toX >> 5; word++) {
        let squares = this.occupied[y * this.words + word]!;
        if (word === fromX >> 5) squares &= -1 << (fromX & 31);
        if (word === toX >> 5) squares &= -1 >>> (31 - (toX & 31));
        while (squares !== 0) {
          const x = 32 * word + 31 - Math.clz32(squares & -squares);
          if (this.isTouchedIn(y * columns + x, left, top, right, bottom)) return true;
          squares &= squares - 1;
        }
      }
    }
    return this.under?.isTouched(left, top, right, bottom) ?? false;
  }

  private isTouchedIn(square: number, left: GridUnits, top: GridUnits, right: GridUnits, bottom: GridUnits): boolean {
    const { links, boxes } = this;
    for (let link = this.last[square]!; link !== 0; link = links[2 * link]!) {
      const box = links[2 * link + 1]!;
      // What was given back is no number, and so never less than anything.
      const isBeside = boxes[box]! >= right || left >= boxes[box + 2]!;
      if (!isBeside && boxes[box + 1]! < bottom && top < boxes[box + 3]!) return true;
    }
    return false;
  }
}

/** The squares of a room in which something differs from the same room another time. */
export class Differences {
  private readonly within: Bounds;
  private readonly columns: number;
  private readonly rows: number;
  private readonly squares: Uint8Array;

  /** None, in a room of so many squares. */
  constructor(within: Bounds, columns: number, rows: number) {
    this.within = within;
    this.columns = columns;
    this.rows = rows;
    this.squares = new Uint8Array(columns * rows);
  }

  /** The same, to go on with. */
  copy(): Differences {
    const copy = new Differences(this.within, this.columns, this.rows);
    copy.squares.set(this.squares);
    return copy;
  }

  markSquare(square: number): void {
    this.squares[square] = 1;
  }

  /** Marks what others have marked, of a room of as many squares. */
  add({ squares }: Differences): void {
    for (const [square, isMarked] of squares.entries()) if (isMarked === 1) this.squares[square] = 1;
  }

  /** Marks where boxes lie, given by their edges one after the other. */
  mark(boxes: readonly GridUnits[]): void {
    for (let i = 0; i < boxes.length; i += 4) {
      this.eachSquare(boxes[i]!, boxes[i + 1]!, boxes[i + 2]!, boxes[i + 3]!, (square) => {
        this.squares[square] = 1;
        return false;
      });
    }
  }

  /** True where something differs in a square that the box lies in. */
  touch({ left, top, right, bottom }: Bounds): boolean {
    return this.eachSquare(left, top, right, bottom, (square) => this.squares[square] === 1);
  }

  private eachSquare(
    left: GridUnits,
    top: GridUnits,
    right: GridUnits,
    bottom: GridUnits,
    act: (square: number) => boolean,
  ): boolean {
    const { within, columns, rows } = this;
    const fromX = Math.max(0, Math.floor((left - within.left) / SQUARE));
    const fromY = Math.max(0, Math.floor((top - within.top) / SQUARE));
    const toX = Math.min(columns - 1, Math.floor((right - within.left) / SQUARE));
    const toY = Math.min(rows - 1, Math.floor((bottom - within.top) / SQUARE));
    for (let y = fromY; y <= toY; y++) for (let x = fromX; x <= toX; x++) if (act(y * columns + x)) return true;
    return false;
  }
}

/** The box round nothing: round it and another one there is only that. */
export const NO_BOX: Bounds = {
  left: Number.POSITIVE_INFINITY,
  top: Number.POSITIVE_INFINITY,
  right: Number.NEGATIVE_INFINITY,
  bottom: Number.NEGATIVE_INFINITY,
};

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
