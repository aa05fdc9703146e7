import type { PartId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { EDIT_NAMES } from "../base/words/edit.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { conditionRefusal } from "../live/condition.ts";
import { fuseOf } from "../live/instruments/clipped.ts";
import { LEFT_BY_HAND, type PartStates } from "../live/standing.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Before, Bench } from "./bench.ts";
import type { Change } from "./change.ts";
import { apply, type Edit } from "./edit.ts";
import { liveNow } from "./liveNow.ts";

/** An edit of these changes, if the bench takes it; refuses as `apply` does. */
export function editOf(bench: Bench, name: string, changes: readonly Change[]): Outcome<Edit> {
  const edit: Edit = { name, changes };
  const applied = apply(bench, edit);
  return applied.ok ? ok(edit) : applied;
}

/** The change that `goingOn` makes. */
type GoingOn = { readonly change: "bench"; readonly field: "before"; readonly value: Before };

/** The change by which live state goes on from where it stands now: it goes with every change that current can feel. */
export function goingOn(bench: Bench): GoingOn {
  return { change: "bench", field: "before", value: { condition: bench.condition, ...liveNow(bench).after } };
}

/** Where the circuit goes on from once the fuse of an instrument is a good one. */
export function withGoodFuse(bench: Bench, id: string): Before {
  const { condition, good, now } = goingOn(bench).value;
  const fuse = fuseOf(id);
  return { condition, good: without(good, fuse), now: without(now, fuse) };
}

/** A condition of which parts may say nothing. */
type Loose = { readonly [F in keyof Condition]: Condition[F] | undefined };

/** An edit that brings the bench to another condition, from where it stands. Refuses what cannot be reached. */
export function conditionEdit(bench: Bench, name: string, changed: Loose): Outcome<Edit> {
  const condition = trimmed({ ...bench.condition, ...changed });
  const refusal = conditionRefusal(bench.circuit, condition);
  if (refusal) return { ok: false, refusal };
  return editOf(bench, name, [goingOn(bench), { change: "bench", field: "condition", value: condition }]);
}

/** A condition without what says nothing: empty lists, a battery that is on, an engine that stands. */
export function trimmed(condition: Loose): Condition {
  const says = ([, value]: [string, unknown]): boolean => {
    if (value === undefined || value === false) return false;
    return typeof value !== "object" || Object.keys(value as object).length > 0;
  };
  return Object.fromEntries(Object.entries(condition).filter(says)) as Condition;
}

/** A record without one of its keys. */
export function without<V>(record: Readonly<Record<string, V>> | undefined, key: string): Readonly<Record<string, V>> {
  return Object.fromEntries(Object.entries(record ?? {}).filter(([name]) => name !== key));
}

/** Where everything stands at rest: relays released, but what melted or tripped waits for a hand. */
export function atRest(bench: Bench): Before {
  const { good, now } = liveNow(bench).after;
  return { condition: {}, good: onlyByHand(good), now: onlyByHand(now) };
}

/** Whether this is where things stand at rest, with nothing set and nothing to release. */
export function isRest({ condition, good, now }: Before): boolean {
  return Object.keys(condition).length === 0 && !hasReleasable(good) && !hasReleasable(now);
}

/** Whether a part has moved by itself and could be released: a relay that has pulled in. */
export function hasReleasable(states: PartStates): boolean {
  return Object.values(states).some((state) => !LEFT_BY_HAND.includes(state));
}

/** Only the states that a part leaves by a person's hand. */
function onlyByHand(states: PartStates): PartStates {
  return Object.fromEntries(Object.entries(states).filter(([, state]) => LEFT_BY_HAND.includes(state)));
}

/** The states without those that a part leaves only by a person's hand: as they are once fuses are good. */
export function withGoodFuses(states: PartStates): PartStates {
  return Object.fromEntries(Object.entries(states).filter(([, state]) => !LEFT_BY_HAND.includes(state)));
}

/** A part as edits name it: "relay K2"; the id alone where the part is not there. */
export function nameOf(circuit: Circuit, id: PartId): string {
  const part = circuit.parts.find((candidate) => candidate.id === id);
  const title = part && kindOf(part.kind)?.title;
  return title ? `${lowerCase(title)} ${id}` : id;
}

/** A title in the middle of a sentence; what is written in capitals alone stays so. */
export function lowerCase(title: string): string {
  return title === title.toUpperCase() ? title : title.toLowerCase();
}

/** Parts, wires and connectors as edits name them: "relay K2", "wire W13"; "3 parts" or "3 things" where there are several. */
export function nameOfAll(circuit: Circuit, ids: readonly string[]): string {
  const [first = "", ...others] = new Set(ids);
  const isPart = (id: string): boolean => circuit.parts.some((part) => part.id === id);
  if (others.length > 0) {
    const count = others.length + 1;
    return [first, ...others].every(isPart) ? EDIT_NAMES.parts(count) : EDIT_NAMES.things(count);
  }
  if (isPart(first)) return nameOf(circuit, first);
  if (circuit.wires.some(({ id }) => id === first)) return EDIT_NAMES.wire(first);
  return circuit.connectors.some(({ id }) => id === first) ? EDIT_NAMES.connector(first) : first;
}

/** The refusal of an edit that would change nothing. */
export function alreadySo(what: string): Outcome<never> {
  return refuse("already-so", { what });
}
