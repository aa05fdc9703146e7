import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { labelOf } from "./relabelPart.ts";

/** Says which vehicle the circuit is of; the empty text takes it away. Refuses `label-long` and `already-so`. */
export function changeVehicle(bench: Bench, typed: string): Outcome<Edit> {
  const vehicle = labelOf(typed);
  if (!vehicle.ok) return vehicle;
  const { value } = vehicle;
  if ((bench.circuit.vehicle ?? "") === value) return alreadySo(value || WIRING_NAMES.noVehicle);
  return editOf(bench, WIRING_NAMES.changeVehicle(value || WIRING_NAMES.noVehicle), [
    { change: "circuit", field: "vehicle", ...(value !== "" && { value }) },
  ]);
}
