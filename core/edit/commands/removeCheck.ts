import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { editOf, without } from "../editOf.ts";

/** Takes a function check out, with what was noted of it; the complaint goes with it. Refuses `no-check`. */
export function removeCheck(bench: Bench, id: string): Outcome<Edit> {
  const { circuit, complaint, observed } = bench;
  const check = circuit.checks.find((each) => each.id === id);
  if (!check) return refuse("no-check", { check: id });
  const changes: readonly Change[] = [
    { change: "remove", list: "checks", id },
    ...(complaint === id ? [{ change: "bench", field: "complaint", value: null } as const] : []),
    ...(Object.hasOwn(observed, id)
      ? [{ change: "bench", field: "observed", value: without(observed, id) } as const]
      : []),
  ];
  return editOf(bench, WIRING_NAMES.removeCheck(check.label), changes);
}
