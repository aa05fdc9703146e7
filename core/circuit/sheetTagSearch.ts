import type { GridUnits } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { type Bounds, boundsOf } from "../drawing/measure.ts";
import type { Side } from "../parts/kind.ts";
import type { Block } from "./sheetBlocks.ts";
import { NO_BOX, type SheetRoom } from "./sheetRoom.ts";
import type { Wish } from "./sheetTagForms.ts";
import { leftBeside, someTagPlace, tagPieces, topBeside } from "./sheetTagPlaces.ts";

/** What of a wish a form says. */
type Saying = "whole" | "volts" | "colour" | "name";

/** A form as it is made for one side of a wire; the side tells whether the wire is level. */
interface FormAtSide {
  readonly saying: Saying;
  readonly form: number;
  readonly side: Side;
}

/** A form that room was asked for, and its size. */
interface Tried extends FormAtSide, Pick<Block, "width" | "height"> {}

/** A form that found its place. */
interface Placed extends FormAtSide {
  readonly left: GridUnits;
  readonly top: GridUnits;
}

/** What a tag takes of the room: its marks, or its whole blocks, whose size no reading changes. */
type Takes = "marks" | "blocks";

/** What came of a wish, and all that this rests on. */
export interface Settled {
  readonly wish: Wish;
  readonly marks: readonly Mark[];
  /** What it took of the room. */
  readonly taken: readonly Bounds[];
  readonly hasVolts: boolean;
  readonly hasColour: boolean;
  /** How much of it found no place. */
  readonly missing: number;
  readonly tried: readonly Tried[];
  readonly placed: readonly Placed[];
  /** The box round every place that was asked about. */
  readonly reach: Bounds;
}

/**
 * From the middle of a wire to its tag, and free room around it and beyond it on the far side: less than the last, and
 * the tag could be taken for the next wire's.
 */
const MARGINS = [
  { off: 0.8, round: roomRound(0.5, 1.4) },
  { off: 0.6, round: roomRound(0.2, 0.4) },
] as const;

/** Room on each side of a tag, by the side of the wire that it lies on. */
function roomRound(around: GridUnits, beyond: GridUnits): Readonly<Record<Side, Bounds>> {
  return {
    left: { left: beyond, top: around, right: 0, bottom: around },
    right: { left: 0, top: around, right: beyond, bottom: around },
    up: { left: around, top: beyond, right: around, bottom: 0 },
    down: { left: around, top: 0, right: around, bottom: beyond },
  };
}

/** What a tag takes of the room, it takes with so much around it. */
export const BESIDE_MARK: GridUnits = 0.1;

/** Sets a wish all in one place where that is free, else volts, colour and name each where there is room for it. */
export function settle(wish: Wish, room: SheetRoom, takes: Takes): Settled {
  const search = new Search(wish, room, takes);
  const isWhole = search.set("whole");
  const isTried = (saying: Saying) => wish[saying] === wish.whole;
  const isSet = (saying: Saying) => isWhole || wish[saying].length === 0 || (!isTried(saying) && search.set(saying));
  const [hasVolts, hasColour, hasName] = [isSet("volts"), isSet("colour"), isSet("name")];
  const missing = [hasVolts, hasColour, hasName].filter((has) => !has).length;
  return { wish, hasVolts, hasColour, missing, ...search.outcome() };
}

/** The same outcome for another wish in the same room, where nothing that it rests on is of another size; else null. */
export function settledAlike(last: Settled, wish: Wish, takes: Takes): Settled | null {
  if (last.wish === wish) return last;
  const before = placedBefore.get(wish);
  if (before?.placed === last.placed) return before;
  const isStretch =
    last.wish.wire.corners === wish.wire.corners && last.wish.from === wish.from && last.wish.to === wish.to;
  const isSaid = SAYINGS.every((saying) => last.wish[saying].length === wish[saying].length);
  if (!isStretch || !isSaid) return null;
  const blocks = new Blocks(wish);
  const isSize = last.tried.every((tried) => {
    const { width, height } = blocks.at(tried);
    return width === tried.width && height === tried.height;
  });
  if (!isSize) return null;
  const marks = last.placed.flatMap((placed) => blocks.at(placed).draw(placed.left, placed.top));
  const settled = { ...last, wish, marks, taken: takes === "blocks" ? last.taken : marks.map(boundsOf) };
  placedBefore.set(wish, settled);
  return settled;
}

