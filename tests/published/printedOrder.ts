import type { Circuit } from "../../core/circuit/circuit.ts";
import { planner } from "../../core/diagnose/plan/next.ts";
import type { Problem } from "../../core/diagnose/plan/problem.ts";
import type { Probe } from "../../core/diagnose/reading.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { type Rows, rowsFor } from "../../core/diagnose/rows.ts";
import type { Suspect } from "../../core/diagnose/step.ts";
import { triesFor } from "../../core/diagnose/tries.ts";
import { inOrder, minutesExpected } from "../diagnose/policies.ts";
import { faultOf } from "./build.ts";

/** What a search is expected to cost in the printed order and in ours, over the same probes at the same cost. */
export function costs(
  problem: Problem,
  order?: readonly number[],
): { readonly printed: number; readonly ours: number } {
  return {
    printed: minutesExpected(problem, inOrder(problem, order)),
    ours: minutesExpected(problem, planner(problem)),
  };
}

/** Volts at a point against battery negative with a fault planted, or none where it is "": at rest, or as the check has it. */
export function voltsWith(circuit: Circuit, fault: string, red: string, how: "rest" | "check"): number {
  const { condition } = circuit.checks[0]!;
  const probe: Probe = {
    red,
    black: "battery -",
    instrument: "meter volts",
    lampTo: null,
    condition: how === "rest" ? {} : condition,
  };
  return readWith(circuit, fault === "" ? [] : [faultOf(circuit, fault)], condition, probe).shows.volts!;
}

/** The suspects of a manual, each verdict as likely as the others: by verdict the faults of our drawing that it stands for. */
export function suspectsOf(
  circuit: Circuit,
  verdicts: Readonly<Record<string, readonly string[]>>,
): readonly Suspect[] {
  const each = 1 / Object.keys(verdicts).length;
  return Object.entries(verdicts).flatMap(([verdict, faults]) =>
    faults.map((id) => ({
      id,
      faults: [faultOf(circuit, id)],
      title: verdict,
      repairGroup: verdict,
      probability: each / faults.length,
      notes: [],
    })),
  );
}

/** Every row that the program could offer for these suspects of the circuit's first check. */
export function rowsOf(circuit: Circuit, suspects: readonly Suspect[]): Rows {
  const check = circuit.checks[0]!;
  return rowsFor(circuit, check.condition, suspects, triesFor(circuit, check), []);
}

/** Numbers of the rows at these places, in this order: a look, or the meter over every position of the control. */
export function rowsAt({ columns }: Rows, places: readonly string[]): readonly number[] {
  return places.map((place) => {
    const at = columns.flatMap(({ candidate }, number) =>
      candidate.at.point === place && candidate.lampTo === null && candidate.fineness === "volts" ? [number] : [],
    );
    const number = at.toSorted(
      (one, other) => columns[other]!.candidate.conditions.length - columns[one]!.candidate.conditions.length,
    )[0];
    if (number === undefined) throw new Error(`no row at ${place}`);
    return number;
  });
}
