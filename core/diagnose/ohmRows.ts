import type { ConnectorId, PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Ohms } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import { conditionText } from "../live/condition.ts";
import { ohmsShown } from "../live/instruments/ohmmeter.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import type { ActRows } from "./actRows.ts";
import type { Candidate } from "./candidates.ts";
import { feedingOf } from "./feeding.ts";
import { fedLead } from "./otherUnits.ts";
import { columnWith } from "./outcomes.ts";
import { meltedIn } from "./predict.ts";
import type { Planted } from "./shown.ts";
import type { Suspect } from "./step.ts";
import { MINUTES, type TestPoint, testPointsOf } from "./testPoint.ts";

/** Most ohms of a leg from a plug to the battery's negative: what is more than this leads through something that works. */
const LEG: Ohms = 2;

/** Two leads at a parted plug, all else at rest, between which a good circuit has ohms to read. */
interface Dead {
  readonly at: TestPoint;
  readonly black: Lead;
  readonly plug: ConnectorId;
}

/**
 * Ohms read at the parted plugs of the loads suspected, controls at rest: of the load itself, and of every leg from there to
 * the battery's negative. Only where a good circuit is dead: a meter on ohms must not be fed. Conditions are numbered from
 * `first` on.
 */
export function ohmRows(circuit: Circuit, complaint: Condition, suspects: readonly Suspect[], first: number): ActRows {
  const named = new Set(suspects.flatMap(({ faults }) => faults.map(({ target }) => target)));
  const dead = deadOf(circuit).filter(({ loads }) => loads.some((load) => named.has(load)));
  const plugs = [...new Set(dead.map(({ plug }) => plug))];
  const planted: readonly Planted[] = [{ id: "", faults: [] }, ...suspects];
  const read = ohmsWith(circuit, complaint, planted);
  return {
    conditions: plugs.map((plug) => ({ apart: [plug] })),
    columns: dead.map((leads) => {
      const candidate = rowOf(leads, first + plugs.indexOf(leads.plug));
      return columnWith(candidate, [read.map((ohms) => ({ figure: ohms.get(nameOf(leads))!, word: "" }))]);
    }),
  };
}

function rowOf({ at, black }: Dead, condition: number): Candidate {
  return {
    at,
    black,
    instrument: "meter ohms",
    lampTo: null,
    sweepOf: null,
    conditions: [condition],
    positions: [""],
    hands: at.hands,
    fineness: "ohms",
    alsoOpen: null,
    minutes: at.minutes + MINUTES.plugApart,
  };
}

/** All pairs of leads of a circuit between which ohms may be read, with the loads whose plug they lie at. */
const deadOf = remember((circuit: Circuit): readonly (Dead & { readonly loads: readonly string[] })[] => {
  const points = testPointsOf(circuit).filter(({ doNotProbe }) => doNotProbe === null);
  const feedings = circuit.parts.flatMap(({ id }) => feedingOf(circuit)(id) ?? []);
  const plugs = new Set(feedings.map(({ plug }) => plug));
  const loadsAt = (plug: ConnectorId): readonly string[] =>
    feedings.filter((feeding) => feeding.plug === plug).map(({ load }) => load);
  const found = [
    ...feedings.flatMap(({ plug, plus, minus, load }) =>
      points.flatMap((at) => (at.point === plus ? [{ at, black: minus, plug, loads: [load] }] : [])),
    ),
    ...[...plugs].flatMap((plug) =>
      points.flatMap((at) =>
        at.connector === plug ? [{ at, black: "battery -" as const, plug, loads: loadsAt(plug) }] : [],
      ),
    ),
  ];
  const isLeg = legsOf(circuit, [...plugs]);
  return found.filter(
    ({ at, black, plug }) =>
      fedLead(circuit, at.point, black, { apart: [plug] }) === null && (black !== "battery -" || isLeg(at.point, plug)),
  );
});

/** Whether a point leads to the battery's negative by a leg alone while a plug is apart. */
function legsOf(circuit: Circuit, plugs: readonly ConnectorId[]): (point: PointId, plug: ConnectorId) => boolean {
  const legs = new Map<ConnectorId, Float64Array>();
  const rig = new Rig(circuit);
  for (const plug of plugs) {
    reach(rig, { apart: [plug] });
    legs.set(plug, rig.solver.sourceOhms());
  }
  return (point, plug) => legs.get(plug)![rig.network.nodes.get(point)!]! <= LEG;
}

const known = remember((_: Circuit) => new Map<string, ReadonlyMap<string, Ohms>>());

/** Ohms of every dead pair, by its name, with each of these planted and after the complaint; asked again, they are remembered. */
function ohmsWith(
  circuit: Circuit,
  complaint: Condition,
  planted: readonly Planted[],
): readonly ReadonlyMap<string, Ohms>[] {
  const dead = deadOf(circuit);
  const plugs = new Set(dead.map(({ plug }) => plug));
  let rig: Rig | undefined;
  return planted.map(({ id, faults }) => {
    const key = `${id} after ${conditionText(complaint)}`;
    const before = known(circuit).get(key);
    if (before) return before;
    const own = new Rig(circuit, faults, [], rig);
    rig = own;
    const melted = meltedIn(own, complaint);
    const ohms = new Map<string, Ohms>();
    for (const plug of plugs) {
      reach(own, { apart: [plug] }, undefined, melted);
      for (const pair of dead)
        if (pair.plug === plug) ohms.set(nameOf(pair), ohmsShown(own, pair.at.point, pair.black));
    }
    known(circuit).set(key, ohms);
    return ohms;
  });
}

function nameOf({ at, black, plug }: Dead): string {
  return `${at.point}/${black} ${plug}`;
}
