import type { Circuit } from "../../core/circuit/circuit.ts";
import { branchesFor } from "../../core/diagnose/branches.ts";
import type { Branches } from "../../core/diagnose/branchTable.ts";
import type { Observation } from "../../core/diagnose/suspects.ts";
import { sample } from "../samples/onTheBench.ts";

/** A sample with the complaint that its first check fails. */
export function firstComplaint(name: string): { readonly circuit: Circuit; readonly complaint: Observation } {
  const circuit = sample(name);
  const check = circuit.checks[0]!;
  return { circuit, complaint: { check, word: check.expect === "off" ? "wrong" : "dead" } };
}

const known = new Map<string, Branches>();

/** The branches of a sample's first complaint, planned once. */
export function firstBranches(name: string): Branches {
  const branches = known.get(name) ?? branchesPlanned(name);
  known.set(name, branches);
  return branches;
}

/** The same planned anew. */
export function branchesPlanned(name: string): Branches {
  const { circuit, complaint } = firstComplaint(name);
  const found = branchesFor(circuit, complaint);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}
