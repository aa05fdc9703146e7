import type { PointId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { parsePoint } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, conditionEdit, without } from "../editOf.ts";

/**
 * Drives a pin of a control module on or off by hand, or with null leaves it to the module. The pin may be named by its
 * cavity. Refuses `condition-drive` for any other place, and `already-so`.
 */
export function driveOutput(bench: Bench, point: PointId, level: "on" | "off" | null): Outcome<Edit> {
  const found = parsePoint(bench.circuit, point);
  if (!found.ok) return found;
  const pin = found.value.kind === "cavity" ? found.value.carries : found.value.id;
  if (pin === undefined) return refuse("condition-drive", { point });
  const { drive } = bench.condition;
  if ((drive?.[pin] ?? null) === level) return alreadySo(pin);
  const others = without(drive, pin);
  const name = EDIT_NAMES.driveOutput(pin, level);
  return conditionEdit(bench, name, { drive: level === null ? others : { ...others, [pin]: level } });
}
