import type { Circuit } from "../../core/circuit/circuit.ts";
import { parseColour } from "../../core/trade/colours.ts";

/** An insulation colour in words, "orange with red"; empty where the code names none. */
export function colourWords(code: string, set: Circuit["colourCodes"]): string {
  if (set === "free") return code;
  const colour = parseColour(code, set);
  if (!colour.ok) return "";
  const { base, stripes } = colour.value;
  return [base.name, ...stripes.map(({ name }) => name)].join(" with ");
}
