import type { WireId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import { colourList } from "../colourList.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { wireOf } from "../wireEnds.ts";

/**
 * Colours wires in the order given, typed one after another; one colour alone is for all of them, and where fewer are typed
 * the rest stay as they are. Refuses `wires-none`, `wire-unknown`, what `colourList` refuses, and `already-so`.
 */
export function recolourWires(bench: Bench, ids: readonly WireId[], typed: string): Outcome<Edit> {
  if (ids.length === 0) return refuse("wires-none");
  const read = colourList(bench.circuit, typed, ids.length);
  if (!read.ok) return read;
  const colours = read.value.length === 1 ? ids.map(() => read.value[0]) : read.value;
  const changes: Change[] = [];
  for (const [index, id] of ids.entries()) {
    const wire = wireOf(bench.circuit, id);
    if (!wire.ok) return wire;
    const colour = colours[index];
    if (colour === undefined || colour === wire.value.colour) continue;
    changes.push({ change: "item", list: "wires", id, field: "colour", value: colour });
  }
  if (changes.length === 0) return alreadySo(ids.join(", "));
  return editOf(bench, WIRING_NAMES.recolourWires(changes.length), changes);
}
