import type { Circuit } from "../../core/circuit/circuit.ts";
import { COLOUR_CODES, parseColour } from "../../core/trade/colours.ts";

/** An insulation colour in words, "orange with red"; empty where the code names none. */
export function colourWords(code: string, set: Circuit["colourCodes"]): string {
  if (set === "free") return code;
  const colour = parseColour(code, set);
  if (!colour.ok) return "";
  const { base, stripes } = colour.value;
  return [base.name, ...stripes.map(({ name }) => name)].join(" with ");
}

/**
 * Codes that a typed text may be meant to become, by their letters or by the colour's word, with what they mean: `g` may be
 * green or grey, and `RD/y` red with yellow. None where the circuit's codes are free.
 */
export function colourOffers(typed: string, set: Circuit["colourCodes"]): readonly { text: string; words: string }[] {
  if (set === "free") return [];
  const cut = typed.lastIndexOf("/") + 1;
  const [head, piece] = [typed.slice(0, cut).trim(), typed.slice(cut).trim().toLowerCase()];
  if (head === "" && piece === "") return [];
  return COLOUR_CODES[set]
    .filter(({ code, colour }) => code.toLowerCase().startsWith(piece) || colour.startsWith(piece))
    .flatMap(({ code }) => {
      const text = `${head}${code}`;
      const words = colourWords(text, set);
      return words === "" ? [] : [{ text, words }];
    });
}

/** What a typed text is taken for: the one colour that it may become, where it is none itself. */
export function colourMeant(typed: string, set: Circuit["colourCodes"]): string {
  const [only, ...others] = colourOffers(typed, set);
  return only && others.length === 0 && colourWords(typed, set) === "" ? only.text : typed;
}
