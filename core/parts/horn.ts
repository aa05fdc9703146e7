import type { Mark } from "../drawing/mark.ts";
import { box, solid } from "../drawing/shapes.ts";
import type { Kind, Look } from "./kind.ts";
import { addsOhms, innerVolts, opens, shorts } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, by } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** Share of rated volts below which a horn or buzzer is silent (a guess). */
const SILENT_BELOW = 0.15;

/** A horn or buzzer, by the amps it takes on average while it sounds. Work is volts. */
export const horn: Kind = {
  name: "horn",
  title: "Horn",
  words: ["buzzer", "alarm", "sounder"],
  letter: "H",
  role: "load",
  settings: [
    amount("volts", "rated volts", "V", by(12, 24), [1, 60], "nominal volts of the vehicle"),
    amount("amps", "amps at rated volts", "A", by(5, 2.5), [0.005, 60], "common practice, no source"),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model: (view) => [
    {
      key: "coil",
      a: view.terminals[0]!,
      b: view.terminals[1]!,
      law: { law: "resistor", ohms: view.number("volts") / view.number("amps") },
      passes: "load",
      copper: true,
    },
  ],
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing(view, _state, sees) {
    const [volts, amps] = [sees.volts("coil"), sees.amps("coil")];
    const work = innerVolts(view.number("volts") / view.number("amps"), volts, amps);
    return { doing: work > SILENT_BELOW * view.number("volts") ? "on" : "off", amps, watts: volts * amps, work };
  },
  faults: () => [
    opens("coil", "coil or its contact open", WEIGHTS.loadOpen),
    addsOhms("coil", "contact burnt, ohms added", WEIGHTS.contactPoor, [5, 2, 20]),
    shorts("coil", "coil shorted", WEIGHTS.loadShorted),
  ],
  symbol(view, _pose, look) {
    const shape = twoEnded(view.terminals, hornBody(look), [2.9, 5.1]);
    return { ...shape, width: 5, nameAt: { x: 5.2, y: 3.6, anchor: "start" } };
  },
  testPoints: loadTestPoints,
};

function hornBody(look: Look): readonly Mark[] {
  const flare = [2.8, 3.3, 4.2, 2, 4.2, 6, 2.8, 4.7];
  const mouth: Mark =
    look === "na" ? solid("symbol", ...flare) : ({ ...solid("symbol", ...flare), filled: false } as Mark);
  return [box("symbol", 1.2, 2.9, 1.6, 2.2), mouth];
}
