import type { Mark } from "../drawing/mark.ts";
import { arc, box, line } from "../drawing/shapes.ts";
import { isPulledIn } from "../trade/relays.ts";
import type { Kind, Look, PartView, Pose, Sees } from "./kind.ts";
import { addsOhms, innerVolts, opens, shorts } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, by } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** Volts of the coil at 20 C: what pulls is amps, so that a warm coil needs more volts. */
function coilVolts(view: PartView, sees: Sees) {
  return innerVolts(view.number("ohms"), sees.volts("coil"), sees.amps("coil"));
}

/**
 * A solenoid or solenoid valve. It pulls in and lets go at different volts, both rising as the copper warms, and keeps
 * its place between. Work is the coil's volts while it is pulled in, and nothing while it is not.
 */
export const solenoid: Kind = {
  name: "solenoid",
  title: "Solenoid",
  words: ["valve", "lock", "fuel shut-off", "plunger", "clutch"],
  letter: "Y",
  role: "load",
  rising: [["dropOutVolts", "pullInVolts"]],
  settings: [
    amount("ohms", "coil", "ohm", by(12, 48), [0.05, 5000], "from memory"),
    amount("pullInVolts", "pulls in at", "V", by(9, 18), [0.5, 60], "TM 5-3820-256-24-5, section 6-II-A: 9 V of 12"),
    amount("dropOutVolts", "lets go at", "V", by(2.4, 4.8), [0, 60], "a guess: a fifth of nominal"),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model: (view) => [
    {
      key: "coil",
      a: view.terminals[0]!,
      b: view.terminals[1]!,
      law: { law: "resistor", ohms: view.number("ohms") },
      passes: "load",
      copper: true,
    },
  ],
  start: "released",
  closed: () => [],
  next(view, state, sees) {
    const limits = { pullInVolts: view.number("pullInVolts"), dropOutVolts: view.number("dropOutVolts") };
    return isPulledIn(state === "pulled-in", coilVolts(view, sees), limits) ? "pulled-in" : "released";
  },
  doing(view, state, sees) {
    const amps = sees.amps("coil");
    const isIn = state === "pulled-in";
    return {
      doing: isIn ? "pulled-in" : "released",
      amps,
      watts: sees.volts("coil") * amps,
      work: isIn ? coilVolts(view, sees) : 0,
    };
  },
  faults: () => [
    opens("coil", "coil open", WEIGHTS.loadOpen),
    shorts("coil", "coil shorted", WEIGHTS.loadShorted),
    addsOhms("coil", "coil poor, ohms added", WEIGHTS.contactPoor, [10, 3, 50]),
    {
      mode: "stuck-released",
      title: "plunger stuck, does not pull in",
      weight: WEIGHTS.mechanismJammed,
      repair: "free the mechanism",
      effects: () => [{ does: "hold", state: "released" }],
    },
    {
      mode: "stuck-pulled-in",
      title: "plunger stuck pulled in",
      weight: WEIGHTS.contactStuck,
      repair: "free the mechanism",
      effects: () => [{ does: "hold", state: "pulled-in" }],
    },
  ],
  symbol(view, pose, look) {
    const shape = twoEnded(view.terminals, solenoidBody(look, pose), look === "iec" ? [2.8, 5.2] : [2.5, 5.5]);
    return { ...shape, width: 6, nameAt: { x: 6, y: 3.6, anchor: "start" } };
  },
  testPoints: loadTestPoints,
};

/** The coil, and its plunger to the right: drawn in or standing out. */
function solenoidBody(look: Look, pose: Pose): readonly Mark[] {
  const out = pose.state === "pulled-in" ? 0 : 0.9;
  const plunger = [
    line("link", 3.6, 4, 4.2 + out, 4),
    line("symbol", 4.2 + out, 3.1, 4.2 + out, 4.9),
    line("symbol", 4.2 + out, 4, 4.8 + out, 4),
  ];
  if (look === "iec") return [box("symbol", 0.4, 2.8, 3.2, 2.4), ...plunger];
  const loops = [0, 1, 2].map((turn) => arc("symbol", 2, 3 + turn, 0.5, -90, 90));
  return [...loops, line("symbol", 3, 2.5, 3, 5.5), line("symbol", 3.4, 2.5, 3.4, 5.5), ...plunger];
}
