import type { GridUnits } from "../base/units.ts";
import type { Bounds } from "../drawing/measure.ts";
import { type Differences, overlaps, SheetRoom } from "./sheetRoom.ts";

/** Margin of what is noted: more than anything is taken or asked for with. */
const NEAR: GridUnits = 0.5;
/** So many boxes are looked through one by one; of more, those near are found by their squares. */
const FEW = 24;

/** Where something came or went since the last time a page was drawn; what is clear of all that is as it was. */
export class Altered {
  private readonly boxes: Bounds[] = [];
  private readonly room: SheetRoom;
  private readonly differs: Differences | null;

  /** Of what lies beyond `within` nothing is known. `differs` is where the layout is another one. */
  constructor(within: Bounds, differs: Differences | null = null) {
    this.room = new SheetRoom(within);
    this.differs = differs;
  }

  note(boxes: readonly Bounds[]): void {
    for (const { left, top, right, bottom } of boxes) {
      const noted = { left: left - NEAR, top: top - NEAR, right: right + NEAR, bottom: bottom + NEAR };
      this.boxes.push(noted);
      this.room.take(noted);
    }
  }

  /** True where all is as it was. */
  get isNothing(): boolean {
    return this.differs === null && this.boxes.length === 0;
  }

  /** Notes what is among these boxes and not among those, and the other way about. */
  noteDifference(these: readonly Bounds[], those: readonly Bounds[]): void {
    if (these.length === those.length && these.every((box, i) => isSameBox(box, those[i]!))) return;
    const [one, other] = [keyed(these), keyed(those)];
    this.note([...one].flatMap(([key, box]) => (other.has(key) ? [] : [box])));
    this.note([...other].flatMap(([key, box]) => (one.has(key) ? [] : [box])));
  }

  isNear(box: Bounds): boolean {
    if (this.differs?.touch(box)) return true;
    if (this.boxes.length > FEW) return !this.room.isFree(box);
    return this.boxes.some((noted) => overlaps(noted, box));
  }
}

function isSameBox(one: Bounds, other: Bounds): boolean {
  const isUpright = one.top === other.top && one.bottom === other.bottom;
  return one === other || (isUpright && one.left === other.left && one.right === other.right);
}

function keyed(boxes: readonly Bounds[]): ReadonlyMap<string, Bounds> {
  return new Map(boxes.map((box) => [`${box.left} ${box.top} ${box.right} ${box.bottom}`, box]));
}
