import { WIRE_STATES, type WireState } from "../../core/base/states.ts";
import { SHEET_WORDS, STATE_WORDS } from "../../core/base/words/sheet.ts";
import { glyphMarks } from "../../core/drawing/glyph.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { build } from "./build.ts";
import type { Desk } from "./desk.ts";
import { svgElement } from "./drawing.ts";
import { onChange, type View } from "./view.ts";

/** Sizes of a sample in millimetres: the glyph, then a short piece of wire. */
const HEIGHT = 4.2;
const LINE = { from: 5.2, to: 15.2 } as const;

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
  const [middle, height] = [gridUnitsOf(HEIGHT / 2), gridUnitsOf(HEIGHT)];
  const spot = (x: number) => ({ x: gridUnitsOf(x), y: middle });
  const marks: readonly Mark[] = [
    ...glyphMarks(state, { x: middle, y: alwaysFed ? gridUnitsOf(HEIGHT / 2 - 0.4) : middle }, { alwaysFed }),
    { mark: "line", spots: [spot(LINE.from), spot(LINE.to)], role: `wire-${state}` },
  ];
  const svg = svgElement(svgOf({ width: gridUnitsOf(LINE.to), height, marks }, { palette, inPage: true }));
  svg.removeAttribute("role");
  svg.setAttribute("aria-hidden", "true");
  return svg;
}
