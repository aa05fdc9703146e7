import { remember } from "../../core/base/memo.ts";
import type { Amps, Volts } from "../../core/base/units.ts";
import { sentence } from "../../core/base/words.ts";
import type { Circuit, Condition, FunctionCheck, Page } from "../../core/circuit/circuit.ts";
import { type CircuitControl, controlsOf, partAt } from "../../core/circuit/points.ts";
import type { Circumstance } from "../../core/diagnose/comesAndGoes.ts";
import { checkFor } from "../../core/diagnose/drain.ts";
import type { JobAbout } from "../../core/diagnose/job.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import type { Suspect } from "../../core/diagnose/step.ts";
import { positionNow as positionOf } from "../../core/edit/commands/throwControl.ts";
import { namesOf } from "../../core/edit/history.ts";
import { instrumentsNow } from "../../core/edit/instrumentsNow.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import type { Differs } from "../../core/live/differences.ts";
import type { Fault } from "../../core/live/fault.ts";
import type { Clipped } from "../../core/live/instruments/clipped.ts";
import type { Showing } from "../../core/live/instruments/showing.ts";
import type { Observed, Verdict } from "../../core/live/judge.ts";
import type { Live } from "../../core/live/live.ts";
import { LEFT_BY_HAND } from "../../core/live/standing.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { partStands } from "../words/part.ts";
import { countsOn, type StateCount } from "./counts.ts";
import { type AppState, type Asking, benchOf, type Open, type Thing } from "./state.ts";
import { isCoveredOnSheet, liveOnSheet, shownWith, suspectOnSheet } from "./suspectNow.ts";
import type { Trace } from "./traces.ts";

// What components select. Each gives what the state already holds, or what is remembered for it, so that nothing renders
// but what changed.

const NOTHING: readonly never[] = [];
const NOT_ASKED: Asking<never> = { answer: null, isOld: false, trouble: null };
const AT_REST: Condition = {};
const UNSEEN: Readonly<Record<string, Observed>> = {};

/** The circuit on the bench. */
export function circuitNow(state: AppState): Circuit | null {
  return benchOf(state)?.circuit ?? null;
}

/** The circuit that is drawn: of the bench, or of the exercise on a learner's. */
export function circuitInSight(state: AppState): Circuit | null {
  return state.learning?.attempt.exercise.circuit ?? circuitNow(state);
}

/** Why no probe is led into the circuit, in a sentence; null where one may be. */
export function notProbedNow(state: AppState): string | null {
  const circuit = circuitNow(state);
  const probed = circuit && mayBeProbed(wiringOf(circuit));
  return probed && !probed.ok ? sentence(probed.refusal) : null;
}

/** The condition on the bench. */
export function conditionNow(state: AppState): Condition {
  return benchOf(state)?.condition ?? AT_REST;
}

/** The live state that is shown: with the faults, with nothing wrong, or with the suspect in sight. */
export function liveShown({ open }: AppState): Live | null {
  return open && liveOnSheet(open).shown;
}

/** The suspect that the drawing shows while the view of suspects is open. */
export function suspectNow({ open }: AppState): Suspect | null {
  return open && suspectOnSheet(open);
}

/** Whether the wires are shown as they would be with that suspect. */
export function withSuspectNow({ open }: AppState): boolean {
  return open !== null && shownWith(open) !== null;
}

/** The pages of the circuit. */
export function pagesNow(state: AppState): readonly Page[] {
  return benchOf(state)?.circuit.pages ?? NOTHING;
}

/** The position a control stands in. */
export function positionNow(state: AppState, control: CircuitControl): string {
  const bench = benchOf(state);
  return (bench && positionOf(bench, control.key)) ?? control.rest;
}

/** Whether a finger or key holds a control just now. */
export function isHeld({ open }: AppState, control: string): boolean {
  return open?.held.includes(control) === true;
}

const countsByPage = remember((_: Live) => new Map<string, readonly StateCount[]>());

