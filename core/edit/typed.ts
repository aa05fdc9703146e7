import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { labelOf } from "./commands/relabelPart.ts";

/** Most cautions of one thing, as a circuit file takes them. */
const MOST_CAUTIONS = 40;

/** A label that must say something. Refuses `label-empty` and `label-long`. */
export function labelNeeded(typed: string): Outcome<string> {
  const label = labelOf(typed);
  return label.ok && label.value === "" ? refuse("label-empty") : label;
}

/** Cautions as typed, without empty ones. Refuses `cautions-many` and `label-long`. */
export function cautionsOf(typed: readonly string[]): Outcome<readonly string[]> {
  const cautions: string[] = [];
  for (const text of typed) {
    const caution = labelOf(text);
    if (!caution.ok) return caution;
    if (caution.value !== "") cautions.push(caution.value);
  }
  return cautions.length > MOST_CAUTIONS ? refuse("cautions-many", { most: MOST_CAUTIONS }) : ok(cautions);
}
