import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Metres, SquareMillimetres } from "../base/units.ts";
import type { Circuit, Wire } from "../circuit/circuit.ts";
import { colourText, parseColour } from "../trade/colours.ts";
import { wireLimitRefusal } from "./wireAmount.ts";

/** Most characters of a colour, as a circuit file takes it. */
const MOST_COLOUR = 40;

/** What a wire that is drawn may be given along: its insulation colour as typed, its size and its length. */
export interface WireLook {
  readonly colour?: string;
  readonly mm2?: SquareMillimetres;
  readonly metres?: Metres;
}

/** A colour that was typed, as the circuit's code set writes it. Refuses `colour-long` and what is no colour of the set. */
export function colourOf({ colourCodes }: Pick<Circuit, "colourCodes">, text: string): Outcome<string> {
  if (text.length > MOST_COLOUR) return refuse("colour-long", { most: MOST_COLOUR });
  if (colourCodes === "free") return ok(text);
  const colour = parseColour(text, colourCodes);
  return colour.ok ? colourText(colour.value, colourCodes) : colour;
}

/** The fields of a wire that has this look; an empty colour is none. Refuses a wrong colour and `amount-limits`. */
export function lookOf(
  circuit: Circuit,
  { colour, mm2, metres }: WireLook,
): Outcome<Pick<Wire, "colour" | "mm2" | "metres">> {
  const typed = colour?.trim() ?? "";
  const read = typed === "" ? ok("") : colourOf(circuit, typed);
  if (!read.ok) return read;
  const wrong: Refusal | null =
    (mm2 === undefined ? null : wireLimitRefusal("mm2", mm2)) ??
    (metres === undefined ? null : wireLimitRefusal("metres", metres));
  if (wrong) return { ok: false, refusal: wrong };
  return ok({
    ...(read.value !== "" && { colour: read.value }),
    ...(mm2 !== undefined && { mm2 }),
    ...(metres !== undefined && { metres }),
  });
}
