import type { PartId } from "../base/ids.ts";
import type { Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { meterOn, meterShows } from "../live/instruments/meter.ts";
import { burns, lampOn } from "../live/instruments/testLamp.ts";
import { workOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { type Candidate, lampOf } from "./candidates.ts";
import { cautionsFor, outcomesOf, whyOf } from "./explain.ts";
import { type Chosen, planFor } from "./plan.ts";
import type { Expected, ProbeOrder, Step, Suspect } from "./step.ts";
import { type Observation, suspectsFor } from "./suspects.ts";

/** Half the width of a printed range: the spread of meter and battery, in volts and as a share (a guess). */
const SPREAD_VOLTS: Volts = 0.15;
const SPREAD_SHARE = 0.015;

/** The probe order for a complaint, with what else was observed; `minutes` is the time there is. */
export function probeOrder(
  circuit: Circuit,
  complaint: Observation,
  others: readonly Observation[] = [],
  minutes?: number,
): ProbeOrder {
  const { suspects, cleared } = suspectsFor(circuit, complaint, others);
  const { chosen, tries } = planFor(circuit, complaint.check, suspects, minutes);
  const tried = tries.conditions.map((condition) => ({ condition, turning: turningIn(circuit, condition) }));
  const steps = chosen.map((each, index) => stepOf(circuit, suspects, each, tried, index + 1));
  const total = steps.reduce((sum, step) => sum + step.minutes, 0);
  return {
    complaint: `${complaint.check.label}: ${complaint.word.replaceAll("-", " ")}`,
    suspects,
    cleared,
    steps,
    minutes: total,
  };
}

/** A condition that rows are read in, and the motors that a good circuit turns in it. */
interface Tried {
  readonly condition: Condition;
  readonly turning: readonly PartId[];
}

function turningIn(circuit: Circuit, condition: Condition): readonly PartId[] {
  const turns: readonly string[] = ["forward", "reverse"];
  return [...workOf(circuit, condition)].flatMap(([id, { doing }]) => (turns.includes(doing) ? [id] : []));
}

function stepOf(
  circuit: Circuit,
  suspects: readonly Suspect[],
  { column, minutes }: Chosen,
  tried: readonly Tried[],
  number: number,
): Step {
  const { candidate } = column;
  const { at, instrument, lampTo, sweepOf, hands, positions } = candidate;
  const outcomes = outcomesOf(column, suspects);
  return {
    number,
    point: at.point,
    black: "battery -",
    connector: at.connector,
    cavity: at.cavity,
    colour: at.colour,
    instrument,
    lampTo,
    sweepOf,
    settings: candidate.conditions.map((index, place) => ({
      condition: tried[index]!.condition,
      position: sweepOf === null ? "" : positions[place]!,
      expect: expectedOf(circuit, candidate, tried[index]!.condition),
    })),
    access: at.access,
    minutes,
    hands,
    why: whyOf(outcomes),
    cautions: cautionsFor(
      circuit,
      candidate,
      tried.map(({ turning }) => turning),
    ),
    outcomes,
  };
}

/** What the good circuit shows, solved anew with the instrument in it: the meter at the point, and the lamp where the row has one. */
export function expectedOf(
  circuit: Circuit,
  { at, lampTo, instrument }: Pick<Candidate, "at" | "lampTo" | "instrument">,
  condition: Condition,
): Expected {
  const lamp = lampOf(instrument);
  const hung = lampTo === null || lamp === null ? [] : [lampOn(lamp, at.point, lampTo, circuit.nominalVolts)];
  const rig = new Rig(circuit, [], [meterOn(at.point, "battery -"), ...hung]);
  reach(rig, condition);
  const volts = meterShows(rig);
  const spread = Math.max(SPREAD_VOLTS, SPREAD_SHARE * Math.abs(volts));
  return {
    low: Math.max(0, tenth(volts - spread)),
    high: Math.max(0, tenth(volts + spread)),
    unit: "V",
    lamp: hung.length === 0 ? null : burns(rig, 1),
  };
}

function tenth(volts: Volts): Volts {
  return Math.round(volts * 10) / 10;
}
