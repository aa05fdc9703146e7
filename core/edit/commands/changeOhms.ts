import { parseAmount } from "../../base/amount.ts";
import type { WireId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { wireAmountEdit } from "../wireAmount.ts";

/**
 * Gives a wire measured ohms, "12 mohm" or "0.5"; with the empty text they follow from size and length again. Refuses
 * `wire-unknown`, a wrong amount, and `already-so`.
 */
export function changeOhms(bench: Bench, wire: WireId, typed: string): Outcome<Edit> {
  const parse = (text: string): Outcome<number> => parseAmount(text, "ohm");
  return wireAmountEdit(bench, wire, typed, {
    field: "ohms",
    parse,
    name: EDIT_NAMES.changeOhms,
    unsaid: EDIT_NAMES.fromSize,
  });
}
