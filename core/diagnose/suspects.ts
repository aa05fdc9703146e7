import { remember } from "../base/memo.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { type Fault, faultModes, faultText, type Target } from "../live/fault.ts";
import { agrees, judge, type Observed } from "../live/judge.ts";
import { levelOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import type { Doing, FaultMode } from "../parts/kind.ts";
import type { Suspect } from "./step.ts";

/** How often an observation is wrong (a guess): a suspect that contradicts one keeps this much of its weight. */
export const OBSERVED_WRONGLY = 0.02;

/** What a person saw of one function check. */
export interface Observation {
  readonly check: FunctionCheck;
  readonly word: Observed;
}

interface Possible {
  readonly fault: Fault;
  readonly mode: FaultMode;
  readonly weight: number;
}

/** Every single fault of a circuit with its starting weight; a mode that takes a value comes once for each usual value. */
export const possibleFaults = remember((circuit: Circuit): readonly Possible[] => {
  const targets: Target[] = [
    ...circuit.parts.map((part) => ({ is: "part" as const, id: part.id })),
    ...circuit.connectors.flatMap((connector) => cavitiesOf(connector.id, connector)),
    ...circuit.wires.map((wire) => ({ is: "wire" as const, id: wire.id })),
  ];
  return targets.flatMap((target) =>
    faultModes(circuit, target).flatMap((mode) => (mode.mode === "crossed" ? [] : valuesOf(target.id, mode))),
  );
});

function cavitiesOf(id: string, connector: Circuit["connectors"][number]): readonly Target[] {
  const carried = connector.cavities;
  const cavities = connector.rows
    .flat()
    .filter((cavity) => cavity !== "" && (!carried || carried[cavity] !== undefined));
  return cavities.map((cavity) => ({ is: "cavity", id: `${id}-${cavity}`, connector: id, cavity }));
}

function valuesOf(target: string, mode: FaultMode): readonly Possible[] {
  if (!mode.value) return [{ fault: { target, mode: mode.mode }, mode, weight: mode.weight }];
  const { usual } = mode.value;
  return usual.map((value) => ({
    fault: { target, mode: mode.mode, value },
    mode,
    weight: mode.weight / usual.length,
  }));
}

/** A suspect in words: "X5-6 corroded, ohms added, 20 ohm". */
function titleOf({ fault, mode }: Possible): string {
  const value = mode.value ? `, ${fault.value} ${mode.value.unit}` : "";
  return `${fault.target} ${mode.title}${value}`;
}

/** Suspects that reproduce the complaint, likeliest first; those that an observation contradicts are set apart. */
export interface Suspicion {
  readonly suspects: readonly Suspect[];
  readonly cleared: readonly Suspect[];
  /** Work of the load in each observed check, healthy; kept for what asks next. */
  readonly tried: number;
}

/**
 * Tries every single fault: those with which the complaint is not seen are no suspects. Each further observation
 * leaves a suspect that contradicts it a fiftieth of its weight; "works" clears by the level of its check alone.
 */
export function suspectsFor(circuit: Circuit, complaint: Observation, others: readonly Observation[] = []): Suspicion {
  const observations = [complaint, ...others.filter((observation) => observation.word !== "not-tried")];
  const healthy = new Rig(circuit);
  const good = observations.map(({ check }) => tryOut(healthy, check).doing);
  const found: { possible: Possible; weight: number; isCleared: boolean }[] = [];
  let rig = healthy;
  for (const possible of possibleFaults(circuit)) {
    rig = new Rig(circuit, [possible.fault], [], rig);
    if (!isSeen(rig, complaint, good[0]!)) continue;
    const contradicted = observations
      .slice(1)
      .filter((observation, index) => !isSeen(rig, observation, good[index + 1]!)).length;
    found.push({ possible, weight: possible.weight * OBSERVED_WRONGLY ** contradicted, isCleared: contradicted > 0 });
  }
  const total = found.reduce((sum, { weight }) => sum + weight, 0) || 1;
  const listed = found.map(({ possible, weight, isCleared }) => ({
    suspect: suspectOf(possible, weight / total),
    isCleared,
  }));
  const byProbability = (one: { suspect: Suspect }, other: { suspect: Suspect }) =>
    other.suspect.probability - one.suspect.probability;
  listed.sort(byProbability);
  return {
    suspects: listed.filter((each) => !each.isCleared).map((each) => each.suspect),
    cleared: listed.filter((each) => each.isCleared).map((each) => each.suspect),
    tried: possibleFaults(circuit).length,
  };
}

function suspectOf(possible: Possible, probability: number): Suspect {
  const { fault, mode } = possible;
  return {
    id: faultText(fault),
    fault,
    title: titleOf(possible),
    repairGroup: `${fault.target}|${mode.repair}`,
    probability,
  };
}

/** Tries a check once and says what its load did, and whether a fuse suffered. */
function tryOut(rig: Rig, check: FunctionCheck): { readonly doing: Doing; readonly melted: boolean } {
  const settled = reach(rig, check.condition);
  const placed = rig.network.parts.get(check.load)!;
  const doing = placed.kind.doing(placed.view, rig.states.get(check.load)!, rig.sees(placed), rig.around(placed));
  const melted = settled.happenings.some((happening) => happening.what === "melted" || happening.what === "may-melt");
  return { doing: doing ?? NOTHING, melted };
}

const NOTHING: Doing = { doing: "off", amps: 0, watts: 0, work: 0 };

function isSeen(rig: Rig, { check, word }: Observation, healthy: Doing): boolean {
  const { doing, melted } = tryOut(rig, check);
  const verdict = judge(check, { doing: doing.doing, level: levelOf(doing, healthy) });
  return agrees(verdict, word, melted);
}
