import { capital } from "../../core/base/capital.ts";
import { controlAt } from "../../core/circuit/points.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { changesBetween, saidChanges } from "../../core/edit/changesBetween.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import type { Live } from "../../core/live/live.ts";
import { conditionPhrase, thrownWords } from "./condition.ts";

/** The live states that are shown before and after something that was done. */
export type ShownLives = readonly [was: Live, is: Live];

/**
 * What a screen reader is told after an edit: what was done, and what changed by it in what is shown. Null where the bench is
 * the same.
 */
export function saidBetween(
  before: Bench,
  after: Bench,
  edit: string | null,
  [was, is]: ShownLives = [liveNow(before).shown, liveNow(after).shown],
): string | null {
  if (before === after) return null;
  const done = doneWords(before, after) ?? capital(edit ?? "");
  if (was === is) return done === "" ? null : `${done}.`;
  return saidChanges(done, changesBetween(was, is));
}

/** What changes once the wires are shown with a suspect, by its title, or again as they are. */
export function saidWith(suspect: string | null, [was, is]: ShownLives): string {
  return saidChanges(suspect === null ? "Wires as they are" : `Wires with ${suspect}`, changesBetween(was, is));
}

/** That an edit was undone: "undone: W13 broken". Null where there was none. */
export function undoneWords(edit: string | null): string | null {
  return edit && `undone: ${edit}`;
}

/** One throw in its own words, a new condition as a whole; null where the condition is the same. */
function doneWords(before: Bench, after: Bench): string | null {
  if (before.condition === after.condition) return null;
  const { set: was = {}, ...otherwise } = before.condition;
  const { set: is = {}, ...others } = after.condition;
  const keys = [...new Set([...Object.keys(was), ...Object.keys(is)])].filter((key) => was[key] !== is[key]);
  const [key] = keys;
  const isOnlySet = JSON.stringify(otherwise) === JSON.stringify(others);
  if (isOnlySet && key === undefined) return null;
  if (!isOnlySet || key === undefined || keys.length !== 1) return conditionPhrase(after.circuit, after.condition);
  const position = is[key] ?? controlAt(after.circuit, key)?.rest ?? "";
  return capital(thrownWords(after.circuit, key, position));
}
