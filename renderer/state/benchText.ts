import type { Circuit } from "../../core/circuit/circuit.ts";
import { isJobAbout } from "../../core/diagnose/job.ts";
import { BENCH_FIELDS, type Bench, benchFor } from "../../core/edit/bench.ts";
import type { Change } from "../../core/edit/change.ts";
import { apply } from "../../core/edit/edit.ts";
import { deskFor, type History } from "../../core/edit/history.ts";
import { historyOf, historyText } from "../../core/edit/historyText.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import type { OpenedCircuit } from "../../schemas/calls.ts";
import { openFor } from "./openBench.ts";
import { reduceBench } from "./reduceBench.ts";
import { type Open, PANELS } from "./state.ts";

const VERSION = 1;

/** All of an open bench but its circuit, as JSON for the store: what stands on it, its history, and what was in sight. */
export function benchText(open: Open): string {
  const { bench, history } = open.desk;
  const kept = Object.fromEntries(BENCH_FIELDS.map((field) => [field, bench[field]]));
  const { page, viewports, panel, connector, isTrial, held } = open;
  return JSON.stringify({
    version: VERSION,
    bench: kept,
    sight: { page, viewports, panel, connector, isTrial, held },
    history: historyText(history),
  });
}

/** True where something was kept on a bench that cannot be read any more, since its bytes changed or it is of another form. */
export function isBenchLost({ bench, benchVersion }: Pick<OpenedCircuit, "bench" | "benchVersion">): boolean {
  return benchVersion > 0 && parsed(bench).version === undefined;
}

/** The bench that a text kept for this circuit. What does not fit any more is left out, so that it always opens. */
export function readBench(
  circuit: Circuit,
  text: string | null,
  stored: Pick<Open, "id" | "version" | "benchVersion">,
  isOlder = false,
): Open {
  const kept = parsed(text);
  const sight = objectOf(kept.sight);
  const bench = restored(circuit, objectOf(kept.bench));
  // What was done to another form of the circuit cannot be taken back on this one.
  const history = historyFrom(isOlder ? null : kept.history);
  const open = openFor(deskFor(bench, history), { ...stored, isTrial: sight.isTrial === true });
  const page = circuit.pages.some(({ id }) => id === sight.page) ? String(sight.page) : open.page;
  const viewports = objectOf(sight.viewports) as Open["viewports"];
  const panel = PANELS.find((each) => each === sight.panel) ?? open.panel;
  const connector = typeof sight.connector === "string" ? sight.connector : open.connector;
  const seen = { ...open, page, panel, connector, ...(areViewports(viewports) && { viewports }) };
  return Array.isArray(sight.held) ? sight.held.map(String).reduce(letGone, seen) : seen;
}

/** The finger that held a control when the bench was left is not on it any more. */
function letGone(open: Open, control: string): Open {
  const after = reduceBench(open, { do: "let-go", control });
  return after.ok ? after.value : open;
}

/** The parts of a bench that still fit its circuit, field by field: one that does not is as on a new bench. */
function restored(circuit: Circuit, kept: Readonly<Record<string, unknown>>): Bench {
  const found = BENCH_FIELDS.reduce((bench, field) => {
    if (!isLike(field, bench[field], kept[field])) return bench;
    const change = { change: "bench", field, value: kept[field] } as Change;
    try {
      const applied = apply(bench, { name: "", changes: [change] });
      return applied.ok ? applied.value.bench : bench;
    } catch {
      // The text came from outside this page and may have any shape.
      return bench;
    }
  }, benchFor(circuit));
  return canStand(found) ? found : benchFor(circuit);
}

/** Fields that are a number once they are set. */
const NUMBERS: readonly string[] = ["batteryVolts", "sleepingAmps"] satisfies readonly (keyof Bench)[];

/** Whether a value is of the sort of another: text, a number or a job for what is not set on a new bench. */
function isLike(field: (typeof BENCH_FIELDS)[number], plain: unknown, value: unknown): boolean {
  if (field === "job") return isJobAbout(value);
  if (plain === null) return NUMBERS.includes(field) ? Number.isFinite(value) : typeof value === "string";
  return typeof value === typeof plain && value !== null && Array.isArray(value) === Array.isArray(plain);
}

/** The text came from outside this page: what has the shape of a bench may still be none that can be solved. */
function canStand(bench: Bench): boolean {
  try {
    return liveNow(bench).shown !== null;
  } catch {
    return false;
  }
}

function historyFrom(text: unknown): History {
  const history = typeof text === "string" ? historyOf(text) : null;
  if (!history?.ok) return { done: [], undone: [] };
  const { done, undone } = history.value;
  // A gesture of today is no part of one that was made before.
  return { done: done.map((step) => (step.group === null ? step : { ...step, group: null })), undone };
}

function areViewports(viewports: Open["viewports"]): boolean {
  return Object.values(viewports).every(
    (view) => [view?.scale, view?.x, view?.y].every(Number.isFinite) && view.scale > 0,
  );
}

function parsed(text: string | null): Readonly<Record<string, unknown>> {
  if (text === null) return {};
  try {
    const kept = objectOf(JSON.parse(text));
    return kept.version === VERSION ? kept : {};
  } catch {
    return {};
  }
}

function objectOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value)
    ? (value as Readonly<Record<string, unknown>>)
    : {};
}
