import type { Amps } from "../base/units.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import type { Observed } from "../live/judge.ts";
import { SLEEPING_AMPS } from "../trade/sleeping.ts";
import { commanded } from "./commanded.ts";
import { checkFor, isDrain } from "./drain.ts";
import type { Observation } from "./suspects.ts";

/** A complaint with what else was seen. */
export interface Seen {
  readonly complaint: Observation;
  readonly others: readonly Observation[];
}

/**
 * A check that fails, seen as noted, else dead, or wrong where it should be off; of a battery that goes flat with the
 * amps expected asleep, the usual ones where nobody said.
 */
export function complaintOf(
  circuit: Circuit,
  check: FunctionCheck,
  word: Observed | undefined,
  sleepingAmps: Amps | null = null,
): Observation {
  if (isDrain(check, circuit)) return { check, word: "wrong", sleeping: sleepingAmps ?? SLEEPING_AMPS.amps };
  return { check: commanded(circuit, check), word: word ?? (check.expect === "off" ? "wrong" : "dead") };
}

/** The complaint of this id with what was noted of the other checks, by id; null where nothing is complained of. */
export function seenIn(
  circuit: Circuit,
  id: string | null,
  observed: Readonly<Record<string, Observed>>,
  sleepingAmps: Amps | null = null,
): Seen | null {
  const check = checkFor(circuit, id);
  if (!check) return null;
  const others = circuit.checks.flatMap((other): readonly Observation[] => {
    const word = observed[other.id];
    return word === undefined || other === check ? [] : [{ check: other, word }];
  });
  return { complaint: complaintOf(circuit, check, observed[check.id], sleepingAmps), others };
}
