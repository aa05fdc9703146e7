import type { PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { terminalPoint, wireSideOf } from "../circuit/points.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { FaultMode } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import { CAVITY_FAULTS, WIRE_FAULTS } from "./wiringFaults.ts";

/** A physical defect: what fails, how, and by how much. Its text is the suspect's id everywhere. */
export interface Fault {
  /** A part `M3`, a wire `W13`, or a cavity `X5-6`, `X30-1`. */
  readonly target: string;
  readonly mode: string;
  /** Ohms and the like; for crossed wires the other wire's id. */
  readonly value?: number | string;
  /** Seed of the pattern by which it comes and goes; absent where it stays. */
  readonly pattern?: number;
}

/** The spelling of a fault: `W13:open`, `X5-6:corroded=20`, `W7:crossed=W9`; `W13:open~5` comes and goes by pattern 5. */
export function faultText({ target, mode, value, pattern }: Fault): string {
  return `${target}:${mode}${value === undefined ? "" : `=${value}`}${pattern === undefined ? "" : `~${pattern}`}`;
}

/** A way to fail in words: "W13 broken", "X5-6 corroded, ohms added, 20 ohm", "W7 touching another wire W9". */
export function modeTitle(target: string, { title, value: allowed }: FaultMode, value?: Fault["value"]): string {
  if (value === undefined) return `${target} ${title}`;
  return allowed && typeof value === "number"
    ? `${target} ${title}, ${value} ${allowed.unit}`
    : `${target} ${title} ${value}`;
}

/** A fault in words, as `modeTitle`; by its mode's spelling where what it sits on has no such mode. */
export function faultTitle(circuit: Circuit, { target: id, mode: name, value, pattern }: Fault): string {
  const target = targetOf(circuit, id);
  const mode = target && faultModes(circuit, target).find((each) => each.mode === name);
  const title = mode ? modeTitle(id, mode, value) : [id, name.replaceAll("-", " "), value ?? ""].join(" ").trimEnd();
  return pattern === undefined ? title : `${title}, comes and goes`;
}

/** What a fault can sit on: a part, a wire or a place in a connector. */
export type Target =
  | { readonly is: "part"; readonly id: string }
  | { readonly is: "wire"; readonly id: string }
  | { readonly is: "cavity"; readonly id: PointId; readonly connector: string; readonly cavity: string };

/** Finds what a fault's target names, or null. */
export function targetOf(circuit: Circuit, id: string): Target | null {
  return targetsOf(circuit).get(id) ?? null;
}

/** Everything that a fault can sit on; of two that are called alike the wire comes before the place, and that before the part. */
const targetsOf = remember((circuit: Circuit): ReadonlyMap<string, Target> => {
  const targets = new Map<string, Target>();
  for (const { id } of circuit.parts) targets.set(id, { is: "part", id });
  for (const { id: connector, rows } of circuit.connectors)
    for (const cavity of rows.flat())
      if (cavity !== "")
        targets.set(`${connector}-${cavity}`, { is: "cavity", id: `${connector}-${cavity}`, connector, cavity });
  for (const { id } of circuit.wires) targets.set(id, { is: "wire", id });
  return targets;
});

/** Every way a target can fail, in the order its kind lists them. In-line joints fail by their cavities. */
export function faultModes(circuit: Circuit, target: Target): readonly FaultMode[] {
  if (target.is === "wire") return WIRE_FAULTS;
  if (target.is === "cavity") return CAVITY_FAULTS;
  const part = circuit.parts.find((candidate) => candidate.id === target.id);
  const kind = part && kindOf(part.kind);
  if (!part || !kind) return [];
  const isBare = (terminal: string): boolean =>
    !wireEndsOf(circuit).has(wireSideOf(circuit, terminalPoint(part, terminal)));
  return kind
    .faults(viewOf(kind, part, circuit.nominalVolts))
    .filter(({ unless }) => unless === undefined || unless.some(isBare));
}

const wireEndsOf = remember((circuit: Circuit) => new Set(circuit.wires.flatMap(({ from, to }) => [from, to])));

/**
 * Whether a fault can come and go: what opens a wire, a pin, a ground, a splice or a contact, or adds ohms to it. All else stays
 * as it is until it is mended.
 */
export function canComeAndGo(circuit: Circuit, target: Target, { effects, value }: FaultMode): boolean {
  const part = target.is === "part" ? circuit.parts.find(({ id }) => id === target.id) : undefined;
  if (part && !["join", "control"].includes(kindOf(part.kind)?.role ?? "")) return false;
  return effects(value?.usual[0] ?? 0).every(
    (effect) => effect.does === "open" || effect.does === "add-ohms" || (effect.does === "stick" && !effect.closed),
  );
}

/**
 * Reads `TARGET:MODE[=VALUE][~PATTERN]`; refuses an unknown target or mode, a value outside the mode's limits, and a pattern of what
 * cannot come and go.
 */
export function parseFault(circuit: Circuit, text: string): Outcome<Fault> {
  const [, before, seed] = /^(.*)~(\d{1,6})$/.exec(text.trim()) ?? [];
  const stays = before === undefined ? null : parseStaying(circuit, before);
  if (!stays?.ok) return parseStaying(circuit, text);
  const { target: id, mode } = stays.value;
  const target = targetOf(circuit, id)!;
  const known = faultModes(circuit, target).find((each) => each.mode === mode)!;
  if (!canComeAndGo(circuit, target, known)) return refuse("fault-pattern", { fault: before! });
  return ok({ ...stays.value, pattern: Number(seed) });
}

function parseStaying(circuit: Circuit, text: string): Outcome<Fault> {
  const shape = /^([^:=\s]+):([^:=\s]+)(?:=(.+))?$/.exec(text.trim());
  if (!shape) return refuse("fault-spelling", { text });
  const [, id = "", mode = "", typed] = shape;
  const target = targetOf(circuit, id);
  if (!target) return refuse("fault-target", { target: id });
  const modes = faultModes(circuit, target);
  const known = modes.find((candidate) => candidate.mode === mode);
  if (!known) {
    return refuse("fault-mode", { target: id, mode, modes: modes.map((candidate) => candidate.mode).join(", ") });
  }
  if (known.mode === "crossed") {
    const other = circuit.wires.some((wire) => wire.id === typed && wire.id !== id);
    return other && typed
      ? ok({ target: id, mode, value: typed })
      : refuse("fault-crossed", { target: id, other: typed ?? "" });
  }
  if (!known.value)
    return typed === undefined ? ok({ target: id, mode }) : refuse("fault-no-value", { target: id, mode });
  const value = typed === undefined ? known.value.usual[0]! : Number(typed.replace(/ohms?$|v$/i, ""));
  const { min, max, unit } = known.value;
  if (!Number.isFinite(value) || value < min || value > max) {
    return refuse("fault-value", { target: id, mode, typed: typed ?? "", min, max, unit });
  }
  return ok({ target: id, mode, value });
}
