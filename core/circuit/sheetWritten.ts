import type { Bounds } from "../drawing/measure.ts";
import type { SheetRoom } from "./sheetRoom.ts";

/** More given back than this, and a room is made anew. */
const MOST_GIVEN_BACK = 4_000;

/**
 * A room with what is written on a page in one state over what is written in all. It is kept from one drawing to the
 * next: only what differs is taken out and put in.
 */
export class Written<A extends object> {
  private under: SheetRoom | null = null;
  private room: SheetRoom | null = null;
  private things: readonly A[] = [];
  private lent: (readonly number[])[] = [];
  private givenBack = 0;

  /** The room with the boxes of things over what is under it; a thing that is the same object has the same boxes. */
  with(under: SheetRoom, things: readonly A[], boxesOf: (thing: A) => readonly Bounds[]): SheetRoom {
    const isKept = under === this.under && things.length === this.things.length && this.givenBack <= MOST_GIVEN_BACK;
    if (!isKept || this.room === null) {
      this.room = under.copy();
      this.under = under;
      this.things = [];
      this.lent = [];
      this.givenBack = 0;
    }
    const { room, lent, things: before } = this;
    for (let i = 0; i < things.length; i++) {
      if (things[i] === before[i]) continue;
      const old = lent[i] ?? [];
      for (const number of old) room.giveBack(number);
      this.givenBack += old.length;
      lent[i] = boxesOf(things[i]!).map((box) => room.lend(box));
    }
    this.things = things;
    return room;
  }
}
