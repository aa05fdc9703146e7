import type { Mark } from "../drawing/mark.ts";
import { arc, filledBox, line, text } from "../drawing/shapes.ts";
import { doesNothing, type Kind, type Look, type PartView } from "./kind.ts";
import { amount } from "./settings.ts";

/** The number of a place: what is left of `1a` and `1b`. */
function placesOf(view: PartView): readonly string[] {
  return [...new Set(view.terminals.map((terminal) => terminal.replace(/[ab]$/, "")))];
}

function pitch(view: PartView): number {
  return Math.max(4, Math.round(view.number("pitch")));
}

/**
 * An in-line joint: in every place a pin of half a meets one of half b. The places are cavities, `X30-1`, and their
 * faults are those of cavities; the joint has none of its own.
 */
export const connector: Kind = {
  name: "connector",
  title: "In-line connector",
  words: ["joint", "plug", "coupler", "harness connector"],
  letter: "X",
  role: "join",
  settings: [
    amount("ways", "places", "", 2, [1, 120], "common practice, no source"),
    amount("contactOhms", "ohms of a pin", "ohm", 0.003, [0.0001, 10], "from memory"),
    amount("pitch", "wires apart on the sheet, grid units", "", 4, [4, 60], "the drawing alone"),
  ],
  terminals: (_part, settings) =>
    Array.from({ length: Math.max(1, Math.round(Number(settings.ways))) }, (_, index) => [
      `${index + 1}a`,
      `${index + 1}b`,
    ]).flat(),
  controls: () => [],
  model: (view) =>
    placesOf(view)
      .filter((place) => view.terminals.includes(`${place}a`) && view.terminals.includes(`${place}b`))
      .map((place) => ({
        key: place,
        a: `${place}a`,
        b: `${place}b`,
        law: { law: "resistor", ohms: view.number("contactOhms") },
        passes: "conductor",
      })),
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: () => [],
  symbol(view, _pose, look) {
    const places = placesOf(view);
    const xs = places.map((_place, index) => 2 + index * pitch(view));
    const width = xs.at(-1)! + 2;
    const at = (terminal: string) => xs[places.indexOf(terminal.replace(/[ab]$/, ""))]!;
    return {
      width,
      height: 4,
      terminals: Object.fromEntries(
        view.terminals.map((terminal) => {
          const isUpper = !terminal.endsWith("b");
          return [
            terminal,
            { x: at(terminal), y: isUpper ? 0 : 4, side: isUpper ? ("up" as const) : ("down" as const) },
          ];
        }),
      ),
      marks: [
        filledBox("body", 0, 1, width, 2, 0.5),
        line("link", 0, 2, width, 2),
        ...xs.flatMap((x, index) => [
          ...pinMarks(x, look),
          text(places[index]!, x + 0.8, 2.78, { role: "text-quiet", points: 7 }),
        ]),
      ],
      nameAt: { x: width + 0.5, y: 2.4, anchor: "start" },
    };
  },
  testPoints: (view) => view.terminals.map((terminal) => ({ terminal, touches: "wire side" })),
};

/** IEC: a filled pin in the arc of its socket; North America: one chevron in the other. */
function pinMarks(x: number, look: Look): readonly Mark[] {
  if (look === "iec") {
    const pin: Mark = filledBox("solid", x - 0.2, 1.75, 0.4, 1.25);
    return [line("symbol", x, 0, x, 1.3), arc("symbol", x, 1.9, 0.6, 180, 360), pin, line("symbol", x, 3, x, 4)];
  }
  return [
    line("symbol", x, 0, x, 1.9),
    line("symbol", x - 0.6, 1.3, x, 1.9, x + 0.6, 1.3),
    line("symbol", x - 0.6, 1.9, x, 2.5, x + 0.6, 1.9),
    line("symbol", x, 2.5, x, 4),
  ];
}
