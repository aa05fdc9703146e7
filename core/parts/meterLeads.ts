import { circle, line, text } from "../drawing/shapes.ts";
import { METER } from "../trade/instruments.ts";
import { doesNothing, type Kind } from "./kind.ts";
import { opens } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/**
 * A voltmeter left on the drawing by its leads. Its 10 Mohm load the circuit as the real one does; being far above
 * 100 kohm it changes no wire's state.
 */
export const meterLeads: Kind = {
  name: "meter-leads",
  title: "Voltmeter",
  words: ["meter", "multimeter", "volts", "leads"],
  letter: "P",
  role: "join",
  settings: [amount("ohms", "input ohms", "ohm", METER.ohms, [1e6, 1e9], METER.source.document)],
  terminals: () => ["red", "black"],
  controls: () => [],
  model: (view) => [
    {
      key: "meter",
      a: view.terminals[0]!,
      b: view.terminals[1]!,
      law: { law: "resistor", ohms: view.number("ohms") },
      passes: "load",
    },
  ],
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: () => [opens("meter", "lead broken", WEIGHTS.wireOpen)],
  symbol: (view) =>
    twoEnded(
      view.terminals,
      [
        circle("symbol", 2, 4, 2),
        text("V", 2, 4.6, { points: 12, weight: 600, anchor: "middle" }),
        line("symbol-fine", 0.4, 1, 1.2, 1),
        line("symbol-fine", 0.8, 0.6, 0.8, 1.4),
        line("symbol-fine", 0.4, 7, 1.2, 7),
      ],
      [2, 6],
    ),
  testPoints: loadTestPoints,
};
