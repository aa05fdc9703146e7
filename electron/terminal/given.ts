import { refuse } from "../../core/base/outcome.ts";
import type { Circuit, Condition, FunctionCheck } from "../../core/circuit/circuit.ts";
import type { Observation } from "../../core/diagnose/suspects.ts";
import { parseCondition } from "../../core/live/condition.ts";
import { type Fault, parseFault } from "../../core/live/fault.ts";
import { OBSERVED_WORDS, type Observed } from "../../core/live/judge.ts";
import { need } from "./console.ts";

/** Options that several commands share, as typed. */
export interface Typed {
  readonly in?: string;
  readonly fault?: readonly string[];
  readonly complaint?: string;
  readonly observed?: readonly string[];
  readonly connector?: string;
  readonly json?: boolean;
}

/** The condition typed after --in, or rest. */
export function conditionOf(circuit: Circuit, typed: Typed): Condition {
  return need(parseCondition(circuit, typed.in ?? ""));
}

/** The faults typed after --fault. */
export function faultsOf(circuit: Circuit, typed: Typed): readonly Fault[] {
  return (typed.fault ?? []).map((text) => need(parseFault(circuit, text)));
}

/** The function check typed after --complaint, seen dead, or wrong where it should be off; `--observed` of it says how else it fails. */
export function complaintOf(
  circuit: Circuit,
  typed: Typed,
): { readonly complaint: Observation; readonly others: readonly Observation[] } {
  if (circuit.checks.length === 0) return need(refuse("order-no-checks"));
  if (typed.complaint === undefined) return need(refuse("order-complaint", { checks: checkIds(circuit) }));
  const check = checkOf(circuit, typed.complaint);
  const observed = (typed.observed ?? []).map((text) => observationOf(circuit, text));
  const own = observed.find((observation) => observation.check.id === check.id);
  return {
    complaint: own ?? { check, word: check.expect === "off" ? "wrong" : "dead" },
    others: observed.filter((observation) => observation !== own),
  };
}

function observationOf(circuit: Circuit, text: string): Observation {
  const [id = "", word = ""] = text.split("=");
  const known = OBSERVED_WORDS.find((each) => each === word.trim().replaceAll(" ", "-"));
  if (!known) return need(refuse("observed-spelling", { text, words: OBSERVED_WORDS.join(", ") }));
  const observed: Observed = known;
  return { check: checkOf(circuit, id), word: observed };
}

function checkOf(circuit: Circuit, id: string): FunctionCheck {
  const check = circuit.checks.find((each) => each.id === id);
  return check ?? need(refuse("check-unknown", { check: id, checks: checkIds(circuit) }));
}

function checkIds(circuit: Circuit): string {
  return circuit.checks.map((check) => check.id).join(", ");
}

/** The connector typed after --connector, or the circuit's first. */
export function connectorOf(circuit: Circuit, typed: Typed): string {
  const ids = circuit.connectors.map((connector) => connector.id);
  const id = typed.connector ?? ids[0];
  if (id === undefined) return need(refuse("connector-none"));
  if (!ids.includes(id)) return need(refuse("connector-unknown", { connector: id, connectors: ids.join(", ") }));
  return id;
}
