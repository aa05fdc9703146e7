import type { WireState } from "../base/states.ts";
import type { GridUnits, Volts } from "../base/units.ts";
import { SHEET_WORDS } from "../base/words/sheet.ts";
import { parseColour } from "../trade/colours.ts";
import type { Wire } from "./circuit.ts";
import { type Block, glyphBlock, padded, row, stack, swatchBlock, wordBlock } from "./sheetBlocks.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import type { TagPlace } from "./sheetTagPlaces.ts";
import { LEAST_VOLTS, voltsText } from "./sheetVolts.ts";
import type { SheetWire } from "./sheetWire.ts";

/** A way to set something beside a wire, given the side and whether the wire is level there. */
export type Form = (place: Pick<TagPlace, "isLevel" | "side">) => Block;

/** A stretch of a wire and what is to be said of it; each list goes from the fullest form to the least. */
export interface Wish {
  readonly wire: SheetWire;
  readonly from: GridUnits;
  readonly to: GridUnits;
  /** State and volts at one of its ends; most wanted. */
  readonly volts: readonly Form[];
  readonly colour: readonly Form[];
  readonly name: readonly Form[];
  /** All of it in one place. */
  readonly whole: readonly Form[];
}

const BETWEEN: GridUnits = 0.7;

/** What is to be said of a wire: once, or for each half of one that is open in its middle. */
export function wishesOf(setup: SheetSetup, wire: SheetWire): readonly Wish[] {
  const { live, flow, from, to, cut } = wire;
  const colour = colourForms(setup, wire);
  const name = setup.sight.hasCodes ? [() => wordBlock(wire.wire.id, setup.types.wire, wire.wire.id)] : [];
  const wish = (volts: readonly Form[], start: GridUnits, end: GridUnits): Wish => {
    return { wire, from: start, to: end, volts, colour, name, whole: wholeForms(volts, colour, name) };
  };
  if (live === null) return [wish([], from, to)];
  const at = (end: 0 | 1) => voltsForms(setup, wire, live.state[end], live.volts[end]);
  if (cut === null) return [wish(at(flow < 0 ? 1 : 0), from, to)];
  const second = at(1);
  return [wish(at(0), from, cut), { wire, from: cut, to, volts: second, colour: [], name: [], whole: second }];
}

/** The volts where there is nothing else; in one line along a level wire and stacked beside an upright one, the other way about, and as narrow as can be. */
function wholeForms(volts: readonly Form[], colour: readonly Form[], name: readonly Form[]): readonly Form[] {
  if (colour.length === 0 && name.length === 0) return volts;
  const all = (forms: readonly (Form | undefined)[], place: Pick<TagPlace, "isLevel" | "side">) =>
    forms.flatMap((form) => (form === undefined ? [] : [form(place)]));
  const inLine: Form = (place) => row(all([name[0], colour[0], volts[0]], place), BETWEEN);
  const stacked = (voltsForm: Form | undefined, colourForm: Form | undefined): Form => {
    return (place) => stack(all([voltsForm, colourForm, name[0]], place), place.side === "left" ? "right" : "left");
  };
  return [
    (place) => (place.isLevel ? inLine : stacked(volts[0], colour[0]))(place),
    (place) => (place.isLevel ? stacked(volts[0], colour[0]) : inLine)(place),
    stacked(narrower(volts, 1), narrower(colour, 1)),
    stacked(narrower(volts, 1), narrower(colour, 2)),
  ];
}

/** A narrower form; the only one where there is no choice. */
function narrower(forms: readonly Form[], step: 1 | 2): Form | undefined {
  return forms.length === 1 ? forms[0] : forms[step];
}

/**
 * Glyph and volts to the battery's negative post: in one line, one below the other in three figures, the glyph alone.
 * Their room does not depend on the reading, so that tags stay in place when a switch is thrown. Of a grounded wire at
 * 0.00 V the glyph says it all.
 */
function voltsForms(
  { types, sight }: SheetSetup,
  wire: SheetWire,
  state: WireState,
  volts: Volts | null,
): readonly Form[] {
  const id = wire.wire.id;
  const glyph = glyphBlock(state, wire.live?.alwaysFed ?? false, sight.glyphGrowth, id);
  if (!sight.hasWords) return [() => glyph];
  const isNothing = volts === null || (state.startsWith("grounded") && Math.abs(volts) < LEAST_VOLTS);
  const word = (decimals: 1 | 2) => (isNothing ? [] : [wordBlock(voltsText(volts, decimals), types.volts, id)]);
  const weak = wire.live?.weak ? [wordBlock(SHEET_WORDS.weak, types.wire, id)] : [];
  const inLine = row(
    [glyph, ...word(sight.hasLabels || Math.abs(volts ?? 0) < 9.95 ? 2 : 1), ...weak],
    sight.besideGlyph,
  );
  const upright = stack([glyph, ...word(Math.abs(volts ?? 0) < 9.95 ? 2 : 1), ...weak], "middle");
  const full = row([glyph, wordBlock(voltsText(88.88, 2), types.volts)], sight.besideGlyph);
  const narrow = stack([glyph, wordBlock(voltsText(88.8, 1), types.volts)], "middle");
  const tightly: Form = ({ side, isLevel }) => padded(inLine, full, isLevel || side === "right" ? "left" : "right");
  return [tightly, () => padded(upright, narrow, "middle"), () => glyph];
}

/** The sample of a wire's insulation; none where its colour is not known in the circuit's codes. */
export function swatchOf({ circuit, sight }: SheetSetup, { id, colour }: Wire): readonly Block[] {
  if (colour === undefined || circuit.colourCodes === "free") return [];
  const read = parseColour(colour, circuit.colourCodes);
  return read.ok ? [swatchBlock(read.value, sight.swatchGrowth, id)] : [];
}

/** Swatch, code and size: in one line, below each other, without the size, and the code alone. */
function colourForms(setup: SheetSetup, { wire }: SheetWire): readonly Form[] {
  const { types, sight } = setup;
  if (!sight.hasWords || !sight.hasLabels || (wire.colour === undefined && wire.mm2 === undefined)) return [];
  const swatch = swatchOf(setup, wire);
  if (!sight.hasCodes) return swatch.map((each) => () => each);
  const code = wire.colour === undefined ? [] : [wordBlock(wire.colour, types.code, wire.id)];
  const size = wire.mm2 === undefined ? [] : [wordBlock(`${wire.mm2}`, types.wire, wire.id)];
  const forms = [
    row([...swatch, row([...code, ...size], 0.4)], 0.4),
    stack([...swatch, ...code, ...size], "middle"),
    ...(code.length > 0 ? [stack([...swatch, ...code], "middle"), ...code] : []),
  ];
  return forms.map((form) => () => form);
}
