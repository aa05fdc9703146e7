import type { GridUnits } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { type Bounds, boundsOf } from "../drawing/measure.ts";
import type { Side } from "../parts/kind.ts";
import type { Wire } from "./circuit.ts";
import type { Block } from "./sheetBlocks.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { type Form, type Wish, wishesOf } from "./sheetTagForms.ts";
import { tagPieces, tagPlaces } from "./sheetTagPlaces.ts";
import type { SheetWire } from "./sheetWire.ts";

/** Tags that found their place, and the wires whose colour found none. */
export interface Tags {
  readonly marks: readonly Mark[];
  readonly withoutColour: readonly Wire[];
}

interface Tagged extends Tags {
  /** Numbers of the wishes whose volts found no place, and how much else was left out. */
  readonly withoutVolts: readonly number[];
  readonly missing: number;
}

/**
 * Tags beside the wires: state glyph and volts, insulation colour with size, name. They keep off wires, symbols and
 * each other; where room is short the name goes first, then the colour, volts last.
 */
export function tagMarks(setup: SheetSetup, wires: readonly SheetWire[], room: SheetRoom): Tags {
  const wishes = wires.flatMap((wire) => wishesOf(setup, wire));
  let order = wishes.map((_, index) => index);
  let best: Tagged = { marks: [], withoutColour: [], withoutVolts: order, missing: Number.POSITIVE_INFINITY };
  for (let round = 0; round < setup.sight.tagRounds; round++) {
    const tagged = setAll(wishes, order, room.copy());
    const gained = best.withoutVolts.length - tagged.withoutVolts.length;
    if (gained > 0 || (gained === 0 && tagged.missing < best.missing)) best = tagged;
    if (tagged.withoutVolts.length === 0) break;
    order = [...tagged.withoutVolts, ...order.filter((index) => !tagged.withoutVolts.includes(index))];
  }
  return best;
}

function setAll(wishes: readonly Wish[], order: readonly number[], room: SheetRoom): Tagged {
  const marks: Mark[] = [];
  const withoutVolts: number[] = [];
  const withoutColour = new Set<Wish>();
  let missing = 0;
  for (const index of order) {
    const wish = wishes[index]!;
    const set = setWish(wish, room);
    if (!set.hasColour) withoutColour.add(wish);
    marks.push(...set.marks);
    missing += set.missing;
    if (!set.hasVolts) withoutVolts.push(index);
  }
  const bare = wishes.flatMap((wish) => (withoutColour.has(wish) ? [wish.wire.wire] : []));
  return { marks, withoutColour: bare, withoutVolts, missing };
}

/** All in one place where that is free, else volts, colour and name each where there is room for it. */
function setWish(wish: Wish, room: SheetRoom) {
  const together = setForms(wish, wish.whole, room);
  if (together !== null) return { marks: together, hasVolts: true, hasColour: true, missing: 0 };
  const [volts, colour, name] = [wish.volts, wish.colour, wish.name].map((forms) =>
    forms.length === 0 ? [] : setForms(wish, forms, room),
  );
  return {
    marks: [...(volts ?? []), ...(colour ?? []), ...(name ?? [])],
    hasVolts: volts !== null,
    hasColour: colour !== null,
    missing: [volts, colour, name].filter((marks) => marks === null).length,
  };
}

/**
 * From the middle of a wire to its tag, and free room around it and beyond it on the far side: less than the last, and
 * the tag could be taken for the next wire's.
 */
const MARGINS = [
  { off: 0.8, around: 0.5, beyond: 1.4 },
  { off: 0.6, around: 0.2, beyond: 0.4 },
] as const;

/** The first form at the first place that is free for it, taken in the room; null where there is none. */
function setForms({ wire, from, to }: Wish, forms: readonly Form[], room: SheetRoom): readonly Mark[] | null {
  const pieces = tagPieces(wire.corners, from, to);
  for (const form of forms) {
    const blockAt = eachSide(form);
    for (const margin of MARGINS) {
      for (const place of tagPlaces(pieces, margin.off)) {
        const block = blockAt(place);
        const { left, top } = place.at(block);
        const box: Bounds = { left, top, right: left + block.width, bottom: top + block.height };
        if (!room.isFree(withMargin(box, place.side, margin))) continue;
        const marks = block.draw(left, top);
        for (const mark of marks) room.take(boundsOf(mark), 0.1);
        return marks;
      }
    }
  }
  return null;
}

/** A form that is made once for each side of a wire; the side tells whether the wire is level. */
function eachSide(form: Form): Form {
  const blocks = new Map<Side, Block>();
  return (place) => {
    const known = blocks.get(place.side);
    if (known !== undefined) return known;
    const block = form(place);
    blocks.set(place.side, block);
    return block;
  };
}

const OPPOSITE: Readonly<Record<Side, Side>> = { left: "right", right: "left", up: "down", down: "up" };

function withMargin(box: Bounds, side: Side, { around, beyond }: { around: GridUnits; beyond: GridUnits }): Bounds {
  const far = (towards: Side) => (side === towards ? beyond : side === OPPOSITE[towards] ? 0 : around);
  return {
    left: box.left - far("left"),
    top: box.top - far("up"),
    right: box.right + far("right"),
    bottom: box.bottom + far("down"),
  };
}
