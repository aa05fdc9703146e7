import { parseAmount } from "../../base/amount.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/** Highest revision that a circuit file takes. */
const MOST_REVISION = 1_000_000;

/** Gives the circuit another revision, a whole number; the empty text takes it away. Refuses `revision-number` and `already-so`. */
export function changeRevision(bench: Bench, typed: string): Outcome<Edit> {
  const read: Outcome<number | undefined> = typed.trim() === "" ? ok(undefined) : parseAmount(typed, "");
  const value = read.ok ? read.value : Number.NaN;
  if (value !== undefined && !(Number.isInteger(value) && value >= 0 && value <= MOST_REVISION)) {
    return refuse("revision-number", { typed: typed.trim(), most: MOST_REVISION });
  }
  const name = value === undefined ? WIRING_NAMES.noRevision : String(value);
  if (bench.circuit.revision === value) return alreadySo(name);
  return editOf(bench, WIRING_NAMES.changeRevision(name), [
    { change: "circuit", field: "revision", ...(value !== undefined && { value }) },
  ]);
}
