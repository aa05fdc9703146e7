import type { Mark } from "../drawing/mark.ts";
import { box, circle, line, text } from "../drawing/shapes.ts";
import { lampCategory } from "../trade/lamps.ts";
import type { Kind, ModelElement, PartView, Sees } from "./kind.ts";
import { filamentLight, opens, SHORTED_OHMS, shorts } from "./loadFaults.ts";
import { loadTestPoints } from "./outline.ts";
import { amount, by } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

const P21_5W = { 12: lampCategory("P21/5W", 12)!, 24: lampCategory("P21/5W", 24)! };
const SHEET = P21_5W[12].source.document;
const FILAMENTS = ["main", "second"] as const;

/** A figure of the P21/5W sheets, for 12 V and 24 V vehicles. */
function rated(filament: 0 | 1, figure: "ratedWatts" | "lumens") {
  return by(P21_5W[12].filaments[filament]![figure]!, P21_5W[24].filaments[filament]![figure]!);
}

function filament(view: PartView, sees: Sees, key: (typeof FILAMENTS)[number]) {
  const [volts, amps] = [sees.volts(key), sees.amps(key)];
  const ratedVolts = view.number("volts");
  const share = filamentLight(volts, amps, { volts: ratedVolts, amps: view.number(`${key}Watts`) / ratedVolts });
  return { amps, watts: volts * amps, share, lumens: share * view.number(`${key}Lumens`) };
}

/** A lamp with two filaments on one common terminal: tail and brake, or main and dipped beam. Work is lumens of both. */
export const twoFilamentLamp: Kind = {
  name: "two-filament-lamp",
  title: "Two-filament lamp",
  words: ["bulb", "tail and brake lamp", "headlamp", "dual filament"],
  letter: "E",
  role: "load",
  shines: true,
  settings: [
    amount("volts", "rated volts", "V", by(12, 24), [1, 60], "nominal volts of the vehicle"),
    amount("mainWatts", "rated watts of the main filament", "W", rated(0, "ratedWatts"), [0.1, 250], SHEET),
    amount("secondWatts", "rated watts of the second filament", "W", rated(1, "ratedWatts"), [0.1, 250], SHEET),
    amount("mainLumens", "lumens of the main filament", "", rated(0, "lumens"), [1, 10000], SHEET),
    amount("secondLumens", "lumens of the second filament", "", rated(1, "lumens"), [1, 10000], SHEET),
  ],
  terminals: () => ["1", "2", "3"],
  controls: () => [],
  model(view) {
    const [common, main, second] = view.terminals;
    const ratedVolts = view.number("volts");
    const lay = (key: (typeof FILAMENTS)[number], a: string): ModelElement => {
      const ratedAmps = view.number(`${key}Watts`) / ratedVolts;
      return { key, a, b: common!, law: { law: "lamp", ratedVolts, ratedAmps }, passes: "load" };
    };
    return [lay("main", main!), lay("second", second!)];
  },
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing(view, _state, sees) {
    const [main, second] = [filament(view, sees, "main"), filament(view, sees, "second")];
    const brighter = Math.max(main.share, second.share);
    return {
      doing: brighter > 0.7 ? "on" : brighter > 0.02 ? "dim" : "off",
      amps: main.amps + second.amps,
      watts: main.watts + second.watts,
      work: main.lumens + second.lumens,
    };
  },
  faults: (view) => [
    opens("main", "main filament burnt out", WEIGHTS.lampBurnt / 2, "burnt-out-main"),
    opens("second", "second filament burnt out", WEIGHTS.lampBurnt / 2, "burnt-out-second"),
    {
      mode: "filaments-touching",
      title: "filaments touching inside",
      weight: WEIGHTS.loadShorted,
      repair: "replace",
      effects: () => [{ does: "bridge", from: view.terminals[1]!, to: view.terminals[2]!, ohms: SHORTED_OHMS }],
    },
    shorts("main", "main filament shorted", WEIGHTS.loadShorted, "shorted-main"),
  ],
  symbol(view, _pose, look) {
    const [common = "1", main = "2", second = "3"] = view.terminals;
    return {
      width: 8,
      height: 8,
      terminals: {
        [common]: { x: 4, y: 8, side: "down" },
        [main]: { x: 2, y: 0, side: "up" },
        [second]: { x: 6, y: 0, side: "up" },
      },
      marks: [
        box("symbol-fine", 0.2, 1.3, 7.6, 4.4, 2.2),
        line("symbol", 2, 0, 2, 2),
        line("symbol", 6, 0, 6, 2),
        ...(look === "iec" ? [...crossed(2), ...crossed(6)] : [loop(2), loop(6)]),
        line("symbol", 2, 4.6, 2, 5.1, 6, 5.1, 6, 4.6),
        line("symbol", 4, 5.1, 4, 8),
        text(main, 2.45, 0.95, { role: "text-quiet" }),
        text(second, 6.45, 0.95, { role: "text-quiet" }),
        text(common, 4.45, 7.6, { role: "text-quiet" }),
      ],
      nameAt: { x: 8.6, y: 3.2, anchor: "start" },
    };
  },
  testPoints: loadTestPoints,
};

/** A small lamp of the IEC look, from 2 to 4.6 down. */
function crossed(x: number): readonly Mark[] {
  const reach = 0.92;
  return [
    circle("symbol", x, 3.3, 1.3),
    line("symbol", x - reach, 3.3 - reach, x + reach, 3.3 + reach),
    line("symbol", x + reach, 3.3 - reach, x - reach, 3.3 + reach),
  ];
}

/** A filament as North America draws it. */
function loop(x: number): Mark {
  return line("symbol", x, 2, x, 2.6, x - 0.8, 3.2, x - 0.45, 3.9, x + 0.45, 3.9, x + 0.8, 3.2, x, 4, x, 4.6);
}
