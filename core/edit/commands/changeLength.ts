import { parseAmount } from "../../base/amount.ts";
import type { WireId } from "../../base/ids.ts";
import type { Outcome } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { wireAmountEdit } from "../wireAmount.ts";

/**
 * Gives a wire another length: "3.2", "80 cm", "10 ft"; the empty text says that it is not known. Refuses `wire-unknown`,
 * a wrong amount, and `already-so`.
 */
export function changeLength(bench: Bench, wire: WireId, typed: string): Outcome<Edit> {
  const parse = (text: string): Outcome<number> => parseAmount(text, "m");
  return wireAmountEdit(bench, wire, typed, {
    field: "metres",
    parse,
    name: EDIT_NAMES.changeLength,
    unsaid: EDIT_NAMES.unknown,
  });
}
