import type { Bounds } from "../drawing/measure.ts";
import { Altered } from "./sheetAltered.ts";
import { CurrentMemory } from "./sheetCurrent.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { TagMemory } from "./sheetTagMemory.ts";

/**
 * What is remembered of a page at one sight from one drawing to the next, so that a throw or an edit costs no more than
 * what it alters. The drawing is the same without.
 */
export class SheetMemory {
  tags = new TagMemory();
  current = new CurrentMemory();
  private room: SheetRoom | null = null;
  private codes: SheetSetup["circuit"]["colourCodes"] | null = null;
  private besides: readonly Bounds[] = [];

  /** Begins a drawing in the room of a layout; gives where that differs from the room of the drawing before. */
  begin({ area, circuit: { colourCodes } }: SheetSetup, room: SheetRoom): Altered {
    const isSameRoom = this.room === room;
    const differs = isSameRoom ? null : this.room && room.allDifferences(this.room);
    if ((!isSameRoom && differs === null) || this.codes !== colourCodes) {
      this.tags = new TagMemory();
      this.current = new CurrentMemory();
      this.besides = [];
    }
    this.room = room;
    this.codes = colourCodes;
    return new Altered(area.outer, differs);
  }

  /** Notes where what stands in the room beside the layout, in this state alone, is not what stood there before. */
  stand(besides: readonly Bounds[], altered: Altered): void {
    altered.noteDifference(this.besides, besides);
    this.besides = besides;
  }
}
