import { circle, line, terminalRing, text } from "../drawing/shapes.ts";
import { MOTOR_CURRENTS } from "../trade/motors.ts";
import { closedContacts, contactFaults, contactGroups, contactModel } from "./contacts.ts";
import type { Control, Kind, ModelElement, Part, PartView, Pose, Sees, SymbolShape } from "./kind.ts";
import { addsOhms, opens } from "./loadFaults.ts";
import { type MotorRating, motorDoing, motorLaw, speedVolts } from "./motor.ts";
import { loadTestPoints } from "./outline.ts";
import { amount, by, yesNo } from "./settings.ts";
import { bodyBox } from "./switchSymbol.ts";
import { WEIGHTS } from "./weights.ts";

const TERMINALS = ["31", "53", "53b", "53a", "31b"] as const;
const PARK_OHMS = 0.02;
const [LOW, HIGH] = ["wiper, unloaded, low", "wiper, unloaded, high"].map(
  (name) => MOTOR_CURRENTS.find((current) => current.name === name)!,
);
const SPEEDS = "middle of one vehicle maker's wiper inspection pages, 1999 to 2012: low 41-57, high 63-84 rpm";

function names(part: Part) {
  const [ground, low, high, feed, park] = part.terminals ?? TERMINALS;
  return { ground: ground!, low: low!, high: high!, feed: feed!, park: park! };
}

function controls(part: Part): readonly Control[] {
  const { ground, feed, park } = names(part);
  return [
    {
      name: "",
      label: "Wiper arms",
      positions: [
        { name: "parked", joins: [[park, ground]] },
        { name: "turning", joins: [[park, feed]] },
      ],
    },
  ];
}

function rating(view: PartView, speed: "low" | "high"): MotorRating {
  return {
    volts: view.number("volts"),
    runAmps: view.number(`${speed}Amps`),
    stallAmps: view.number("stall"),
    friction: view.number("friction"),
  };
}

/** What one brush turns the arms at: revolutions a minute, in proportion to its back-EMF. */
function turning(view: PartView, sees: Sees, speed: "low" | "high") {
  const law = motorLaw(rating(view, speed));
  const amps = sees.amps(speed);
  const rpm = (speedVolts(law, amps) / speedVolts(law, rating(view, speed).runAmps)) * view.number(`${speed}Rpm`);
  return { amps, watts: sees.volts(speed) * amps, rpm, doing: motorDoing(law, view.yes("stalled"), amps) };
}

/**
 * A two-speed wiper motor with a park switch. 31b is joined to 31 while the arms are parked and to 53a while they turn,
 * so a wiper switch at rest, which joins 53 to 31b, runs it home and then brakes it. The two brushes are two motors
 * here, each by itself; the arms' place is thrown like a switch. Work is revolutions a minute.
 */
