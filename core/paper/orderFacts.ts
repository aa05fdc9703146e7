import type { Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { controlAt } from "../circuit/points.ts";
import { printedPosition } from "../circuit/positionWords.ts";
import type { Step } from "../diagnose/step.ts";
import { restVoltsOf } from "../live/restVolts.ts";
import { circuitTitle } from "./facts.ts";
import type { Facts } from "./page.ts";
import { TYPE } from "./sizes.ts";
import { isKey } from "./throws.ts";

/** What stands in the head of a sheet of rows. */
export interface OrderFacts {
  readonly title: string;
  readonly circuit: Circuit;
  readonly complaint: string;
  readonly steps: readonly Step[];
  /** The day in words; left to be written by hand where absent. */
  readonly date?: string | undefined;
  /** Volts of the battery at rest that the ranges were worked out for; the circuit's own where absent. */
  readonly restVolts?: Volts | undefined;
}

/** The head and foot of a sheet of rows: vehicle, complaint, circuit, and what "Key ON" in a row means. */
export function orderFacts({ title, circuit, complaint, steps, date, restVolts }: OrderFacts): Facts {
  return {
    title,
    vehicle: circuit.vehicle ?? "",
    complaint,
    circuit: circuitTitle(circuit),
    date: date ?? "",
    restVolts: restVolts ?? restVoltsOf(circuit),
    nominalVolts: circuit.nominalVolts,
    meaning: meaningOf(circuit, steps),
    hint: [
      [`${WORDS.typeReading} `, TYPE.small],
      [WORDS.typedReading, TYPE.smallBold],
    ],
  };
}

/** What "Key ON" in a row means; without a key, what a row leaves unsaid. */
function meaningOf(circuit: Circuit, steps: readonly Step[]): readonly [string, string] {
  for (const { settings } of steps) {
    for (const [key, position] of Object.entries(settings[0]?.condition.set ?? {})) {
      const control = controlAt(circuit, key);
      if (control && isKey(control)) return [WORDS.keyMeans(printedPosition(position)), WORDS.engineOff];
    }
  }
  return [WORDS.restMeans, WORDS.atRest];
}
