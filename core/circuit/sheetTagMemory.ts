import { remember } from "../base/memo.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import { type Bounds, boundsOf } from "../drawing/measure.ts";
import type { Altered } from "./sheetAltered.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { type Wish, wishesOf } from "./sheetTagForms.ts";
import { BESIDE_MARK, type Settled, settle, settledAlike } from "./sheetTagSearch.ts";
import type { SheetWire } from "./sheetWire.ts";

/** How the tags of a wire were last settled, and its turn among the others. */
interface Turn {
  readonly index: number;
  readonly settled: readonly Settled[];
}

/**
 * How the tags of one page at one sight were last settled, by the corners of their wires. A throw or an edit alters
 * little: a tag stays where it was as long as it asks for the same sizes and nothing near the places that it asked about
 * has come or gone.
 */
export class TagMemory {
  private last: ReadonlyMap<readonly Spot[], Turn> = new Map();
  private readonly wishes = new WeakMap<SheetWire, readonly Wish[]>();

  /** Settles what is to be said of the wires of the layout, in their order, and notes where that alters anything. */
  settleAll(setup: SheetSetup, wires: readonly SheetWire[], room: SheetRoom, altered: Altered): readonly Settled[] {
    const last = this.inTurn(wires, altered);
    const now = new Map<readonly Spot[], Turn>();
    const inks: (readonly [before: readonly Settled[], after: readonly Settled[]])[] = [];
    for (const [index, wire] of wires.entries()) {
      const before = last.get(wire.corners)?.settled ?? [];
      const settled = this.settleWire(setup, wire, before, room, altered);
      now.set(wire.corners, { index, settled });
      if (settled !== before) inks.push([before, settled]);
    }
    // Ink of tags is in nobody's way here; it is for what comes after them.
    for (const [before, after] of inks) altered.noteDifference(before.flatMap(inksOf), after.flatMap(inksOf));
    this.last = now;
    return [...now.values()].flatMap(({ settled }) => settled);
  }

  /** What is remembered of the wires that still follow one another; that all others are gone is noted. */
  private inTurn(wires: readonly SheetWire[], altered: Altered): ReadonlyMap<readonly Spot[], Turn> {
    const kept = new Map<readonly Spot[], Turn>();
    let turn = -1;
    for (const { corners } of wires) {
      const before = this.last.get(corners);
      if (before === undefined || before.index < turn) continue;
      turn = before.index;
      kept.set(corners, before);
    }
    for (const [corners, { settled }] of this.last) {
      if (kept.has(corners)) continue;
      altered.note(takenBy(settled));
      altered.note(settled.flatMap(inksOf));
    }
    return kept;
  }

  private settleWire(
    setup: SheetSetup,
    wire: SheetWire,
    last: readonly Settled[],
    room: SheetRoom,
    altered: Altered,
  ): readonly Settled[] {
    // Where all words have to find room they stand as close as on paper; smaller, none moves when a reading changes.
    const takes = setup.sight.hasCodes ? "marks" : "blocks";
    const now = this.wishesOf(setup, wire).map((wish, place) => {
      const known = last[place];
      const same = known !== undefined && !altered.isNear(known.reach) ? settledAlike(known, wish, takes) : null;
      if (same === null) return settle(wish, room, takes);
      for (const box of same.taken) room.take(box, BESIDE_MARK);
      return same;
    });
    const isSame = now.length === last.length && now.every(({ marks }, place) => marks === last[place]!.marks);
    if (isSame) return last;
    if (now.some(({ taken }, place) => taken !== last[place]?.taken) || now.length < last.length) {
      altered.noteDifference(takenBy(last), takenBy(now));
    }
    return now;
  }

  private wishesOf(setup: SheetSetup, wire: SheetWire): readonly Wish[] {
    const known = this.wishes.get(wire);
    if (known !== undefined) return known;
    const wishes = wishesOf(setup, wire);
    this.wishes.set(wire, wishes);
    return wishes;
  }
}

function takenBy(settled: readonly Settled[]): readonly Bounds[] {
  return settled.flatMap(({ taken }) => taken);
}

const inksOfMarks = remember((marks: readonly Mark[]) => marks.map(boundsOf));

/** The boxes of the marks of a tag. */
export function inksOf({ marks }: Pick<Settled, "marks">): readonly Bounds[] {
  return inksOfMarks(marks);
}
