import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import { type Change, changed } from "../change.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { linkPairsOn, linksJoined } from "../linksJoined.ts";
import { pageOf } from "../pageFields.ts";
import { broughtOver } from "../pagesMerged.ts";
import { trimming } from "../trim.ts";

/**
 * Makes one drawing of two pages: all of the first comes onto the second, which grows as far as it must, and the first goes.
 * Two page links that linked only to one another become one wire where the wires at them are alike; others stay. Refuses
 * `page-unknown`, `page-itself` and `page-size`.
 */
export function mergePages(bench: Bench, id: string, goal: string): Outcome<Edit> {
  const { circuit } = bench;
  const [from, onto] = [pageOf(circuit, id), pageOf(circuit, goal)];
  if (!from.ok) return from;
  if (!onto.ok) return onto;
  if (id === goal) return refuse("page-itself", { page: from.value.title });
  const over = broughtOver(circuit, from.value, onto.value);
  if (!over.ok) return over;
  let now: Doing = { bench, changes: [] };
  const make = (changes: readonly Change[]): Outcome<Doing> => done(now, changes);
  const first = make([...over.value, { change: "remove", list: "pages", id }]);
  if (!first.ok) return first;
  now = first.value;
  for (const pair of linkPairsOn(now.bench.circuit, goal)) {
    const wasApart = circuit.placement.parts[pair[0].id]?.page !== circuit.placement.parts[pair[1].id]?.page;
    const next = make((wasApart && linksJoined(now.bench, pair)) || []);
    if (!next.ok) return next;
    now = next.value;
  }
  const trimmed = trimming(
    bench,
    now.changes.filter((change) => !isUndone(change, now.changes)),
  );
  if (!trimmed.ok) return trimmed;
  return editOf(bench, WIRING_NAMES.mergePages(from.value.title, onto.value.title), trimmed.value.changes);
}

/** Changes made so far, and the bench after them. */
interface Doing {
  readonly bench: Bench;
  readonly changes: readonly Change[];
}

/** Whether a place or bends are set here of what goes by another of these changes. */
function isUndone(change: Change, all: readonly Change[]): boolean {
  if (change.change !== "entry" || change.value === undefined) return false;
  const { record, key } = change;
  return all.some(
    (each) => each.change === "entry" && each.record === record && each.key === key && each.value === undefined,
  );
}

function done({ bench, changes: before }: Doing, changes: readonly Change[]): Outcome<Doing> {
  let now = bench;
  for (const change of changes) {
    const step = changed(now, change);
    if (!step.ok) return step;
    now = step.value.bench;
  }
  return { ok: true, value: { bench: now, changes: [...before, ...changes] } };
}
