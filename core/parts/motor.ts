import type { Amps, Share, Volts } from "../base/units.ts";
import { circle, line, text } from "../drawing/shapes.ts";
import type { Law } from "../solve/element.ts";
import type { Doing, Kind, PartView, Pose } from "./kind.ts";
import { addsOhms, isShorted, opens, shorts, sticks } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, by, yesNo } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

type MotorLaw = Extract<Law, { law: "motor" }>;

/** How a motor is rated: what it draws with its mechanism, and what it draws held still, at its rated volts. */
export interface MotorRating {
  readonly volts: Volts;
  readonly runAmps: Amps;
  readonly stallAmps: Amps;
  /** Share of the run amps that friction takes at any speed. */
  readonly friction: Share;
}

/** Least ohms that stand for speed, so that a motor said to run at its stall amps still has a law. */
const LEAST_SPEED_OHMS = 1e-3;

/** The law of a permanent-magnet motor that draws its run amps at its rated volts, and its stall amps when held. */
export function motorLaw({ volts, runAmps, stallAmps, friction }: MotorRating): MotorLaw {
  const ohms = volts / stallAmps;
  const frictionAmps = friction * runAmps;
  const speedOhms = (volts - frictionAmps * ohms) / (runAmps - frictionAmps) - ohms;
  return { law: "motor", ohms, frictionAmps, speedOhms: Math.max(speedOhms, LEAST_SPEED_OHMS) };
}

/** Volts of back-EMF, never below 0: they go as the speed. Read from the amps, so that added ohms do not count in. */
export function speedVolts(law: MotorLaw, amps: Amps): Volts {
  return Math.max(0, Math.abs(amps) - law.frictionAmps) * law.speedOhms;
}

/** What a motor does with these amps: which way it turns, or that it stands and hums. Positive amps are forward. */
export function motorDoing(law: MotorLaw, isHeld: boolean, amps: Amps): Doing["doing"] {
  if (!isHeld && Math.abs(amps) > law.frictionAmps) return amps > 0 ? "forward" : "reverse";
  return Math.abs(amps) > law.frictionAmps / 4 ? "stalled" : "off";
}

function lawOf(view: PartView): MotorLaw {
  return motorLaw({
    volts: view.number("volts"),
    runAmps: view.number("amps"),
    stallAmps: view.number("stall"),
    friction: view.number("friction"),
  });
}

/**
 * A permanent-magnet motor with its mechanism. Forward is terminal 1 positive. Its thermal cut-out is a closed contact
 * that opens only as a fault: how long it takes to trip is no matter of a steady state.
 */
export const motor: Kind = {
  name: "motor",
  title: "Motor",
  words: ["actuator", "window motor", "blower", "fan", "pump"],
  letter: "M",
  role: "load",
  rising: [["amps", "stall"]],
  settings: [
    amount("volts", "rated volts", "V", by(12, 24), [1, 60], "nominal volts of the vehicle"),
    amount("amps", "amps running with its mechanism", "A", by(3, 1.5), [0.01, 200], "common practice, no source"),
    amount("stall", "amps held still", "A", by(10, 5), [0.02, 1000], "common practice, no source"),
    amount("friction", "share of the running amps that friction takes", "", 0.8, [0, 0.95], "a guess"),
    yesNo("cutOut", "thermal cut-out inside", false, "common practice, no source"),
    yesNo("stalled", "held still", false, "set by a fault"),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model(view) {
    const [one, two] = [view.terminals[0]!, view.terminals[1]!];
    const law = lawOf(view);
    const held: Law = { law: "resistor", ohms: law.ohms };
    const windings = {
      key: "windings",
      a: view.yes("cutOut") ? "~brush" : one,
      b: two,
      law: view.yes("stalled") ? held : law,
      passes: "load",
      copper: true,
    } as const;
    if (!view.yes("cutOut")) return [windings];
    return [{ key: "cut-out", a: one, b: "~brush", law: { law: "resistor", ohms: 0.02 }, passes: "contact" }, windings];
  },
  start: "",
  closed: (view) => (view.yes("cutOut") ? ["cut-out"] : []),
  next: (_view, state) => state,
  doing(view, _state, sees) {
    const amps = sees.amps("windings");
    const law = lawOf(view);
    const isHeld = view.yes("stalled") || isShorted(law.ohms, sees.volts("windings"), amps);
    return {
      doing: motorDoing(law, isHeld, amps),
      amps,
      watts: sees.volts("windings") * amps,
      work: isHeld ? 0 : speedVolts(law, amps),
    };
  },
  faults: (view) => [
    opens("windings", "winding or brushes open", WEIGHTS.motorOpen),
    addsOhms("windings", "worn, ohms added at the brushes", WEIGHTS.motorWorn, [2, 0.5, 8], "worn"),
    {
      mode: "seized",
      title: "seized",
      weight: WEIGHTS.motorSeized,
      repair: "replace",
      effects: () => [{ does: "set", setting: "stalled", value: true }],
    },
    {
      mode: "jammed",
      title: "held still by its mechanism",
      weight: WEIGHTS.mechanismJammed,
      repair: "free the mechanism",
      effects: () => [{ does: "set", setting: "stalled", value: true }],
    },
    shorts("windings", "windings shorted", WEIGHTS.loadShorted),
    ...(view.yes("cutOut")
      ? [sticks("cut-out", false, "thermal cut-out open", WEIGHTS.contactBurnt, "cut-out-open")]
      : []),
  ],
  symbol(view, pose) {
    const sign = text("M", 2, 4.62, { points: 12, weight: 600, anchor: "middle" });
    const shape = twoEnded(view.terminals, [circle("symbol", 2, 4, 2), sign], [2, 6]);
    if (!view.yes("cutOut")) return shape;
    const [, below, ...rest] = shape.marks;
    return { ...shape, marks: [...cutOutMarks(pose), below!, ...rest] };
  },
  testPoints: loadTestPoints,
};

/** The cut-out in the upper lead: a blade with the bent strip of a thermal contact beside it. */
function cutOutMarks(pose: Pose) {
  const isClosed = pose.closed.has("cut-out");
  return [
    line("symbol", 2, 0, 2, 0.4),
    line("symbol", 2, 1.6, 2, 2),
    line("contact-now", 2, 1.6, isClosed ? 2 : 1.3, isClosed ? 0.4 : 0.5),
    line("symbol-fine", 2.5, 1.4, 2.9, 1.4, 2.9, 0.9, 3.3, 0.9, 3.3, 0.6),
  ];
}