/** Wires of the page shown by their states. */
export function countsNow(state: AppState): readonly StateCount[] {
  const { open } = state;
  const live = liveShown(state);
  if (!open || !live) return NOTHING;
  const known = countsByPage(live);
  const counts = known.get(open.page) ?? countsOn(open.desk.bench.circuit, open.page, live);
  known.set(open.page, counts);
  return counts;
}

/** What undo would take back, or null. */
export function undoName({ open }: AppState): string | null {
  return open && namesOf(open.desk).undo;
}

/** What redo would do again, or null. */
export function redoName({ open }: AppState): string | null {
  return open && namesOf(open.desk).redo;
}

/** The check that is complained of. */
export function complaintNow(state: AppState): FunctionCheck | null {
  const bench = benchOf(state);
  return bench ? checkFor(bench.circuit, bench.complaint) : null;
}

/** What was seen of the checks. */
export function observedNow(state: AppState): Readonly<Record<string, Observed>> {
  return benchOf(state)?.observed ?? UNSEEN;
}

/** What was read on the vehicle, in order. */
export function readingsNow(state: AppState): readonly Reading[] {
  return benchOf(state)?.readings ?? NOTHING;
}

/** What brings on a complaint that comes and goes. */
export function whenNow(state: AppState): readonly Circumstance[] {
  return benchOf(state)?.when ?? NOTHING;
}

/** Amps expected of the sleeping vehicle, where they were said. */
export function sleepingAmpsNow(state: AppState): Amps | null {
  return benchOf(state)?.sleepingAmps ?? null;
}

/** Volts of the battery at rest, where they were measured. */
export function batteryVoltsNow(state: AppState): Volts | null {
  return benchOf(state)?.batteryVolts ?? null;
}

/** The job in hand, without what every bench holds. */
export function jobNow(state: AppState): JobAbout | null {
  return benchOf(state)?.job ?? null;
}

/** The probe order, or the last one while a new one is worked out. */
export function orderNow({ open }: AppState): Open["order"] {
  return open?.order ?? NOT_ASKED;
}

/** What proves the repair of what was found. */
export function proofNow({ open }: AppState): Open["proof"] {
  return open?.proof ?? NOT_ASKED;
}

/** What a handover page says, and what was read after the repair. */
export function handoverNow({ open }: AppState): Open["printing"]["handover"] {
  return open?.printing.handover;
}

/** What was read after the repair: for the job in hand, else for the handover page. */
export function readAfterNow({ open }: AppState): readonly Reading[] {
  return open?.desk.bench.job?.after ?? open?.printing.handover?.readings ?? NOTHING;
}

/** The position tables shown. */
export function tablesNow({ open }: AppState): Open["tables"] {
  return open?.tables ?? NOT_ASKED;
}

/** What hangs on the place that was asked for. */
export function sharesNow({ open }: AppState): Open["shares"] {
  return open?.shares ?? NOT_ASKED;
}

/** The sneak paths found. */
export function sneaksNow({ open }: AppState): Open["sneaks"] {
  return open?.sneaks ?? NOT_ASKED;
}

/** What the jumper would do. */
export function jumperNow({ open }: AppState): Open["jumped"] {
  return open?.jumped ?? NOT_ASKED;
}

/** What the circuit does in a check with its faults; null where there are none or it is not known yet. */
export function verdictOf(state: AppState, check: string): Verdict | null {
  if (!hasFaults(state)) return null;
  return state.open?.verdicts.answer?.[check] ?? null;
}

/** The faults put in. */
export function faultsNow(state: AppState): readonly Fault[] {
  return benchOf(state)?.faults ?? NOTHING;
}

/** Whether the circuit as it is differs from the good one: faults are in, or fuses have melted. */
export function hasFaults(state: AppState): boolean {
  const bench = benchOf(state);
  if (!bench) return false;
  if (bench.faults.length > 0) return true;
  const { good, now } = liveNow(bench);
  return good !== now;
}

