import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { colourOf } from "./wireLook.ts";

/** A place in a list of colours for a wire whose colour is not known. */
const UNKNOWN = "-";

/**
 * The colours of wires, typed one after another: `GY OG - BK`, a dash for one that is not known. Where there is a comma,
 * commas part them, since some sets have codes with a space. Comes back as long as it was typed. Refuses `colours-many` for more than there are wires, and what is no colour.
 */
export function colourList(
  circuit: Pick<Circuit, "colourCodes">,
  typed: string,
  wires: number,
): Outcome<readonly (string | undefined)[]> {
  const words = typed
    .split(/[,;]/.test(typed) ? /[,;]/ : /\s+/)
    .map((word) => word.trim())
    .filter((word) => word !== "");
  if (words.length > wires) return refuse("colours-many", { colours: words.length, wires });
  const colours: (string | undefined)[] = [];
  for (const word of words) {
    if (word === UNKNOWN) {
      colours.push(undefined);
      continue;
    }
    const colour = colourOf(circuit, word);
    if (!colour.ok) return colour;
    colours.push(colour.value);
  }
  return ok(colours);
}
