import { resistorBody } from "./bodies.ts";
import { doesNothing, type Kind } from "./kind.ts";
import { addsOhms, opens } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** A fixed resistor. It serves other parts and does no work of its own. */
export const resistor: Kind = {
  name: "resistor",
  title: "Resistor",
  words: ["ballast", "series resistor", "ohms"],
  letter: "R",
  role: "load",
  settings: [amount("ohms", "resistance", "ohm", 100, [0.001, 1e7], "no default is usual; a round number")],
  terminals: () => ["1", "2"],
  controls: () => [],
  model: (view) => [
    {
      key: "resistor",
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
  faults: (view) => [
    opens("resistor", "burnt open", WEIGHTS.loadOpen),
    addsOhms("resistor", "drifted high", WEIGHTS.motorWorn / 3, [view.number("ohms")], "drifted"),
  ],
  symbol: (view, _pose, look) => twoEnded(view.terminals, resistorBody(look, 2, 2, 6), [2, 6]),
  testPoints: loadTestPoints,
};
