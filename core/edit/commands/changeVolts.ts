import { parseAmount } from "../../base/amount.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import type { Volts } from "../../base/units.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, goingOn } from "../editOf.ts";

/** Fewest nominal volts that a circuit file takes. */
const LEAST_VOLTS: Volts = 1;
/** Above this many volts DC the work belongs to licensed people (UN R100, class A ends at 60 V DC). */
const MOST_VOLTS: Volts = 60;

/**
 * Gives the circuit other nominal volts, "24 V"; settings that a part does not write follow them. Refuses a wrong amount,
 * `volts-least`, `over-60-volts` and `already-so`.
 */
export function changeVolts(bench: Bench, typed: string): Outcome<Edit> {
  const volts = parseAmount(typed, "V");
  if (!volts.ok) return volts;
  const { value } = volts;
  if (value > MOST_VOLTS) return refuse("over-60-volts", { volts: value });
  if (value < LEAST_VOLTS) return refuse("volts-least", { least: LEAST_VOLTS, volts: value });
  if (bench.circuit.nominalVolts === value) return alreadySo(`${value} V`);
  return editOf(bench, WIRING_NAMES.changeVolts(value), [
    goingOn(bench),
    { change: "circuit", field: "nominalVolts", value },
  ]);
}
