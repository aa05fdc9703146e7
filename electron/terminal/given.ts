import { refuse } from "../../core/base/outcome.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import type { Seen } from "../../core/diagnose/seen.ts";
import { parseCondition } from "../../core/live/condition.ts";
import type { Fault } from "../../core/live/fault.ts";
import * as asked from "../asked.ts";
import { need } from "./console.ts";

/** Options that several commands share, as typed. */
export interface Typed {
  readonly in?: string;
  readonly fault?: readonly string[];
  readonly complaint?: string;
  readonly observed?: readonly string[];
  readonly sleeping?: string;
  readonly when?: string;
  readonly wiggle?: readonly string[];
  readonly connector?: string;
  readonly json?: boolean;
}

/** The condition typed after --in, or rest. */
export function conditionOf(circuit: Circuit, typed: Typed): Condition {
  return need(parseCondition(circuit, typed.in ?? ""));
}

/** The faults typed after --fault. */
export function faultsOf(circuit: Circuit, typed: Typed): readonly Fault[] {
  return need(asked.faultsOf(circuit, typed.fault ?? []));
}

/** The function check typed after --complaint, with what was typed after --observed. */
export function complaintOf(circuit: Circuit, typed: Typed): Seen {
  return need(asked.seenOf(circuit, typed.complaint, typed.observed, typed.sleeping));
}

/** The connector typed after --connector, or the circuit's first. */
export function connectorOf(circuit: Circuit, typed: Typed): string {
  return need(asked.connectorOf(circuit, typed.connector));
}

/** A word typed after an option, which must be one of these. */
export function chosen<T extends string>(option: string, value: string, choices: readonly T[]): T {
  return (
    choices.find((each) => each === value) ??
    need(refuse("print-choice", { option, value, choices: choices.join(", ") }))
  );
}
