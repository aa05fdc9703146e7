import { circle, line } from "../drawing/shapes.ts";
import type { Kind, PartView, Sees } from "./kind.ts";
import { filamentLight, opens, shorts } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, by } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

function filament(view: PartView, sees: Sees) {
  const [volts, amps] = [sees.volts("filament"), sees.amps("filament")];
  const ratedVolts = view.number("volts");
  return {
    volts,
    amps,
    light: filamentLight(volts, amps, { volts: ratedVolts, amps: view.number("watts") / ratedVolts }),
  };
}

/** A lamp with one filament. */
export const lamp: Kind = {
  name: "lamp",
  title: "Lamp",
  words: ["bulb", "light"],
  letter: "E",
  role: "load",
  shines: true,
  settings: [
    amount("volts", "rated volts", "V", by(12, 24), [1, 60], "nominal volts of the vehicle"),
    amount("watts", "rated watts", "W", 21, [0.1, 250], "UN R37, category P21W, rated watts"),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model: (view) => [
    {
      key: "filament",
      a: view.terminals[0]!,
      b: view.terminals[1]!,
      law: { law: "lamp", ratedVolts: view.number("volts"), ratedAmps: view.number("watts") / view.number("volts") },
      passes: "load",
    },
  ],
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing(view, _state, sees) {
    const { volts, amps, light } = filament(view, sees);
    const doing = light > 0.7 ? "on" : light > 0.02 ? "dim" : "off";
    return { doing, amps, watts: volts * amps, work: light };
  },
  faults: () => [
    opens("filament", "burnt out", WEIGHTS.lampBurnt, "burnt-out"),
    shorts("filament", "shorted inside", WEIGHTS.loadShorted),
  ],
  symbol(view, _pose, look) {
    const inside =
      look === "iec"
        ? [line("symbol", 0.6, 2.6, 3.4, 5.4), line("symbol", 3.4, 2.6, 0.6, 5.4)]
        : [line("symbol", 2, 2, 2, 3.2, 1.3, 3.9, 1.6, 4.6, 2.4, 4.6, 2.7, 3.9, 2, 4.8, 2, 6)];
    return twoEnded(view.terminals, [circle("symbol", 2, 4, 2), ...inside], [2, 6]);
  },
  testPoints: loadTestPoints,
};
