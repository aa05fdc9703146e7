import { remember } from "../base/memo.ts";
import type { Share } from "../base/units.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { type Possible, possibleFaults } from "../diagnose/possible.ts";
import { complaintOf } from "../diagnose/seen.ts";
import { triedOn, tryOut } from "../diagnose/suspects.ts";
import type { Fault } from "../live/fault.ts";
import type { Verdict } from "../live/judge.ts";
import { Rig } from "../live/rig.ts";

/** How a check fails. */
export type Failing = Exclude<Verdict, "works">;

/** A fault that makes a function check fail, and how the check fails with it. */
export interface Stocked {
  readonly possible: Possible;
  readonly word: Failing;
}

/** Told how far a long piece of work is, from 0 to 1. */
export type Heard = (done: Share) => void;

/**
 * The fault cupboard of one function check: every fault of the circuit that makes it fail, in the order of the parts, pins
 * and wires. Planted one after the other and solved; remembered with the circuit.
 */
export function cupboardFor(circuit: Circuit, check: FunctionCheck, heard?: Heard): readonly Stocked[] {
  const known = stockOf(circuit).get(check.id);
  if (known) return known;
  const tried = asTried(circuit, check);
  const rig = new Rig(circuit);
  const healthy = tryOut(rig, tried).doing;
  const stock: Stocked[] = [];
  let last = rig;
  const all = possibleFaults(circuit);
  for (const [index, possible] of all.entries()) {
    heard?.(index / all.length);
    last = new Rig(circuit, possible.faults, [], last);
    const { verdict } = triedOn(last, tried, healthy);
    if (verdict !== "works") stock.push({ possible, word: verdict });
  }
  stockOf(circuit).set(check.id, stock);
  return stock;
}

const stockOf = remember((_: Circuit) => new Map<string, readonly Stocked[]>());

/** How a check comes out with faults planted, tried once from good fuses. */
export function verdictWith(circuit: Circuit, check: FunctionCheck, faults: readonly Fault[]): Verdict {
  const tried = asTried(circuit, check);
  const healthy = tryOut(new Rig(circuit), tried).doing;
  return triedOn(new Rig(circuit, faults), tried, healthy).verdict;
}

/** The function checks that faults make fail, in the circuit's order, and how. */
export function failsWith(
  circuit: Circuit,
  faults: readonly Fault[],
): readonly { readonly check: FunctionCheck; readonly word: Failing }[] {
  return circuit.checks.flatMap((check) => {
    const word = verdictWith(circuit, check, faults);
    return word === "works" ? [] : [{ check, word }];
  });
}

/** A check as a complaint tries it: a module's output that the drawing does not decide is asked for. */
function asTried(circuit: Circuit, check: FunctionCheck): FunctionCheck {
  return complaintOf(circuit, check, undefined).check;
}
