import { WIRE_STATES, type WireState } from "../../core/base/states.ts";
import { SHEET_WORDS, STATE_WORDS } from "../../core/base/words/sheet.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import { stateSample } from "../canvas/stateSample.ts";
import { build } from "./build.ts";
import type { Desk } from "./desk.ts";
import { svgElement } from "./drawing.ts";
import { onChange, type View } from "./view.ts";

/** The key to the drawing: glyph, line and word of every state, and of what is always fed. */
export function key(): View {
  const list = build("ul", { class: "key" });
  const paint = onChange((palette: Palette) => {
    const rows = [
      ...WIRE_STATES.map((state) => [sampleOf(state, palette, false), STATE_WORDS[state]] as const),
      [sampleOf("powered", palette, true), SHEET_WORDS.alwaysFed] as const,
    ];
    list.replaceChildren(...rows.map(([sample, words]) => build("li", {}, sample, words)));
  });
  const element = build(
    "section",
    { "aria-labelledby": "key" },
    build("h2", { id: "key" }, "What the signs say"),
    list,
    build("p", { class: "small" }, "Chevrons on a wire show current, from + to \u2212."),
  );
  return { element, show: ({ palette }: Desk) => paint(palette) };
}

function sampleOf(state: WireState, palette: Palette, alwaysFed: boolean): SVGSVGElement {
  const svg = svgElement(stateSample(state, palette, alwaysFed));
  svg.removeAttribute("role");
  svg.setAttribute("aria-hidden", "true");
  return svg;
}
