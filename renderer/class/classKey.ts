import { WIRE_STATES, type WireState } from "../../core/base/states.ts";
import { PAPER_WORDS } from "../../core/base/words/paper.ts";
import { SHEET_WORDS } from "../../core/base/words/sheet.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import type { Live } from "../../core/live/live.ts";
import { stateSample } from "../canvas/stateSample.ts";
import { wiresByPage } from "../state/places.ts";
import type { Ids } from "./focus.ts";

/** A state of the key, with a sample of its line as SVG. */
export interface ClassKey {
  readonly words: string;
  readonly sample: string;
}

/** The states of the wires of a page that are drawn in full, in the order of the key, and what is always fed. */
export function keyOf(
  circuit: Circuit,
  page: string,
  live: Live,
  focus: Ids | null,
  palette: Palette,
): readonly ClassKey[] {
  const ids = (wiresByPage(circuit).get(page) ?? []).filter((id) => focus?.has(id) ?? true);
  const wires = ids.flatMap((id) => live.wires.get(id) ?? []);
  const states = new Set<WireState>(wires.flatMap(({ state }) => state));
  const keys = WIRE_STATES.filter((state) => states.has(state)).map((state): ClassKey => {
    return { words: PAPER_WORDS.legend[state], sample: stateSample(state, palette, false) };
  });
  if (!wires.some(({ alwaysFed }) => alwaysFed)) return keys;
  return [...keys, { words: SHEET_WORDS.alwaysFed, sample: stateSample("powered", palette, true) }];
}
