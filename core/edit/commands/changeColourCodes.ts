import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Circuit, Wire } from "../../circuit/circuit.ts";
import { COLOUR_SETS, colourText, parseColour } from "../../trade/colours.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

type Codes = Circuit["colourCodes"];

/**
 * Writes the circuit in another colour code set: every wire whose colour both sets know is written anew, the others stay as
 * they are for a person to look at. Refuses `colour-set` and `already-so`.
 */
export function changeColourCodes(bench: Bench, codes: Codes): Outcome<Edit> {
  const { colourCodes: was, wires } = bench.circuit;
  const known: readonly string[] = [...COLOUR_SETS, "free"];
  if (!known.includes(codes)) return refuse("colour-set", { codes, known: known.join(", ") });
  if (was === codes) return alreadySo(codes);
  const changes = wires.flatMap(({ id, colour, seen }: Wire): readonly Change[] => {
    const value = colour === undefined ? undefined : written(colour, was, codes);
    const sight = seen?.colour === undefined ? undefined : written(seen.colour, was, codes);
    const item = { change: "item", list: "wires", id } as const;
    return [
      ...(value === undefined || value === colour ? [] : [{ ...item, field: "colour", value } as const]),
      ...(sight === undefined || sight === seen?.colour
        ? []
        : [{ ...item, field: "seen", value: { ...seen, colour: sight } } as const]),
    ];
  });
  return editOf(bench, WIRING_NAMES.changeColourCodes(codes), [
    { change: "circuit", field: "colourCodes", value: codes },
    ...changes,
  ]);
}

/** A colour as another set writes it; undefined where one of the sets does not know it. */
function written(colour: string, was: Codes, codes: Codes): string | undefined {
  if (codes === "free") return colour;
  const read = parseColour(colour, was === "free" ? codes : was);
  const text = read.ok ? colourText(read.value, codes) : read;
  return text.ok ? text.value : undefined;
}