export const wiperMotor: Kind = {
  name: "wiper-motor",
  title: "Wiper motor",
  words: ["two-speed motor", "park switch", "wiper", "windscreen", "windshield"],
  letter: "M",
  role: "load",
  rising: [
    ["lowAmps", "stall"],
    ["highAmps", "stall"],
    ["lowRpm", "highRpm"],
  ],
  settings: [
    amount("volts", "rated volts", "V", by(12, 24), [1, 60], "nominal volts of the vehicle"),
    amount(
      "lowAmps",
      "amps at low speed",
      "A",
      by(LOW!.mostAmps, LOW!.mostAmps / 2),
      [0.01, 100],
      LOW!.source.document,
    ),
    amount(
      "highAmps",
      "amps at high speed",
      "A",
      by(HIGH!.mostAmps, HIGH!.mostAmps / 2),
      [0.01, 100],
      HIGH!.source.document,
    ),
    amount("stall", "amps held still", "A", by(25, 12), [0.02, 500], "from memory"),
    amount("lowRpm", "low speed", "rpm", 49, [1, 500], SPEEDS),
    amount("highRpm", "high speed", "rpm", 73, [1, 500], SPEEDS),
    amount("friction", "share of the running amps that friction takes", "", 0.8, [0, 0.95], "a guess"),
    yesNo("stalled", "held still", false, "set by a fault"),
  ],
  terminals: () => TERMINALS,
  controls,
  model(view) {
    const [ground, low, high] = view.terminals;
    const brush = (key: "low" | "high", a: string): ModelElement => {
      const law = motorLaw(rating(view, key));
      const laid = view.yes("stalled") ? ({ law: "resistor", ohms: law.ohms } as const) : law;
      return { key, a, b: ground!, law: laid, passes: "load", copper: true };
    };
    return [brush("low", low!), brush("high", high!), ...contactModel(view, PARK_OHMS)];
  },
  start: "",
  closed: (view, _state, around) => closedContacts(view, around),
  next: (_view, state) => state,
  doing(view, _state, sees) {
    const [low, high] = [turning(view, sees, "low"), turning(view, sees, "high")];
    const faster = Math.abs(high.amps) > Math.abs(low.amps) ? high : low;
    return {
      doing: faster.doing,
      amps: low.amps + high.amps,
      watts: low.watts + high.watts,
      work: view.yes("stalled") ? 0 : faster.rpm,
    };
  },
  faults: (view) => [
    opens("low", "low-speed brush open", WEIGHTS.motorOpen, "open-low"),
    opens("high", "high-speed brush open", WEIGHTS.motorOpen, "open-high"),
    addsOhms("low", "low-speed brush worn, ohms added", WEIGHTS.motorWorn, [1, 0.3, 4], "worn-low"),
    addsOhms("high", "high-speed brush worn, ohms added", WEIGHTS.motorWorn, [1, 0.3, 4], "worn-high"),
    {
      mode: "seized",
      title: "seized",
      weight: WEIGHTS.motorSeized,
      repair: "replace",
      effects: () => [{ does: "set", setting: "stalled", value: true }],
    },
    {
      mode: "jammed",
      title: "held still by its linkage",
      weight: WEIGHTS.mechanismJammed,
      repair: "free the mechanism",
      effects: () => [{ does: "set", setting: "stalled", value: true }],
    },
    ...contactGroups(view).flatMap(({ contacts }) => contacts.flatMap(({ key }) => contactFaults(key, true))),
  ],
  symbol: wiperSymbol,
  testPoints: loadTestPoints,
};

/** Motor with its two brushes at the left; at the right the park switch, straight while parked. */
function wiperSymbol(view: PartView, pose: Pose): SymbolShape {
  const { ground, low, high, feed, park } = names({ ...view.part, terminals: view.terminals });
  const isTurning = pose.closed.has(`${park}-${feed}`);
  const isParked = pose.closed.has(`${park}-${ground}`);
  return {
    width: 12,
    height: 12,
    terminals: {
      [low]: { x: 2, y: 0, side: "up" },
      [high]: { x: 4, y: 0, side: "up" },
      [feed]: { x: 10, y: 0, side: "up" },
      [park]: { x: 8, y: 12, side: "down" },
      [ground]: { x: 3, y: 12, side: "down" },
    },
    marks: [
      bodyBox(12, 12),
      circle("symbol", 3, 6, 2),
      text("M", 3, 6.62, { points: 12, weight: 600, anchor: "middle" }),
      line("symbol", 2, 0, 2, 4.27),
      line("symbol", 4, 0, 4, 4.27),
      line("symbol", 3, 8, 3, 12),
      line("symbol", 10, 0, 10, 4),
      line("symbol", 8, 4, 8, 3, 6, 3, 6, 9.4, 3, 9.4),
      circle("joint", 3, 9.4, 0.32, true),
      line("symbol", 8, 8, 8, 12),
      ...(isParked ? [] : [line("contact-rest", 8, 8, 8, 4)]),
      ...(isParked ? [line("contact-now", 8, 8, 8, 4)] : []),
      ...(isTurning ? [line("contact-now", 8, 8, 10, 4)] : []),
      terminalRing(8, 4),
      terminalRing(10, 4),
      terminalRing(8, 8),
      text(low, 1.6, 1.45, { role: "text-quiet", anchor: "end" }),
      text(high, 4.45, 1.45, { role: "text-quiet" }),
      text(feed, 9.6, 1.45, { role: "text-quiet", anchor: "end" }),
      text(park, 8.45, 11.35, { role: "text-quiet" }),
      text(ground, 3.45, 11.35, { role: "text-quiet" }),
    ],
    nameAt: { x: 12.6, y: 5.8, anchor: "start" },
  };
}
