import type { Mark } from "../drawing/mark.ts";
import { box, circle, line } from "../drawing/shapes.ts";
import { resistorBody } from "./bodies.ts";
import type { Kind } from "./kind.ts";
import { filamentLight, opens } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, by, choice } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** A load put in a part's place for a test: a lamp or a resistor that draws its amps at nominal volts. Work is watts or light. */
export const standInLoad: Kind = {
  name: "stand-in-load",
  title: "Stand-in load",
  words: ["test load", "load lamp", "dummy", "substitute"],
  letter: "E",
  role: "load",
  settings: [
    choice("type", "type", "lamp", ["lamp", "resistor"], "the bench's own test lamps"),
    amount("volts", "rated volts", "V", by(12, 24), [1, 60], "nominal volts of the vehicle"),
    amount("amps", "amps at rated volts", "A", 4, [0.001, 60], "the bench's own heavy test lamp"),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model(view) {
    const [volts, amps] = [view.number("volts"), view.number("amps")];
    const isLamp = view.word("type") === "lamp";
    return [
      {
        key: "load",
        a: view.terminals[0]!,
        b: view.terminals[1]!,
        law: isLamp ? { law: "lamp", ratedVolts: volts, ratedAmps: amps } : { law: "resistor", ohms: volts / amps },
        passes: "load",
      },
    ];
  },
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing(view, _state, sees) {
    const [volts, amps] = [sees.volts("load"), sees.amps("load")];
    const watts = volts * amps;
    const rated = { volts: view.number("volts"), amps: view.number("amps") };
    const isLamp = view.word("type") === "lamp";
    const work = isLamp ? filamentLight(volts, amps, rated) : watts / (rated.volts * rated.amps);
    return { doing: work > 0.7 ? "on" : work > 0.02 ? "dim" : "off", amps, watts, work };
  },
  faults: () => [opens("load", "open", WEIGHTS.loadOpen)],
  symbol(view, _pose, look) {
    const isLamp = view.word("type") === "lamp";
    const lampBody: readonly Mark[] = [
      circle("symbol", 2, 4, 1.5),
      line("symbol", 0.94, 2.94, 3.06, 5.06),
      line("symbol", 3.06, 2.94, 0.94, 5.06),
    ];
    const inside = isLamp ? lampBody : resistorBody(look, 2, 2.5, 5.5);
    return twoEnded(view.terminals, [box("link", 0.2, 1.7, 3.6, 4.6, 0.4), ...inside], [2.5, 5.5]);
  },
  testPoints: loadTestPoints,
};
