import { parseAmount } from "../../base/amount.ts";
import type { Outcome } from "../../base/outcome.ts";
import type { Celsius } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, conditionEdit } from "../editOf.ts";

/** Sets the ambient as typed, "80" or "-10 degC"; the empty text is that of the tables again. Refuses a wrong amount. */
export function setAmbient(bench: Bench, typed: string): Outcome<Edit> {
  if (typed.trim() === "") return ambientEdit(bench, undefined);
  const celsius = parseAmount(typed, "degC");
  return celsius.ok ? ambientEdit(bench, celsius.value) : celsius;
}

function ambientEdit(bench: Bench, ambientC: Celsius | undefined): Outcome<Edit> {
  if (bench.condition.ambientC === ambientC) return alreadySo("The ambient");
  return conditionEdit(bench, EDIT_NAMES.ambient(ambientC ?? null), { ambientC });
}