/** Whether the drawing shows the circuit with its faults. */
export function showsFaults(state: AppState): boolean {
  return benchOf(state)?.showFaults ?? true;
}

/** A fuse that melted or a breaker that tripped. */
export interface MeltedPart {
  readonly part: string;
  readonly state: string;
}

const meltedIn = remember((live: Live): readonly MeltedPart[] =>
  [...live.parts].flatMap(([part, { state }]) => (LEFT_BY_HAND.includes(state) ? [{ part, state }] : [])),
);

/** What waits for a hand in the circuit that is shown: melted fuses and tripped breakers. */
export function meltedNow(state: AppState): readonly MeltedPart[] {
  const live = liveShown(state);
  return live ? meltedIn(live) : NOTHING;
}

/** Whether a part does something else than it would with nothing wrong, while the faults are shown. */
export function differsPart(state: AppState, part: string): boolean {
  return differsNow(state)?.parts.has(part) === true;
}

/** Whether a wire is not as it would be with nothing wrong, while the faults are shown. */
export function differsWire(state: AppState, wire: string): boolean {
  return differsNow(state)?.wires.has(wire) === true;
}

function differsNow({ open }: AppState): Differs | null {
  if (!open?.desk.bench.showFaults || isCoveredOnSheet(open)) return null;
  return liveNow(open.desk.bench).differs;
}

const controlsByPart = remember((circuit: Circuit): ReadonlyMap<string, readonly CircuitControl[]> => {
  const found = new Map<string, CircuitControl[]>();
  for (const control of controlsOf(circuit))
    found.set(control.part.id, [...(found.get(control.part.id) ?? []), control]);
  return found;
});

/** What a part does now, in words, with the positions of its controls: "Rear open". */
export function partNow(state: AppState, part: string): string {
  const bench = benchOf(state);
  const live = liveShown(state);
  if (!bench || !live) return "";
  const positions = (controlsByPart(bench.circuit).get(part) ?? []).map(({ key, control, rest }) => {
    const name = control.name === "" ? "" : `${control.label ?? control.name} `;
    return `${name}${(positionOf(bench, key) ?? rest).replaceAll("-", " ")}`;
  });
  const here = partAt(bench.circuit, part);
  const isFuse = kindOf(here?.kind ?? "")?.role === "protection";
  const isOut = bench.condition.out?.includes(part) || bench.condition.apart?.includes(part);
  if (isOut && isFuse) return "pulled";
  const stands = here ? partStands(bench.circuit, live, here) : "";
  return [...(isOut ? ["out"] : []), ...positions, stands].filter((word) => word !== "").join(", ");
}

const only = remember((thing: Thing): readonly Thing[] => [thing]);
const together = remember(({ chosen, also }: Open): readonly Thing[] => (chosen ? [chosen, ...also] : also));

/** All that is chosen, the first of it first; the same list for the same choice. */
export function chosenNow({ open }: AppState): readonly Thing[] {
  if (!open?.chosen) return NOTHING;
  return open.also.length === 0 ? only(open.chosen) : together(open);
}

const NO_CLIPPED: readonly Clipped[] = [];

/** The instruments on the bench. */
export function clippedNow(state: AppState): readonly Clipped[] {
  return benchOf(state)?.clipped ?? NO_CLIPPED;
}

/** Whether the states are covered up in this window too, instruments included. */
export function coveredHere({ open }: AppState): boolean {
  return open !== null && isCoveredOnSheet(open);
}

/** What an instrument shows now; null where it is not on the bench. */
export function showingNow(state: AppState, id: string): Showing | null {
  const bench = benchOf(state);
  return (bench && instrumentsNow(bench).get(id)) ?? null;
}

/** What an instrument showed lately; null where it has shown nothing. */
export function traceNow({ open }: AppState, id: string): Trace | null {
  return open?.traces[id] ?? null;
}
