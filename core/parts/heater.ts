import type { Mark } from "../drawing/mark.ts";
import { box, line } from "../drawing/shapes.ts";
import { resistorBody } from "./bodies.ts";
import type { Kind, Look, PartView } from "./kind.ts";
import { addsOhms, innerVolts, opens, shorts } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, by } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

function ohmsOf(view: PartView): number {
  return view.number("volts") ** 2 / view.number("watts");
}

/** A heater: rear window, seat, mirror, glow plug. Its ohms are those of its rated watts, hot or cold. Work is watts. */
export const heater: Kind = {
  name: "heater",
  title: "Heater",
  words: ["rear window", "heated seat", "mirror", "glow plug", "element"],
  letter: "E",
  role: "load",
  settings: [
    amount("volts", "rated volts", "V", by(12, 24), [1, 60], "nominal volts of the vehicle"),
    amount("watts", "rated watts", "W", 120, [0.5, 3000], "from memory: a rear window takes 100 to 200 W"),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model: (view) => [
    {
      key: "element",
      a: view.terminals[0]!,
      b: view.terminals[1]!,
      law: { law: "resistor", ohms: ohmsOf(view) },
      passes: "load",
    },
  ],
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing(view, _state, sees) {
    const [volts, amps] = [sees.volts("element"), sees.amps("element")];
    const work = innerVolts(ohmsOf(view), volts, amps) * Math.abs(amps);
    return { doing: work > 0.02 * view.number("watts") ? "on" : "off", amps, watts: volts * amps, work };
  },
  faults: () => [
    opens("element", "element open", WEIGHTS.loadOpen),
    addsOhms("element", "poor, ohms added", WEIGHTS.contactPoor, [1, 0.3, 5]),
    shorts("element", "element shorted", WEIGHTS.loadShorted),
  ],
  symbol: (view, _pose, look) => twoEnded(view.terminals, heaterBody(look), [2, 6]),
  testPoints: loadTestPoints,
};

function heaterBody(look: Look): readonly Mark[] {
  if (look === "na") return [...resistorBody("na", 2, 2, 6), box("symbol-fine", 0.8, 1.6, 2.4, 4.8)];
  const bars = [2.8, 3.6, 4.4, 5.2].map((y) => line("symbol", 1.2, y, 2.8, y));
  return [box("symbol", 1.2, 2, 1.6, 4), ...bars];
}
