import { remember } from "../base/memo.ts";
import type { Mark } from "../drawing/mark.ts";
import { type Bounds, boundsOf } from "../drawing/measure.ts";
import type { Altered } from "./sheetAltered.ts";
import { ListsAgain } from "./sheetLists.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { type Wish, wishesOf } from "./sheetTagForms.ts";
import { BESIDE_MARK, type Settled, settle, settledAlike } from "./sheetTagSearch.ts";
import { placesAmong, type SheetWire } from "./sheetWire.ts";

/** How the tags of one wire were settled. */
type Tags = readonly Settled[];

const NONE: Tags = [];

/** Tags that found their place. */
export interface TagsSettled {
  /** On a screen a list for each wire; on paper one of all. */
  readonly settled: readonly Tags[];
  readonly marks: readonly Mark[];
}

/**
 * How the tags of one page at one sight were last settled, by the corners of their wires. A throw or an edit alters
 * little: a tag stays where it was as long as it asks for the same sizes and nothing near the places that it asked about
 * has come or gone.
 */
export class TagMemory {
  private wires: readonly SheetWire[] = [];
  private tags: readonly Tags[] = [];
  private readonly marks = new ListsAgain<Tags, Mark>();
  private readonly wishes = new WeakMap<SheetWire, readonly Wish[]>();

  /** Settles what is to be said of the wires of the layout, in their order, in this room, and notes where that alters anything. */
  settleAll(setup: SheetSetup, wires: readonly SheetWire[], room: SheetRoom, altered: Altered): TagsSettled {
    const places = this.inTurn(wires, altered);
    const taken = new TakenInTurn(room);
    const replaced: (readonly [before: Tags, after: Tags])[] = [];
    const now = wires.map((wire, index): Tags => {
      const place = places[index]!;
      const before = this.tags[place] ?? NONE;
      const isStill = wire === this.wires[place] && !isAnyNear(before, altered);
      const settled = isStill ? before : this.settleWire(setup, wire, before, taken, altered);
      taken.add(settled);
      if (settled !== before) replaced.push([before, settled]);
      return settled;
    });
    // Ink of tags is in nobody's way here; it is for what comes after them.
    for (const [before, after] of replaced) altered.noteDifference(inksOf(before), inksOf(after));
    this.wires = wires;
    this.tags = now;
    return { settled: now, marks: this.marks.join(now, marksOf) };
  }

  /** The place of each wire among those remembered that still follow one another, -1 for none; that all others are gone is noted. */
  private inTurn(wires: readonly SheetWire[], altered: Altered): readonly number[] {
    const known = placesAmong(this.wires, wires);
    let turn = -1;
    const places = known.map((place) => {
      if (place <= turn) return -1;
      turn = place;
      return place;
    });
    if (places.length === this.tags.length && places.every((place, index) => place === index)) return places;
    const kept = new Set(places);
    for (const [index, gone] of this.tags.entries()) {
      if (kept.has(index)) continue;
      altered.note(takenBy(gone));
      altered.note(inksOf(gone));
    }
    return places;
  }

  private settleWire(setup: SheetSetup, wire: SheetWire, last: Tags, before: TakenInTurn, altered: Altered): Tags {
    // Where all words have to find room they stand as close as on paper; smaller, none moves when a reading changes.
    const takes = setup.sight.hasCodes ? "marks" : "blocks";
    const wishes = this.wishesOf(setup, wire);
    const alike = wishes.map((wish, place) => {
      const known = last[place];
      return known !== undefined && !altered.isNear(known.reach) ? settledAlike(known, wish, takes) : null;
    });
    const now = alike.every((each) => each !== null) ? alike : settleAmong(before, wishes, alike, takes);
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

/** Settles the wishes of a wire one after the other, but for those whose outcome is known. */
function settleAmong(
  before: TakenInTurn,
  wishes: readonly Wish[],
  known: readonly (Settled | null)[],
  takes: Parameters<typeof settle>[2],
): Tags {
  const room = before.inRoom();
  return wishes.map((wish, place) => {
    const same = known[place];
    if (!same) return settle(wish, room, takes);
    for (const box of same.taken) room.take(box, BESIDE_MARK);
    return same;
  });
}

/** What tags have taken, wire by wire; it is put into the room only where a place is sought there. */
class TakenInTurn {
  private readonly room: SheetRoom;
  private waiting: Tags[] = [];
  /** The next wire's tags were settled in the room and so are in it. */
  private isIn = false;

  constructor(room: SheetRoom) {
    this.room = room;
  }

  /** The room with all that was added, in which the tags of the next wire are then settled. */
  inRoom(): SheetRoom {
    for (const tags of this.waiting) for (const box of takenBy(tags)) this.room.take(box, BESIDE_MARK);
    this.waiting = [];
    this.isIn = true;
    return this.room;
  }

  add(tags: Tags): void {
    if (!this.isIn) this.waiting.push(tags);
    this.isIn = false;
  }
}

function isAnyNear(tags: Tags, altered: Altered): boolean {
  return !altered.isNothing && tags.some(({ reach }) => altered.isNear(reach));
}

function takenBy(tags: Tags): readonly Bounds[] {
  return tags.flatMap(({ taken }) => taken);
}

/** The boxes of the marks of tags. */
export const inksOf = remember((tags: Tags): readonly Bounds[] => marksOf(tags).map(boundsOf));

/** The marks of tags. */
export const marksOf = remember((tags: Tags): readonly Mark[] => tags.flatMap(({ marks }) => marks));
