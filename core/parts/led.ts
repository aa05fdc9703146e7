import { FORWARD_DROPS, LED_TELL_TALE } from "../trade/diodes.ts";
import { arrow, diodeBody } from "./bodies.ts";
import { diodeLaw } from "./diode.ts";
import type { Kind } from "./kind.ts";
import { opens, shorts } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, by } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

const DROP = FORWARD_DROPS.find(({ name }) => name === "led")!;
const USUAL_AMPS = (LED_TELL_TALE.leastAmps + LED_TELL_TALE.mostAmps) / 2;

/** A light-emitting diode with its series resistor, as a tell-tale or lamp insert has it. Work is amps over rated. */
export const led: Kind = {
  name: "led",
  title: "LED",
  words: ["light-emitting diode", "tell-tale", "indicator", "lamp"],
  letter: "H",
  role: "load",
  shines: true,
  settings: [
    amount("volts", "rated volts", "V", by(12, 24), [3, 60], "nominal volts of the vehicle"),
    amount("amps", "amps at rated volts", "A", USUAL_AMPS, [0.0005, 10], LED_TELL_TALE.source.document),
    amount("drop", "volts of the diode itself", "V", 2, [1.5, 2.9], `${DROP.source.document}: 1.8 to 3.3 V by colour`),
  ],
  terminals: () => ["A", "K"],
  controls: () => [],
  model(view) {
    const [amps, drop] = [view.number("amps"), view.number("drop")];
    const ohms = (view.number("volts") - drop) / amps;
    return [
      { key: "resistor", a: view.terminals[0]!, b: "~mid", law: { law: "resistor", ohms }, passes: "load" },
      { key: "junction", a: "~mid", b: view.terminals[1]!, law: diodeLaw(drop, amps, 2), passes: "diode" },
    ];
  },
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing(view, _state, sees) {
    const amps = sees.amps("junction");
    const isWhole = sees.volts("junction") > view.number("drop") / 2;
    const share = isWhole ? Math.max(0, amps / view.number("amps")) : 0;
    return {
      doing: share > 0.5 ? "on" : share > 0.02 ? "dim" : "off",
      amps,
      watts: (sees.volts("resistor") + sees.volts("junction")) * amps,
      work: share,
    };
  },
  faults: () => [
    opens("junction", "burnt out", WEIGHTS.lampBurnt, "burnt-out"),
    shorts("junction", "diode shorted, its resistor whole", WEIGHTS.loadShorted),
  ],
  symbol(view, _pose, look) {
    const rays = [...arrow(3.2, 3.6, 4.4, 2.4), ...arrow(3.5, 4.5, 4.7, 3.3)];
    const shape = twoEnded(view.terminals, [...diodeBody(look, 2, 3, 5), ...rays], [3, 5]);
    return { ...shape, width: 5, nameAt: { x: 5.2, y: 3.6, anchor: "start" } };
  },
  testPoints: loadTestPoints,
};
