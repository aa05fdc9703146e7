import type { StateCount } from "../state/counts.ts";
import { LineSample } from "./LineSample.tsx";
import { StateGlyph } from "./StateGlyph.tsx";

/** Short words of the key; the full ones stand wherever there is room. */
const WORDS: Readonly<Record<StateCount["key"], string>> = {
  powered: "powered",
  "always-fed": "always fed",
  "powered-through-load": "powered through a load",
  grounded: "grounded",
  "grounded-through-load": "grounded through a load",
  between: "between",
  floating: "floating",
  clash: "clash",
  undecided: "undecided",
};

/** Glyph, line, count and word of one state. */
export function LegendKey({ count }: { readonly count: StateCount }) {
  return (
    <li className="legend-key">
      <StateGlyph state={count.state} alwaysFed={count.key === "always-fed"} size={16} />
      {count.key !== "always-fed" && <LineSample state={count.state} />}
      <b className="figures">{count.count}</b> {WORDS[count.key]}
    </li>
  );
}
