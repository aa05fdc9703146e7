import { readFileSync } from "node:fs";
import type { PointId } from "../../core/base/ids.ts";
import type { Volts } from "../../core/base/units.ts";
import type { Circuit, FunctionCheck } from "../../core/circuit/circuit.ts";
import { parseCondition } from "../../core/live/condition.ts";
import { type Fault, parseFault } from "../../core/live/fault.ts";
import { judge, type Verdict } from "../../core/live/judge.ts";
import { type Live, liveOf } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { dropLimit } from "../../core/trade/limits.ts";
import { readCircuit } from "../../schemas/circuit.ts";

/** Every vehicle among the samples, by its name; the boards of the lessons are too small for what a search has to show. */
export const SAMPLE_NAMES: readonly string[] = [
  "1-roof-vents",
  "2-exterior-lights",
  "3-starter",
  "4-horn",
  "5-blower",
  "6-truck-trailer",
  "7-charging",
  "8-wiper",
  "9-liftgate",
];

/** The lessons among the samples, each on a small board of its own, and the puzzle. */
export const LESSON_NAMES: readonly string[] = [
  "10-power-and-ground",
  "11-unloaded-tests",
  "12-reversing-motor",
  "13-unlike-lamps",
];

const samples = new Map<string, Circuit>();

/** The circuit of a sample's file, `4-horn`: read once, so that what is remembered with it is worked out once. */
export function sample(name: string): Circuit {
  const circuit = samples.get(name) ?? sampleRead(name);
  samples.set(name, circuit);
  return circuit;
}

function sampleRead(name: string): Circuit {
  const read = readCircuit(readFileSync(new URL(`../../samples/${name}.circuit.json`, import.meta.url)));
  if (!read.ok) throw new Error(`${name} was refused: ${read.refusal.code}`);
  return read.value;
}

function faultsOf(circuit: Circuit, texts: readonly string[]): readonly Fault[] {
  return texts.map((text) => {
    const fault = parseFault(circuit, text);
    if (!fault.ok) throw new Error(`${text} was refused: ${fault.refusal.code}`);
    return fault.value;
  });
}

/** Live state in a condition written as on the command line, with faults written so too. */
export function stand(circuit: Circuit, condition: string, ...faults: readonly string[]): Live {
  const parsed = parseCondition(circuit, condition);
  if (!parsed.ok) throw new Error(`${condition} was refused: ${parsed.refusal.code}`);
  return liveOf(circuit, parsed.value, faultsOf(circuit, faults));
}

/** How every function check turns out, by its id. */
export function verdicts(circuit: Circuit, ...faults: readonly string[]): Readonly<Record<string, Verdict>> {
  const planted = faultsOf(circuit, faults);
  return Object.fromEntries(
    circuit.checks.map((check) => [
      check.id,
      judge(check, liveOf(circuit, check.condition, planted).parts.get(check.load)),
    ]),
  );
}

/** Ids of the checks that do not work. */
export function failing(circuit: Circuit, ...faults: readonly string[]): readonly string[] {
  return Object.entries(verdicts(circuit, ...faults))
    .filter(([, verdict]) => verdict !== "works")
    .map(([id]) => id);
}

/** Conditions of all checks and scenes in which something chatters, melts, or may melt. */
export function restless(circuit: Circuit): readonly string[] {
  const named = [...circuit.checks, ...circuit.scenes].map(({ label, condition }) => ({
    label,
    live: liveOf(circuit, condition),
  }));
  return named.filter(({ live }) => !live.settled || live.happenings.length > 0).map(({ label }) => label);
}

/** Volts of a point, which must not float. */
export function volts(live: Live, point: PointId): Volts {
  const read = live.points.get(point)?.volts;
  if (read === null || read === undefined) throw new Error(`${point} has no volts`);
  return read;
}

/** Volts lost from one point to another. */
export function lost(live: Live, from: PointId, to: PointId): Volts {
  return volts(live, from) - volts(live, to);
}

/**
 * Places of the healthy circuit that lose more than the trade allows while a check is tried: whole feed and whole return
 * of its load, single wires, single contacts.
 */
export function lossyPlaces(circuit: Circuit): readonly string[] {
  return circuit.checks.flatMap((check) => {
    const live = liveOf(circuit, check.condition);
    return [...sidesOf(live, check), ...wiresOf(circuit, live), ...contactsOf(circuit, live)].map(
      (place) => `${check.id}: ${place}`,
    );
  });
}

function sidesOf(live: Live, check: FunctionCheck): readonly string[] {
  const plus = volts(live, "G1.+");
  return [...live.points].flatMap(([point, { state, volts: read }]) => {
    if (!point.startsWith(`${check.load}.`) || read === null) return [];
    const away = state === "powered" ? plus - read : state === "grounded" ? read : 0;
    return away > dropLimit("feed-side").volts ? [point] : [];
  });
}

function wiresOf(circuit: Circuit, live: Live): readonly string[] {
  return circuit.wires.flatMap(({ id }) => {
    const [from, to] = live.wires.get(id)!.volts;
    return from !== null && to !== null && Math.abs(from - to) > dropLimit("harness-wire").volts ? [id] : [];
  });
}

function contactsOf(circuit: Circuit, live: Live): readonly string[] {
  return circuit.parts.flatMap((part) => {
    if (kindOf(part.kind)?.role !== "control") return [];
    return [...live.parts.get(part.id)!.closed].flatMap((key) => {
      const [a, b] = key.split("-").map((terminal) => live.points.get(`${part.id}.${terminal}`)?.volts ?? null);
      return a !== null && b !== null && Math.abs(a! - b!) > dropLimit("contact").volts ? [`${part.id} ${key}`] : [];
    });
  });
}
