import { remember } from "../base/memo.ts";
import type { Mark } from "../drawing/mark.ts";
import { type Bounds, boundsOf } from "../drawing/measure.ts";
import type { Altered } from "./sheetAltered.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { type Wish, wishesOf } from "./sheetTagForms.ts";
import { BESIDE_MARK, type Settled, settle, settledAlike } from "./sheetTagSearch.ts";
import type { SheetWire } from "./sheetWire.ts";

/**
 * How the tags of one layout were last settled. A throw alters a few states: a tag stays where it was as long as it asks
 * for the same sizes and nothing near the places that it asked about has come or gone.
 */
export class TagMemory {
  private last: readonly (readonly Settled[])[] = [];
  private readonly wishes = new WeakMap<SheetWire, readonly Wish[]>();

  /** Settles what is to be said of the wires of the layout, in their order, and notes where that alters anything. */
  settleAll(setup: SheetSetup, wires: readonly SheetWire[], room: SheetRoom, altered: Altered): readonly Settled[] {
    const { last } = this;
    const settled = wires.map((wire, index) => this.settleWire(setup, wire, last[index] ?? [], room, altered));
    // Ink of tags is in nobody's way here; it is for what comes after them.
    for (const [index, now] of settled.entries()) {
      const before = last[index] ?? [];
      if (now !== before) altered.noteDifference(before.flatMap(inksOf), now.flatMap(inksOf));
    }
    this.last = settled;
    return settled.flat();
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
