import type { Bounds } from "../drawing/measure.ts";
import { Altered } from "./sheetAltered.ts";
import { CurrentMemory } from "./sheetCurrent.ts";
import { SymbolMemory } from "./sheetLeads.ts";
import { RayMemory } from "./sheetRays.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import { type SheetSetup, StoodMemory } from "./sheetSetup.ts";
import { TagMemory } from "./sheetTagMemory.ts";
import type { Settled } from "./sheetTagSearch.ts";
import { LayingMemory } from "./sheetWireLaying.ts";
import { LineMemory } from "./sheetWireMarks.ts";
import { Written } from "./sheetWritten.ts";

/** What of a page is drawn round what is near it, and so is kept only as far as that is as it was. */
class PlacedMemory {
  readonly tags = new TagMemory();
  readonly current = new CurrentMemory();
  readonly rays = new RayMemory();
  besides: readonly Bounds[] = [];
}

/**
 * What is remembered of a page at one sight from one drawing to the next, so that a throw or an edit costs no more than
 * what it alters. The drawing is the same without.
 */
export class SheetMemory {
  readonly stood = new StoodMemory();
  readonly laying = new LayingMemory();
  readonly symbols = new SymbolMemory();
  readonly lines = new LineMemory();
  readonly written = new Written<readonly Settled[]>();
  private placed = new PlacedMemory();
  private room: SheetRoom | null = null;
  private codes: SheetSetup["circuit"]["colourCodes"] | null = null;

  get tags(): TagMemory {
    return this.placed.tags;
  }

  get current(): CurrentMemory {
    return this.placed.current;
  }

  get rays(): RayMemory {
    return this.placed.rays;
  }

  /** Begins a drawing in the room of a layout; gives where that differs from the room of the drawing before. */
  begin({ area, circuit: { colourCodes } }: SheetSetup, room: SheetRoom): Altered {
    const isSameRoom = this.room === room;
    const differs = isSameRoom ? null : this.room && room.allDifferences(this.room);
    if ((!isSameRoom && differs === null) || this.codes !== colourCodes) this.placed = new PlacedMemory();
    this.room = room;
    this.codes = colourCodes;
    return new Altered(area.outer, differs);
  }

  /** Notes where what stands in the room beside the layout, in this state alone, is not what stood there before. */
  stand(besides: readonly Bounds[], altered: Altered): void {
    altered.noteDifference(this.placed.besides, besides);
    this.placed.besides = besides;
  }
}
