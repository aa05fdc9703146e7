import { box, circle, line, text } from "../drawing/shapes.ts";
import { BLOWER_RESISTORS } from "../trade/motors.ts";
import { resistorBody } from "./bodies.ts";
import { doesNothing, type Kind, type ModelElement, type SymbolShape } from "./kind.ts";
import { opens } from "./loadFaults.ts";
import { loadTestPoints } from "./outline.ts";
import { amount } from "./settings.ts";
import { bodyBox } from "./switchSymbol.ts";
import { WEIGHTS } from "./weights.ts";

/** Ohms from each tap to the next; the sheet gives them from each tap to the motor. */
const STEPS = BLOWER_RESISTORS.ohms.map((ohms, tap) => ohms - (BLOWER_RESISTORS.ohms[tap + 1] ?? 0));
const SHEET = BLOWER_RESISTORS.source.document;
/** Ohms of a thermal link that has not melted (a guess). */
const LINK_OHMS = 0.005;

/**
 * The resistors that slow a blower: a chain from tap 1 by taps 2 and 3 to 4, the motor's line. Through the whole of it
 * tap 1 has 2.50 ohm in series, tap 2 0.75 and tap 3 0.25. A thermal link lies before 4, so that the top speed still
 * runs when it has melted.
 */
export const resistorPack: Kind = {
  name: "resistor-pack",
  title: "Resistor pack",
  words: ["blower resistor", "blower speed", "taps", "thermal link"],
  letter: "R",
  role: "load",
  settings: [
    amount("ohms1", "ohms from 1 to 2", "ohm", STEPS[0]!, [0.01, 100], SHEET),
    amount("ohms2", "ohms from 2 to 3", "ohm", STEPS[1]!, [0.01, 100], SHEET),
    amount("ohms3", "ohms from 3 to 4", "ohm", STEPS[2]!, [0.01, 100], SHEET),
  ],
  terminals: () => ["1", "2", "3", "4"],
  controls: () => [],
  model(view) {
    const [one, two, three, four] = view.terminals;
    const step = (number: 1 | 2 | 3, a: string, b: string): ModelElement => {
      const ohms = view.number(`ohms${number}`);
      return { key: `step-${number}`, a, b, law: { law: "resistor", ohms }, passes: "load" };
    };
    return [
      step(1, one!, two!),
      step(2, two!, three!),
      step(3, three!, "~link"),
      { key: "link", a: "~link", b: four!, law: { law: "resistor", ohms: LINK_OHMS }, passes: "conductor" },
    ];
  },
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: (view) => [
    opens("link", "thermal link melted, top speed only", WEIGHTS.loadOpen, "link-melted"),
    ...[1, 2, 3].map((number) =>
      opens(
        `step-${number}`,
        `burnt open from ${view.terminals[number - 1]} to ${view.terminals[number]}`,
        WEIGHTS.loadOpen / 3,
        `open-step-${number}`,
      ),
    ),
  ],
  symbol(view, _pose, look): SymbolShape {
    const [one = "1", two = "2", three = "3", four = "4"] = view.terminals;
    const label = (name: string, x: number, y: number) => text(name, x, y, { role: "text-quiet" });
    return {
      width: 5,
      height: 14,
      terminals: {
        [one]: { x: 3, y: 0, side: "up" },
        [two]: { x: 0, y: 4, side: "left" },
        [three]: { x: 0, y: 7, side: "left" },
        [four]: { x: 3, y: 14, side: "down" },
      },
      marks: [
        bodyBox(5, 14),
        line("symbol", 3, 0, 3, 1.6),
        ...resistorBody(look, 3, 1.6, 3.5, 1),
        line("symbol", 3, 3.5, 3, 4.5),
        ...resistorBody(look, 3, 4.5, 6.5, 1),
        line("symbol", 3, 6.5, 3, 7.5),
        ...resistorBody(look, 3, 7.5, 9.5, 1),
        line("symbol", 3, 9.5, 3, 14),
        box("symbol", 2.5, 10.4, 1, 1.8),
        line("symbol", 0, 4, 3, 4),
        line("symbol", 0, 7, 3, 7),
        circle("joint", 3, 4, 0.32, true),
        circle("joint", 3, 7, 0.32, true),
        label(one, 3.45, 1.2),
        label(two, 0.4, 3.6),
        label(three, 0.4, 6.6),
        label(four, 3.45, 13.4),
      ],
      nameAt: { x: 5.6, y: 6.6, anchor: "start" },
    };
  },
  testPoints: loadTestPoints,
};
