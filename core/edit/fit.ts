import { type Refusal, refuse } from "../base/outcome.ts";
import { isReachable } from "../circuit/checkReach.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { parsePoint, partAt, pointAt } from "../circuit/points.ts";
import { restPose } from "../circuit/sheetPose.ts";
import { underlaysOf } from "../circuit/underlays.ts";
import { CIRCUMSTANCES } from "../diagnose/comesAndGoes.ts";
import { checkFor } from "../diagnose/drain.ts";
import { isJobAbout } from "../diagnose/job.ts";
import { isReading } from "../diagnose/reading.ts";
import { areFactors } from "../diagnose/weightText.ts";
import { isWiggled } from "../diagnose/wiggleEntry.ts";
import { conditionRefusal } from "../live/condition.ts";
import { faultText, parseFault } from "../live/fault.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { End, Part } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Bench } from "./bench.ts";
import type { Change } from "./change.ts";
import { instrumentsRefusal } from "./clipping.ts";
import { focusRefusal } from "./sceneFocus.ts";
import { questionsRefusal } from "./sceneQuestions.ts";

/** Fields that name nothing and that nothing names: changing one cannot leave a name without a thing. */
const PLAIN: readonly string[] = [
  "label",
  "title",
  "colour",
  "seen",
  "mm2",
  "metres",
  "ohms",
  "minutes",
  "hands",
  "cautions",
];

/**
 * Why a bench cannot be as it is after these changes: a wire to a terminal that is gone, a fault on a part that is
 * gone, a part on a page that is not there. Null where all holds. Only what the changes can have touched is looked at.
 */
export function fitRefusal(bench: Bench, changes: readonly Change[]): Refusal | null {
  const { circuit } = bench;
  for (const change of changes) {
    const refusal = change.change === "entry" ? entryRefusal(circuit, change) : null;
    if (refusal) return refusal;
  }
  const touchesNames = changes.some(
    (change) =>
      change.change === "add" ||
      change.change === "remove" ||
      (change.change === "item" && !PLAIN.includes(change.field)) ||
      (change.change === "circuit" && change.field === "scenes"),
  );
  if (touchesNames) {
    const refusal = partsRefusal(circuit, changes) ?? circuitRefusal(circuit);
    if (refusal) return refusal;
  }
  return touchesNames || changes.some(({ change }) => change === "bench") ? benchRefusal(bench) : null;
}

/** The first refusal of a list, or null. */
function first<T>(list: Iterable<T>, look: (item: T) => Refusal | null): Refusal | null {
  for (const item of list) {
    const refusal = look(item);
    if (refusal) return refusal;
  }
  return null;
}

function unless(holds: boolean, code: string, about: Refusal["about"]): Refusal | null {
  return holds ? null : refuse(code, about).refusal;
}

/** Looks without the index of points, which a drag would build anew at every step. */
function entryRefusal(circuit: Circuit, change: Extract<Change, { change: "entry" }>): Refusal | null {
  const { record, key, value } = change;
  if (value === undefined) return null;
  const has = (list: readonly { readonly id: string }[], id: string): boolean => list.some((item) => item.id === id);
  if (record === "bends") return unless(has(circuit.wires, key), "wire-unknown", { wire: key });
  if (record === "reach") return unless(isReachable(circuit, key), "reach-unknown", { key });
  const { page } = change.value!;
  return (
    unless(has(circuit.parts, key), "part-unknown", { part: key }) ??
    unless(has(circuit.pages, page), "page-unknown", { page })
  );
}

// ---------------------------------------------------------------- the circuit

function partsRefusal(circuit: Circuit, changes: readonly Change[]): Refusal | null {
  const touched = changes.flatMap((change) => {
    if (change.change === "add" && change.list === "parts") return [change.item.id];
    return change.change === "item" && change.list === "parts" ? [change.id] : [];
  });
  return first(new Set(touched), (id) => {
    const part = partAt(circuit, id);
    return part ? terminalsRefusal(circuit, part) : null;
  });
}

/** A part's own terminal names must be those that its kind draws and models with its settings. */
function terminalsRefusal(circuit: Circuit, part: Part): Refusal | null {
  const kind = kindOf(part.kind);
  if (!kind) return refuse("part-kind", { part: part.id, kind: part.kind }).refusal;
  const view = viewOf(kind, part, circuit.nominalVolts);
  const isEnd = (end: End | undefined): boolean =>
    end !== undefined && (/^[~=]/.test(end) || view.terminals.includes(end));
  const isModelled = kind.model(view).every(({ a, b }) => isEnd(a) && isEnd(b));
  const drawn = isModelled ? Object.keys(kind.symbol(view, restPose(kind, view), "iec").terminals) : [];
  const fits = drawn.length === view.terminals.length && view.terminals.every((terminal) => drawn.includes(terminal));
  const usual = kind.terminals(part, part.settings ?? {}).join(", ");
  return unless(fits, "part-terminals", { part: part.id, kind: kind.name, usual });
}

