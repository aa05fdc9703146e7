import { PAPER_WORDS } from "../../core/base/words/paper.ts";
import { SHEET_WORDS } from "../../core/base/words/sheet.ts";
import type { StateCount } from "../state/counts.ts";
import { LineSample } from "./LineSample.tsx";
import { StateGlyph } from "./StateGlyph.tsx";

/** Short words of the key; the full ones stand wherever there is room. */
const WORDS: Readonly<Record<StateCount["key"], string>> = {
  ...PAPER_WORDS.legend,
  "always-fed": SHEET_WORDS.alwaysFed,
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
