import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { checkFor } from "../../diagnose/drain.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, without } from "../editOf.ts";

/**
 * Chooses the function check that is complained of, or with null none. A note that it works is taken back. Refuses
 * `no-check` and `already-so`.
 */
export function chooseComplaint(bench: Bench, check: string | null): Outcome<Edit> {
  const found = checkFor(bench.circuit, check);
  if (check !== null && !found) return refuse("no-check", { check });
  if (bench.complaint === check) return alreadySo("The complaint");
  const isDenied = check !== null && bench.observed[check] === "works";
  const changes: readonly Change[] = [
    { change: "bench", field: "complaint", value: check },
    ...(isDenied ? [{ change: "bench", field: "observed", value: without(bench.observed, check) } as const] : []),
  ];
  return editOf(bench, EDIT_NAMES.chooseComplaint(found?.label ?? null), changes);
}
