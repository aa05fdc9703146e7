import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { faultText } from "../../live/fault.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn } from "../editOf.ts";

/** Mends one fault by its text. A fuse that melted through it stays melted until it is replaced. Refuses `fault-absent`. */
export function healFault(bench: Bench, text: string): Outcome<Edit> {
  const faults = bench.faults.filter((fault) => faultText(fault) !== text);
  if (faults.length === bench.faults.length) return refuse("fault-absent", { fault: text });
  return editOf(bench, EDIT_NAMES.healFault(text), [
    goingOn(bench),
    { change: "bench", field: "faults", value: faults },
  ]);
}
