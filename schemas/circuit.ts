import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import type { Circuit, Condition } from "../core/circuit/circuit.ts";
import { parsePoint, pointAt, wireSideOf } from "../core/circuit/points.ts";
import { questionsMoved } from "../core/edit/sceneQuestions.ts";
import { circuitRefusal } from "./circuitRules.ts";
import { circuitShape } from "./circuitShape.ts";
import { refusalOf } from "./issue.ts";
import { type Json, parseJson } from "./json.ts";
import { textOf } from "./text.ts";

export { formatCircuit } from "./formatCircuit.ts";

/** The version of the circuit file that this program writes. */
export const CIRCUIT_VERSION = 1;

/**
 * Reads a `*.circuit.json`, given as text or bytes, into a circuit whose every reference holds. Refuses with a code,
 * and the path or the line and column of what is wrong; nothing is half loaded.
 */
export function readCircuit(file: string | Uint8Array): Outcome<Circuit> {
  const text = textOf(file);
  if (!text.ok) return text;
  const json = parseJson(text.value);
  return json.ok ? circuitOf(json.value) : json;
}

/** A circuit from JSON that was read already; refuses as `readCircuit` does. */
export function circuitOf(json: Json): Outcome<Circuit> {
  const { format, version } = json as { readonly format?: Json; readonly version?: Json };
  if (format !== "wirefathom/circuit") return refuse("file-format", { format: short(format) });
  if (typeof version === "number" && version > CIRCUIT_VERSION) {
    return refuse("file-newer", { version, known: CIRCUIT_VERSION });
  }
  const parsed = circuitShape.safeParse(json);
  if (!parsed.success) return { ok: false, refusal: refusalOf(parsed.error.issues, json) };
  const circuit: Circuit = normalised(parsed.data);
  const refusal = circuitRefusal(circuit);
  return refusal ? { ok: false, refusal } : ok(circuit);
}

function short(format: Json | undefined): string {
  return typeof format === "string" ? format.slice(0, 40) : "nothing";
}

/**
 * The same circuit in its one spelling: a wire ends on the cavity that carries its terminal, an in-line joint's side is
 * written with a dash, and an output driven by hand is named as the module's pin.
 */
export function normalised(circuit: Circuit): Circuit {
  const spelled = (text: string): string => {
    const point = parsePoint(circuit, text);
    return point.ok ? point.value.id : text;
  };
  const wireEnd = (text: string) => wireSideOf(circuit, spelled(text));
  const pin = (text: string): string => {
    const id = spelled(text);
    const point = pointAt(circuit, id);
    return point?.kind === "cavity" ? (point.carries ?? id) : id;
  };
  const driven = <T extends { readonly condition: Condition }>(holder: T): T => {
    const { drive } = holder.condition;
    if (!drive) return holder;
    const pins = Object.fromEntries(Object.entries(drive).map(([point, level]) => [pin(point), level]));
    return { ...holder, condition: { ...holder.condition, drive: pins } };
  };
  return {
    ...circuit,
    wires: circuit.wires.map((wire) => ({ ...wire, from: wireEnd(wire.from), to: wireEnd(wire.to) })),
    checks: circuit.checks.map(driven),
    scenes: circuit.scenes.map(driven).map(({ questions, ...scene }) => ({
      ...scene,
      ...(questions && { questions: questionsMoved(questions, spelled) }),
    })),
  };
}
