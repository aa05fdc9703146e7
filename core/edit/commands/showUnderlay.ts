import { type Outcome, refuse } from "../../base/outcome.ts";
import { LOOK_AMOUNTS, PRINTED_NAMES } from "../../base/words/printed.ts";
import type { Underlay } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { lyingOf, underlayEdit } from "../underlayFields.ts";

/** What of the look of a printed page is changed. */
export type Look = Partial<Pick<Underlay, "opacity" | "contrast" | "whiteOut" | "isHidden">>;

/** Limits of the look, as a circuit file takes them. */
export const LOOK_LIMITS = {
  opacity: { min: 0, max: 1 },
  contrast: { min: 0.5, max: 4 },
} as const;

/** Fades a printed page, changes its contrast, makes its paper white, hides it. Refuses `underlay-unknown`, `look-limits` and `already-so`. */
export function showUnderlay(bench: Bench, id: string, look: Look): Outcome<Edit> {
  const lying = lyingOf(bench.circuit, id);
  if (!lying.ok) return lying;
  for (const amount of ["opacity", "contrast"] as const) {
    const value = look[amount];
    const { min, max } = LOOK_LIMITS[amount];
    if (value !== undefined && !(value >= min && value <= max)) {
      return refuse("look-limits", { what: LOOK_AMOUNTS[amount], min, max, value });
    }
  }
  const { underlay } = lying.value;
  const next: Underlay = shown({ ...underlay, ...look });
  return underlayEdit(bench, lying.value, nameOf(underlay, look), next);
}

/** What is off is not written. */
function shown({ whiteOut, isHidden, ...rest }: Underlay): Underlay {
  return { ...rest, ...(whiteOut && { whiteOut }), ...(isHidden && { isHidden }) };
}

function nameOf({ title }: Underlay, look: Look): string {
  const names = PRINTED_NAMES.look;
  if (look.isHidden !== undefined) return names.isHidden(title, look.isHidden);
  if (look.whiteOut !== undefined) return names.whiteOut(title, look.whiteOut);
  return look.contrast === undefined ? names.opacity(title) : names.contrast(title);
}
