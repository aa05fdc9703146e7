import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { faultText, parseFault } from "../../live/fault.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, goingOn } from "../editOf.ts";

/**
 * Puts a fault in, typed as `W13:open` or `X5-6:corroded=20`, and shows the circuit with it. The same fault with another
 * value takes the place of the one before. Refuses what no fault can be, and `already-so`.
 */
export function plantFault(bench: Bench, typed: string): Outcome<Edit> {
  const fault = parseFault(bench.circuit, typed);
  if (!fault.ok) return fault;
  const { target, mode } = fault.value;
  const text = faultText(fault.value);
  const at = bench.faults.findIndex((other) => other.target === target && other.mode === mode);
  if (at >= 0 && faultText(bench.faults[at]!) === text) return alreadySo(text);
  const faults =
    at < 0 ? [...bench.faults, fault.value] : bench.faults.map((other, index) => (index === at ? fault.value : other));
  return editOf(bench, EDIT_NAMES.plantFault(text), [
    goingOn(bench),
    { change: "bench", field: "faults", value: faults },
    { change: "bench", field: "showFaults", value: true },
  ]);
}
