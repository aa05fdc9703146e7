import type { GridUnits } from "../base/units.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Differences, SheetRoom } from "./sheetRoom.ts";

/** One thing set in rooms: what it was made of, where it looked for room, what it took there, and what it is. */
export interface Step<V> {
  /** Its turn among the others. */
  readonly index: number;
  readonly made: readonly unknown[];
  readonly seen: readonly Bounds[];
  readonly taken: readonly (readonly GridUnits[])[];
  readonly value: V;
}

/** A room in which things are set, and where it differs from the same room when they were set last; null where nothing is known. */
export interface StepRoom {
  readonly room: SheetRoom;
  readonly differs: Differences | null;
}

/**
 * Things set one after the other, each where it finds room beside those before it. One that is made of the same as last
 * time, and whose surroundings do not differ from then, is what it was last time; all that is set otherwise is marked as
 * differing. So nothing is set otherwise than from nothing.
 */
export class Steps<V> {
  private readonly rooms: readonly StepRoom[];
  private readonly before: Map<string, Step<V>>;
  private readonly steps = new Map<string, Step<V>>();

  /** `keys` are all things to be set, in their order. */
  constructor(rooms: readonly StepRoom[], before: ReadonlyMap<string, Step<V>> | null, keys: readonly string[]) {
    const isKnown = before !== null && rooms.every(({ differs }) => differs !== null);
    this.rooms = rooms;
    this.before = new Map();
    if (!isKnown) return;
    let last = -1;
    for (const key of keys) {
      const step = before.get(key);
      if (step === undefined || step.index < last) continue;
      last = step.index;
      this.before.set(key, step);
    }
    for (const [key, step] of before) if (!this.before.has(key)) this.mark(step.taken);
  }

  /** What `make` sets, or the same as last time where it can come to nothing else; `made` is all that it is made of. */
  set(key: string, made: readonly unknown[], make: () => V): V {
    const index = this.steps.size;
    const before = this.before.get(key);
    if (before && isSame(before.made, made) && this.isStill(before)) {
      this.rooms.forEach(({ room }, i) => {
        room.takeAll(before.taken[i]!);
      });
      this.steps.set(key, before.index === index ? before : { ...before, index });
      return before.value;
    }
    const counts = this.rooms.map(({ room }) => room.begin());
    const value = make();
    const taken = this.rooms.map(({ room }, i) => room.takenSince(counts[i]!));
    const seen = this.rooms.map(({ room }) => room.seen());
    this.steps.set(key, { index, made, seen, taken, value });
    if (!before || taken.some((boxes, i) => !isSame(boxes, before.taken[i]!))) {
      if (before) this.mark(before.taken);
      this.mark(taken);
    }
    return value;
  }

  /** All that was set, for the next time. */
  done(): ReadonlyMap<string, Step<V>> {
    return this.steps;
  }

  private isStill({ seen }: Step<V>): boolean {
    return this.rooms.every(({ differs }, i) => differs !== null && !differs.touch(seen[i]!));
  }

  private mark(taken: Step<V>["taken"]): void {
    this.rooms.forEach(({ differs }, i) => {
      differs?.mark(taken[i]!);
    });
  }
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((each, i) => each === other[i]);
}
