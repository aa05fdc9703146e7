import type { Wire } from "./circuit.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { type Wish, wishesOf } from "./sheetTagForms.ts";
import { marksOf, type TagsSettled } from "./sheetTagMemory.ts";
import { type Settled, settle } from "./sheetTagSearch.ts";
import type { SheetWire } from "./sheetWire.ts";

/**
 * Tags beside the wires of a printed sheet: state glyph and volts, insulation colour with size, name. They keep off wires,
 * symbols and each other; where room is short the name goes first, then the colour, volts last.
 */
export function settleOnPaper(setup: SheetSetup, wires: readonly SheetWire[], room: SheetRoom): TagsSettled {
  const wishes = wires.flatMap((wire) => wishesOf(setup, wire));
  const settled = settleInRounds(wishes, room, setup.sight.tagRounds);
  return { settled: [settled], marks: marksOf(settled) };
}

/** The wires whose colour found no place. */
export function withoutColour({ settled }: TagsSettled): readonly Wire[] {
  return settled.flat().flatMap(({ hasColour, wish }) => (hasColour ? [] : [wish.wire.wire]));
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
