import type { Mark } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Wire } from "./circuit.ts";
import type { Altered } from "./sheetAltered.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { type Wish, wishesOf } from "./sheetTagForms.ts";
import { inksOf, type TagMemory } from "./sheetTagMemory.ts";
import { type Settled, settle } from "./sheetTagSearch.ts";
import type { SheetWire } from "./sheetWire.ts";

/** Tags that found their place, and the wires whose colour found none. */
export interface Tags {
  readonly marks: readonly Mark[];
  /** The boxes of the marks. */
  readonly inks: readonly Bounds[];
  readonly withoutColour: readonly Wire[];
}

/**
 * Tags beside the wires: state glyph and volts, insulation colour with size, name. They keep off wires, symbols and
 * each other; where room is short the name goes first, then the colour, volts last. On a screen only those are sought a
 * place anew that what is altered comes near; with or without a memory the outcome is the same.
 */
export function tagMarks(
  setup: SheetSetup,
  wires: readonly SheetWire[],
  room: SheetRoom,
  { memory, altered }: { readonly memory: TagMemory; readonly altered: Altered },
): Tags {
  const settled = setup.sight.isScreen
    ? memory.settleAll(setup, wires, room.copy(), altered)
    : settleInRounds(
        wires.flatMap((wire) => wishesOf(setup, wire)),
        room,
        setup.sight.tagRounds,
      );
  return {
    marks: settled.flatMap(({ marks }) => marks),
    inks: settled.flatMap(inksOf),
    withoutColour: settled.filter(({ hasColour }) => !hasColour).map(({ wish }) => wish.wire.wire),
  };
}

/** Settles wishes again and again, those first that found no place for their volts the last time, and gives the best. */
function settleInRounds(wishes: readonly Wish[], room: SheetRoom, rounds: number): readonly Settled[] {
  let order = wishes.map((_, index) => index);
  let best: { readonly settled: readonly Settled[]; readonly without: number; readonly missing: number } | null = null;
  for (let round = 0; round < rounds; round++) {
    const tried = room.copy();
    const settled = order.map((index) => settle(wishes[index]!, tried, "marks"));
    const without = order.filter((_, place) => !settled[place]!.hasVolts);
    const missing = settled.reduce((sum, each) => sum + each.missing, 0);
    const gained = (best?.without ?? Number.POSITIVE_INFINITY) - without.length;
    if (best === null || gained > 0 || (gained === 0 && missing < best.missing)) {
      best = { settled, without: without.length, missing };
    }
    if (without.length === 0) break;
    order = [...without, ...order.filter((index) => !without.includes(index))];
  }
  return best?.settled ?? [];
}
