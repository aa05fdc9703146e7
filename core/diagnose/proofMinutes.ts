import type { Minutes } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { handsFor } from "./candidates.ts";
import type { Possible } from "./possible.ts";
import type { ProofProbe } from "./proofProbes.ts";
import { groupsToOpen, MINUTES, reachOf } from "./testPoint.ts";
import { triesFor } from "./tries.ts";

/** Trim that is off because the repair needed it off. */
export function alreadyOpen(circuit: Circuit, { faults }: Pick<Possible, "faults">): ReadonlySet<string> {
  const groups = faults.flatMap(({ target }) => {
    const wire = circuit.wires.find(({ id }) => id === target);
    const { access } = reachOf(circuit, wire ? wire.from : target);
    return access === undefined ? [] : groupsToOpen(circuit, access);
  });
  return new Set(groups.map(({ id }) => id));
}

/** Minutes of some rows together: each trim that is not off yet is opened once. */
export function minutesFor(circuit: Circuit, probes: readonly ProofProbe[], open: ReadonlySet<string>): Minutes {
  const trim = new Set(
    probes.flatMap(({ reached }) =>
      reached.flatMap(({ access }) => (access === null ? [] : groupsToOpen(circuit, access))),
    ),
  );
  const opening = [...trim].reduce((sum, { id, minutes }) => sum + (open.has(id) ? 0 : minutes), 0);
  return probes.reduce((sum, probe) => sum + ownMinutes(circuit, probe), opening);
}

/** Minutes of a row by itself: both leads, the throw, and a second pair of hands where it takes one. */
function ownMinutes(circuit: Circuit, probe: ProofProbe): Minutes {
  const second = handsOf(circuit, probe) === 2 ? MINUTES.secondPerson : 0;
  return probe.reached.reduce((sum, { minutes }) => sum + minutes, MINUTES.throwControl + second);
}

/** Pairs of hands: one holds a control that springs back, two leads on pins take both of another. */
export function handsOf(circuit: Circuit, { reached: [at, other], check }: ProofProbe): 1 | 2 {
  const tries = triesFor(circuit, check);
  const position = tries.sweepOf === null ? undefined : check.condition.set?.[tries.sweepOf];
  const index = Math.max(0, tries.positions.indexOf(position ?? ""));
  return handsFor(circuit, at, tries, index, other !== undefined);
}

/** Rows in the order of their trim: what lies open first, then place by place. */
export function inPlaces(
  chosen: readonly number[],
  probes: readonly ProofProbe[],
  open: ReadonlySet<string>,
): readonly number[] {
  const placeOf = (probe: number): string => {
    const { access } = probes[probe]!.reached[0];
    return access === null || open.has(access) ? "" : access;
  };
  return [...chosen].sort((one, other) => {
    const [here, there] = [placeOf(one), placeOf(other)];
    return here === there ? one - other : here < there ? -1 : 1;
  });
}
