import type { Refusal } from "../base/outcome.ts";

/**
 * Something that does not hold together in a circuit that was read: `problem` where the drawing is wrong, `loose-end`
 * where it is not finished. `sentence` of `core/base/words.ts` says it; `at` is the part, wire or point to go to.
 */
export interface Problem extends Refusal {
  readonly severity: "problem" | "loose-end";
  readonly at: string;
}

/** A problem of this code at a part, wire or point. */
export function problem(code: string, at: string, about: Refusal["about"] = {}): Problem {
  return { code, severity: "problem", at, about };
}

/** A loose end of this code at a part, wire or point. */
export function looseEnd(code: string, at: string, about: Refusal["about"] = {}): Problem {
  return { code, severity: "loose-end", at, about };
}