/** Wishes that were settled like another one: a switch goes to and fro. */
const placedBefore = new WeakMap<Wish, Settled>();

const SAYINGS: readonly Saying[] = ["whole", "volts", "colour", "name"];

/** The blocks of a wish, each made once. */
class Blocks {
  private readonly made = new Map<string, Block>();
  private readonly wish: Wish;

  constructor(wish: Wish) {
    this.wish = wish;
  }

  at({ saying, form, side }: FormAtSide): Block {
    const key = `${saying} ${form} ${side}`;
    const known = this.made.get(key);
    if (known !== undefined) return known;
    const block = this.wish[saying][form]!({ side, isLevel: side === "up" || side === "down" });
    this.made.set(key, block);
    return block;
  }
}

class Search {
  private readonly marks: Mark[] = [];
  private readonly taken: Bounds[] = [];
  private readonly tried: Tried[] = [];
  private readonly placed: Placed[] = [];
  private readonly wish: Wish;
  private readonly room: SheetRoom;
  private readonly takes: Takes;
  private readonly pieces: ReturnType<typeof tagPieces>;
  private readonly reach: { -readonly [edge in keyof Bounds]: GridUnits } = { ...NO_BOX };

  constructor(wish: Wish, room: SheetRoom, takes: Takes) {
    this.wish = wish;
    this.room = room;
    this.takes = takes;
    this.pieces = tagPieces(wish.wire.corners, wish.from, wish.to);
  }

  outcome(): Pick<Settled, "marks" | "taken" | "tried" | "placed" | "reach"> {
    const { marks, taken, tried, placed } = this;
    return { marks, taken, tried, placed, reach: this.reach };
  }

  /** The first form at the first place that is free for it, taken in the room; false where there is none. */
  set(saying: Saying): boolean {
    return this.wish[saying].some((_, form) => this.setForm(saying, form));
  }

  private setForm(saying: Saying, form: number): boolean {
    const blocks = new Map<Side, Block>();
    const blockAt = (side: Side): Block => {
      const known = blocks.get(side);
      if (known !== undefined) return known;
      const block = this.wish[saying][form]!({ side, isLevel: side === "up" || side === "down" });
      blocks.set(side, block);
      this.tried.push({ saying, form, side, width: block.width, height: block.height });
      return block;
    };
    return MARGINS.some(({ off, round }) =>
      someTagPlace(this.pieces, (side, x, y) => {
        const block = blockAt(side);
        const left = leftBeside(side, x, block.width, off);
        const top = topBeside(side, y, block.height, off);
        if (!this.isFree(left, top, block, round[side])) return false;
        this.placed.push({ saying, form, side, left, top });
        this.take(block, { left, top, right: left + block.width, bottom: top + block.height });
        return true;
      }),
    );
  }

  private isFree(left: GridUnits, top: GridUnits, { width, height }: Block, round: Bounds): boolean {
    const [right, bottom] = [left + width + round.right, top + height + round.bottom];
    const [far, high] = [left - round.left, top - round.top];
    const { reach } = this;
    if (far < reach.left) reach.left = far;
    if (high < reach.top) reach.top = high;
    if (right > reach.right) reach.right = right;
    if (bottom > reach.bottom) reach.bottom = bottom;
    return this.room.hasRoom(far, high, right, bottom);
  }

  private take(block: Block, box: Bounds): void {
    const marks = block.draw(box.left, box.top);
    this.marks.push(...marks);
    for (const taken of this.takes === "blocks" ? [box] : marks.map(boundsOf)) {
      this.room.take(taken, BESIDE_MARK);
      this.taken.push(taken);
    }
  }
}
