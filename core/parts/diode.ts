import type { Amps, Volts } from "../base/units.ts";
import type { Law } from "../solve/element.ts";
import { FORWARD_DROPS } from "../trade/diodes.ts";
import { diodeBody } from "./bodies.ts";
import { doesNothing, type Kind } from "./kind.ts";
import { opens, shorts } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { choice } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

type DiodeLaw = Extract<Law, { law: "diode" }>;

/** kT/q at 25 C. */
const THERMAL_VOLTS: Volts = 0.0257;

/** The diode that drops `volts` at `amps`; `emission` is n of Shockley's law, 1 for a metal junction, about 2 for silicon. */
export function diodeLaw(volts: Volts, amps: Amps, emission: number): DiodeLaw {
  const emissionVolts = emission * THERMAL_VOLTS;
  return { law: "diode", saturationAmps: amps / Math.expm1(volts / emissionVolts), emissionVolts };
}

function drop(name: string) {
  return FORWARD_DROPS.find((each) => each.name === name)!;
}

const [SILICON, SCHOTTKY, RECTIFIER] = [drop("silicon"), drop("schottky"), drop("rectifier at rated current")];

/** Sorts of diode by their drop at 1 A: silicon the most of its range, the others the middle of theirs. */
export const DIODES = {
  silicon: diodeLaw(SILICON.mostVolts, 1, 2),
  schottky: diodeLaw((SCHOTTKY.leastVolts + SCHOTTKY.mostVolts) / 2, 1, 1.05),
  rectifier: diodeLaw((RECTIFIER.leastVolts + RECTIFIER.mostVolts) / 2, 1, 2),
} as const;

/** A diode: A is its anode, K its cathode with the bar. A thousandth of an amp drops less than an amp does. */
export const diode: Kind = {
  name: "diode",
  title: "Diode",
  words: ["rectifier", "blocking diode", "suppressor"],
  letter: "V",
  role: "electronics",
  settings: [
    choice(
      "type",
      "type",
      "silicon",
      Object.keys(DIODES),
      `${SILICON.source.document} for silicon and Schottky; rectifier ${RECTIFIER.source.document}`,
    ),
  ],
  terminals: () => ["A", "K"],
  controls: () => [],
  model: (view) => [
    {
      key: "junction",
      a: view.terminals[0]!,
      b: view.terminals[1]!,
      law: DIODES[view.word("type") as keyof typeof DIODES] ?? DIODES.silicon,
      passes: "diode",
    },
  ],
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: () => [
    opens("junction", "open", WEIGHTS.diodeOpen),
    shorts("junction", "shorted, passes both ways", WEIGHTS.diodeShorted),
  ],
  symbol: (view, _pose, look) => twoEnded(view.terminals, diodeBody(look, 2, 3, 5), [3, 5]),
  testPoints: loadTestPoints,
};
