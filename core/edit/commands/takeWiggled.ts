import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Wiggled } from "../../diagnose/wiggle.ts";
import { isWiggled, swingText } from "../../diagnose/wiggleEntry.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/**
 * Notes the lowest and the highest while one place was moved, in place of what was noted of it before; null takes the note
 * back. Refuses `wiggle-shape` and `already-so`.
 */
export function takeWiggled(bench: Bench, place: string, swing: Omit<Wiggled, "place"> | null): Outcome<Edit> {
  const noted = swing === null ? null : { place, ...swing };
  if (noted !== null && !isWiggled(noted)) return refuse("wiggle-shape");
  const before = bench.wiggled.find((each) => each.place === place);
  const isSame = noted === null ? !before : before !== undefined && swingText(before) === swingText(noted);
  if (isSame) return alreadySo(place);
  const others = bench.wiggled.filter((each) => each.place !== place);
  const value = noted === null ? others : [...others, noted];
  return editOf(bench, EDIT_NAMES.takeWiggled(place), [{ change: "bench", field: "wiggled", value }]);
}
