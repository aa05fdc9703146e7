import type { PartId } from "../base/ids.ts";
import type { Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Attachment } from "../live/attachment.ts";
import { workOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { brightness, METER, meterVolts, testLamp } from "../trade/instruments.ts";
import type { Candidate } from "./candidates.ts";
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

/** What the good circuit shows, solved anew with the lamp hung on it where the row has one. */
export function expectedOf(
  circuit: Circuit,
  { at, lampTo }: Pick<Candidate, "at" | "lampTo">,
  condition: Condition,
): Expected {
  const clipped: readonly Attachment[] = lampTo === null ? [] : [lampOn(at.point, lampTo, circuit.nominalVolts)];
  const rig = new Rig(circuit, [], clipped);
  reach(rig, condition);
  const node = rig.network.nodes.get(at.point)!;
  const ohms = rig.solver.sourceOhms()[node]!;
  const volts = rig.solver.isFloating(node) ? 0 : meterVolts(rig.solver.volts(node), ohms, METER.ohms);
  const lamp = rig.network.attached[0];
  const spread = Math.max(SPREAD_VOLTS, SPREAD_SHARE * Math.abs(volts));
  return {
    low: Math.max(0, tenth(volts - spread)),
    high: Math.max(0, tenth(volts + spread)),
    unit: "V",
    lamp: lamp === undefined ? null : brightness(rig.solver.voltsAcross(lamp), circuit.nominalVolts),
  };
}

/** A 4 A test lamp from a point to one of the battery's posts. */
export function lampOn(point: string, lampTo: "battery +" | "battery -", nominalVolts: Volts): Attachment {
  const { volts, amps } = testLamp("heavy", nominalVolts);
  return { red: point, black: lampTo, law: { law: "lamp", ratedVolts: volts, ratedAmps: amps }, isMeter: false };
}

function tenth(volts: Volts): Volts {
  return Math.round(volts * 10) / 10;
}
