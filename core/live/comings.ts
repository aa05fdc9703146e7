import { remember } from "../base/memo.ts";
import { lotsFrom } from "../base/seed.ts";
import type { Seconds } from "../base/units.ts";
import { type Fault, faultText } from "./fault.ts";

/**
 * Faults that come and go change at whole steps alone, all of them together: no more than three times a second, which is as often
 * as anything may flash (WCAG 2.2, success criterion 2.3.1).
 */
export const STEP_SECONDS: Seconds = 1 / 3;

/** Longest spell that a fault is there, and that it is away, in steps; the shortest is one (guesses: a loose pin while it is shaken). */
const MOST_THERE = 6;
const MOST_AWAY = 15;
/** Spells of a pattern, each there and then away, before it begins anew. */
const SPELLS = 32;

/** A pattern: lengths of its spells in steps, there and away in turn. */
function spellsOf(pattern: number): readonly number[] {
  const lots = lotsFrom(pattern);
  const length = (most: number): number => 1 + Math.floor(lots() * most);
  return Array.from({ length: SPELLS }, () => [length(MOST_THERE), length(MOST_AWAY)]).flat();
}

/** Whether a fault that comes and goes by this pattern is there after so many steps. It is there at first; the same seed, the same pattern. */
export function isThere(pattern: number, steps: number): boolean {
  const spells = spellsOf(pattern);
  let left = steps % spells.reduce((sum, each) => sum + each, 0);
  for (const [index, length] of spells.entries()) {
    if (left < length) return index % 2 === 0;
    left -= length;
  }
  return true;
}

/** Texts of the faults that are away after so many steps. */
export function goneAt(faults: readonly Fault[], steps: number): readonly string[] {
  return faults.flatMap((fault) =>
    fault.pattern === undefined || isThere(fault.pattern, steps) ? [] : [faultText(fault)],
  );
}

/** The faults without those whose texts are named: the same list for the same question. */
export function withoutGone(faults: readonly Fault[], gone: readonly string[]): readonly Fault[] {
  if (gone.length === 0) return faults;
  const key = gone.join(" ");
  const known = asked(faults).get(key);
  if (known) return known;
  const there = faults.filter((fault) => !gone.includes(faultText(fault)));
  asked(faults).set(key, there);
  return there;
}

const asked = remember((_: readonly Fault[]) => new Map<string, readonly Fault[]>());