/** What in the circuit names a part, point, page or group that is not there. */
function circuitRefusal(circuit: Circuit): Refusal | null {
  const pages = new Set(circuit.pages.map(({ id }) => id));
  const wires = new Set(circuit.wires.map(({ id }) => id));
  const groups = new Set(circuit.access.map(({ id }) => id));
  const groupRefusal = (access: string | undefined): Refusal | null =>
    access === undefined ? null : unless(groups.has(access), "access-unknown", { access });
  return (
    first(circuit.wires, ({ from, to }) => pointRefusal(circuit, from) ?? pointRefusal(circuit, to)) ??
    first(circuit.connectors, ({ cavities }) =>
      first(Object.values(cavities ?? {}), (carries) => pointRefusal(circuit, carries)),
    ) ??
    first(Object.entries(circuit.placement.parts), ([part, { page }]) =>
      partAt(circuit, part)
        ? unless(pages.has(page), "page-unknown", { page })
        : refuse("part-unknown", { part }).refusal,
    ) ??
    first(Object.keys(circuit.placement.wires), (wire) => unless(wires.has(wire), "wire-unknown", { wire })) ??
    first(Object.entries(circuit.reach), ([key, { access }]) =>
      isReachable(circuit, key) ? groupRefusal(access) : refuse("reach-unknown", { key }).refusal,
    ) ??
    first(circuit.access, ({ after }) => first(after ?? [], groupRefusal)) ??
    first(circuit.checks, ({ load, condition }) =>
      partAt(circuit, load) ? namesRefusal(circuit, condition) : refuse("part-unknown", { part: load }).refusal,
    ) ??
    first(
      circuit.scenes,
      ({ condition, focus = [], questions = [] }) =>
        namesRefusal(circuit, condition) ?? focusRefusal(circuit, focus) ?? questionsRefusal(circuit, questions),
    ) ??
    tiesRefusal(circuit)
  );
}

/** What is tied to a printed page that is not there. */
function tiesRefusal(circuit: Circuit): Refusal | null {
  const underlays = new Set(underlaysOf(circuit).map(({ underlay }) => underlay.id));
  return first([...circuit.parts, ...circuit.wires], ({ printed }) =>
    printed ? unless(underlays.has(printed.underlay), "underlay-unknown", { underlay: printed.underlay }) : null,
  );
}

/** A written condition may say more than the bench can be brought to; what it names must be there. */
function namesRefusal(circuit: Circuit, { ambientC: _, drive, ...condition }: Condition): Refusal | null {
  return (
    conditionRefusal(circuit, condition) ?? first(Object.keys(drive ?? {}), (point) => pointRefusal(circuit, point))
  );
}

function pointRefusal(circuit: Circuit, id: string): Refusal | null {
  if (pointAt(circuit, id)) return null;
  const read = parsePoint(circuit, id);
  return read.ok ? null : read.refusal;
}

// ---------------------------------------------------------------- what stands on it

function benchRefusal({
  circuit,
  condition,
  before,
  faults,
  observed,
  complaint,
  readings,
  wiggled,
  when,
  job,
  weights,
  clipped,
}: Bench): Refusal | null {
  const isKnown = (check: string): boolean => circuit.checks.some(({ id }) => id === check);
  return (
    conditionRefusal(circuit, condition) ??
    conditionRefusal(circuit, before.condition) ??
    unless(readings.every(isReading), "reading-shape", {}) ??
    unless(wiggled.every(isWiggled), "wiggle-shape", {}) ??
    unless(
      when.every((each) => CIRCUMSTANCES.includes(each)),
      "job-shape",
      {},
    ) ??
    unless(areFactors(weights), "weight-shape", {}) ??
    instrumentsRefusal(circuit, clipped) ??
    unless(job === null || isJobAbout(job), "job-shape", {}) ??
    first(faults, (fault) => {
      const read = parseFault(circuit, faultText(fault));
      return read.ok ? null : read.refusal;
    }) ??
    first(Object.keys(observed), (check) => unless(isKnown(check), "no-check", { check })) ??
    unless(complaint === null || checkFor(circuit, complaint) !== null, "no-check", { check: complaint ?? "" })
  );
}
