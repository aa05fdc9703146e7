import type { Outcome } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { lyingOf, underlayEdit } from "../underlayFields.ts";

/** Locks a printed page where it lies, or unlocks it. Refuses `underlay-unknown` and `already-so`. */
export function lockUnderlay(bench: Bench, id: string, isLocked: boolean): Outcome<Edit> {
  const lying = lyingOf(bench.circuit, id);
  if (!lying.ok) return lying;
  const { isLocked: _, ...loose } = lying.value.underlay;
  const next = isLocked ? { ...loose, isLocked } : loose;
  return underlayEdit(bench, lying.value, PRINTED_NAMES.lock(loose.title, isLocked), next);
}
