import { remember } from "../base/memo.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { conditionText } from "../live/condition.ts";
import type { Fault } from "../live/fault.ts";
import type { Rig } from "../live/rig.ts";
import { type Probe, probeText, type Shows } from "./reading.ts";
import { readInEach } from "./reads.ts";

/** Faults that are planted together; none for the healthy circuit. */
export interface Planted {
  /** The faults' text, as a suspect's: "" where there are none. */
  readonly id: string;
  readonly faults: readonly Fault[];
}

const known = remember((_: Circuit) => new Map<string, Map<string, Shows>>());

/** What a probe shows with each of these planted, after the complaint; asked again, it is remembered with its circuit. */
export function shownTo(
  circuit: Circuit,
  complaint: Condition,
  planted: readonly Planted[],
  probe: Probe,
): readonly Shows[] {
  return shownInEach(circuit, complaint, planted, probe, [probe.condition])[0]!;
}

/** The same with the leads left where they are, by condition, then by what is planted. */
export function shownInEach(
  circuit: Circuit,
  complaint: Condition,
  planted: readonly Planted[],
  leads: Omit<Probe, "condition">,
  conditions: readonly Condition[],
): readonly (readonly Shows[])[] {
  const after = ` after ${conditionText(complaint)}`;
  const shown = conditions.map((condition) => keptFor(circuit, probeText({ ...leads, condition }) + after));
  let rig: Rig | undefined;
  for (const { id, faults } of planted) {
    const missing = conditions.flatMap((_, index) => (shown[index]!.has(id) ? [] : [index]));
    if (missing.length === 0) continue;
    const asked = missing.map((index) => conditions[index]!);
    const read = readInEach(circuit, faults, complaint, leads, asked, rig);
    rig = read.rig;
    for (const [place, index] of missing.entries()) shown[index]!.set(id, read.shows[place]!);
  }
  return shown.map((each) => planted.map(({ id }) => each.get(id)!));
}

function keptFor(circuit: Circuit, key: string): Map<string, Shows> {
  const kept = known(circuit).get(key) ?? new Map<string, Shows>();
  known(circuit).set(key, kept);
  return kept;
}
