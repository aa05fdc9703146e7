import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Possible, possibleFaults } from "../../core/diagnose/possible.ts";
import type { GradedFault } from "../../core/lesson/graded.ts";
import { placeName } from "../diagnose/suspectPlaces.ts";
import { typedWords } from "../state/finding.ts";
import { targetsOf } from "../words/fault.ts";

/** All that can be wrong with one thing, and where it is reached. */
export interface CupboardRow {
  readonly target: string;
  /** What the thing is, in words. */
  readonly about: string;
  readonly place: string;
  readonly faults: readonly Possible[];
}

/** Things by the place where they are reached. */
export interface CupboardPlace {
  readonly name: string;
  readonly rows: readonly CupboardRow[];
}

const rowsOf = remember((circuit: Circuit): readonly CupboardRow[] => {
  const about = new Map(targetsOf(circuit).map((each) => [each.id, each.about]));
  const rows = new Map<string, Possible[]>();
  for (const possible of possibleFaults(circuit)) {
    // What befalls a whole plug stands under the plug.
    const target = possible.repair.split("|")[0]!;
    const known = rows.get(target);
    if (known) known.push(possible);
    else rows.set(target, [possible]);
  }
  return [...rows].map(([target, faults]) => ({
    target,
    about: about.get(target) ?? circuit.connectors.find(({ id }) => id === target)?.label ?? "plug",
    place: placeName(circuit, faults[0]!.faults[0]!.target),
    faults,
  }));
});

/** The whole cupboard by place, narrowed to rows and faults that meet every word typed. */
export function cupboardPlaces(circuit: Circuit, typed: string): readonly CupboardPlace[] {
  const words = typedWords(typed);
  const places = new Map<string, CupboardRow[]>();
  for (const row of rowsOf(circuit)) {
    const head = `${row.target} ${row.about} ${row.place}`.toLowerCase();
    const faults = row.faults.filter(({ title, id }) => {
      const whole = `${head} ${title} ${id}`.toLowerCase();
      return words.every((word) => whole.includes(word));
    });
    if (faults.length === 0) continue;
    const known = places.get(row.place);
    const met = { ...row, faults };
    if (known) known.push(met);
    else places.set(row.place, [met]);
  }
  return [...places].map(([name, rows]) => ({ name, rows }));
}

/** Graded faults that meet every word typed. */
export function gradedRows(graded: readonly GradedFault[], typed: string): readonly GradedFault[] {
  const words = typedWords(typed);
  return graded.filter(({ possible: { title, id } }) => {
    const whole = `${title} ${id}`.toLowerCase();
    return words.every((word) => whole.includes(word));
  });
}
