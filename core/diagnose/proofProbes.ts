import type { Volts } from "../base/units.ts";
import type { Circuit, Condition, FunctionCheck } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import { branchOf } from "../live/branch.ts";
import type { Fault } from "../live/fault.ts";
import { finenessOf } from "./evidence.ts";
import { predict, type Shown } from "./predict.ts";
import type { Fineness } from "./spread.ts";
import { type TestPoint, testPointsOf } from "./testPoint.ts";

/** Two leads across something that a load's current passes, while the load runs; red where the current comes from. */
export interface ProofProbe {
  readonly red: Lead;
  readonly black: Lead;
  /** Where the leads must reach: red's place first; of a battery post there is none. */
  readonly reached: readonly [TestPoint, ...TestPoint[]];
  readonly fineness: Fineness;
  readonly check: FunctionCheck;
  /** By number of the condition among those solved. */
  readonly condition: number;
}

/** Half the width of a window for volts lost along a path: what a meter, a clip and a drawing's ohms may be off (guesses). */
const DROP_VOLTS: Volts = 0.03;
const DROP_SHARE = 0.3;
/** The same of higher readings, where it is narrower. */
const FAR_VOLTS: Volts = 0.15;
const FAR_SHARE = 0.015;

/** The same of millivolts across a fuse, whose ohms are known to a fifth or so. */
const FUSE_VOLTS: Volts = 0.001;
const FUSE_SHARE = 0.2;

/** Half the width of the window round what a mended circuit shows. */
export function windowAt(volts: Volts, fineness: Fineness): Volts {
  const size = Math.abs(volts);
  if (fineness === "millivolts") return Math.max(FUSE_VOLTS, FUSE_SHARE * size);
  return Math.min(Math.max(DROP_VOLTS, DROP_SHARE * size), Math.max(FAR_VOLTS, FAR_SHARE * size));
}

/** Whether a reading lies so far from a mended circuit's that the windows of both do not touch. */
export function isParted(mended: Volts, other: Volts, fineness: Fineness): boolean {
  return Math.abs(other - mended) > 2 * windowAt(mended, fineness);
}

/**
 * What could be read under load in these checks: the volts lost along every stretch of the load's branch that both leads
 * can reach, from battery + to the load and from the load to battery -, and across the load.
 */
export function proofProbesFor(circuit: Circuit, checks: readonly FunctionCheck[]): readonly ProofProbe[] {
  const free = testPointsOf(circuit).filter(({ doNotProbe }) => doNotProbe === null);
  const points = new Map(free.map((at) => [at.point, at] as const));
  return checks.flatMap((check, condition) => {
    const branch = branchOf(circuit, { load: check.load, condition: check.condition });
    const rows = branch.ok ? (branch.value.lines[0]?.rows ?? []) : [];
    const load = rows.findIndex((row) => row.is === "part" && row.isLoad);
    const feed = rows.slice(0, load).flatMap(({ exit }) => points.get(exit.point ?? "") ?? []);
    const back = rows.slice(load + 1).flatMap(({ entry }) => points.get(entry.point ?? "") ?? []);
    const probe = (red: Lead | TestPoint, black: Lead | TestPoint): readonly ProofProbe[] => {
      const [first, ...others] = [red, black].filter((lead) => typeof lead !== "string");
      const name = (lead: Lead | TestPoint): Lead => (typeof lead === "string" ? lead : lead.point);
      if (!first || name(red) === name(black)) return [];
      const leads = { red: name(red), black: name(black) };
      const fineness = finenessOf(circuit, { ...leads, lampTo: null, instrument: "meter volts" });
      return [{ ...leads, reached: [first, ...others], fineness, check, condition }];
    };
    const stretches = (side: readonly TestPoint[]): readonly ProofProbe[] =>
      side.flatMap((red, at) => side.slice(at + 1).flatMap((black) => probe(red, black)));
    const [last, first] = [feed.at(-1), back[0]];
    return [
      ...stretches(feed),
      ...stretches(back),
      ...feed.flatMap((black) => probe("battery +", black)),
      ...back.flatMap((red) => probe(red, "battery -")),
      ...(last && first ? probe(last, first) : []),
    ];
  });
}

/**
 * Volts of red against black by probe in any state of the circuit, after the complaint was tried once; a point that
 * floats counts as 0 V.
 */
export function proofVolts(
  probes: readonly ProofProbe[],
  complaint: Condition,
  conditions: readonly Condition[],
): (circuit: Circuit, faults: readonly Fault[]) => readonly Volts[] {
  const points = [...new Set(probes.flatMap(({ reached }) => reached))];
  const numbers = new Map(points.map(({ point }, index) => [point, index]));
  const leadVolts = ({ volts, plusVolts }: Shown, lead: Lead): Volts => {
    if (lead === "battery +") return plusVolts;
    return lead === "battery -" ? 0 : volts[numbers.get(lead)!]!;
  };
  return (circuit, faults) => {
    const { shown } = predict(circuit, faults, complaint, conditions, points);
    return probes.map(({ red, black, condition }) => {
      const now = shown[condition]!;
      return leadVolts(now, red) - leadVolts(now, black);
    });
  };
}
