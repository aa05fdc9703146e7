import type { PointId } from "../base/ids.ts";
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
}

/** The spelling of a fault: `W13:open`, `X5-6:corroded=20`, `W7:crossed=W9`. */
export function faultText(fault: Fault): string {
  return fault.value === undefined ? `${fault.target}:${fault.mode}` : `${fault.target}:${fault.mode}=${fault.value}`;
}

/** What a fault can sit on: a part, a wire or a place in a connector. */
export type Target =
  | { readonly is: "part"; readonly id: string }
  | { readonly is: "wire"; readonly id: string }
  | { readonly is: "cavity"; readonly id: PointId; readonly connector: string; readonly cavity: string };

/** Finds what a fault's target names, or null. */
export function targetOf(circuit: Circuit, id: string): Target | null {
  if (circuit.wires.some((wire) => wire.id === id)) return { is: "wire", id };
  for (const connector of circuit.connectors) {
    for (const cavity of connector.rows.flat()) {
      if (cavity !== "" && id === `${connector.id}-${cavity}`)
        return { is: "cavity", id, connector: connector.id, cavity };
    }
  }
  if (circuit.parts.some((part) => part.id === id)) return { is: "part", id };
  return null;
}

/** Every way a target can fail, in the order its kind lists them. In-line joints fail by their cavities. */
export function faultModes(circuit: Circuit, target: Target): readonly FaultMode[] {
  if (target.is === "wire") return WIRE_FAULTS;
  if (target.is === "cavity") return CAVITY_FAULTS;
  const part = circuit.parts.find((candidate) => candidate.id === target.id);
  const kind = part && kindOf(part.kind);
  if (!part || !kind) return [];
  const ends = new Set(circuit.wires.flatMap(({ from, to }) => [from, to]));
  const isBare = (terminal: string): boolean => !ends.has(wireSideOf(circuit, terminalPoint(part, terminal)));
  return kind
    .faults(viewOf(kind, part, circuit.nominalVolts))
    .filter(({ unless }) => unless === undefined || unless.some(isBare));
}

/** Reads `TARGET:MODE[=VALUE]`; refuses an unknown target or mode, and a value outside the mode's limits. */
export function parseFault(circuit: Circuit, text: string): Outcome<Fault> {
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
