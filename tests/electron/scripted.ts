import type { Outcome } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { beginJob } from "../../core/edit/commands/beginJob.ts";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import { changeTitle } from "../../core/edit/commands/changeTitle.ts";
import { moveThings } from "../../core/edit/commands/moveThings.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { recolourWire } from "../../core/edit/commands/recolourWire.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import type { Edit } from "../../core/edit/edit.ts";
import { type Desk, deskFor, perform, redo, undo } from "../../core/edit/history.ts";
import { benchText } from "../../renderer/state/benchText.ts";
import { openFor } from "../../renderer/state/openBench.ts";
import type { Lots } from "../lots.ts";

/** A desk on which nothing was done to this circuit. */
export function bareDesk(circuit: Circuit): Desk {
  return deskFor(benchFor(circuit));
}

/** What a page sends of a desk beside its circuit: condition, faults, job and the whole undo history. */
export function textOfBench(desk: Desk): string {
  return benchText(openFor(desk, { id: "", version: 1, benchVersion: 1, isTrial: false }));
}

type Act = (desk: Desk, lots: Lots, number: number) => Outcome<Desk>;

const made =
  (edit: (bench: Bench, lots: Lots, number: number) => Outcome<Edit>): Act =>
  (desk, lots, number) => {
    const outcome = edit(desk.bench, lots, number);
    return outcome.ok ? perform(desk, outcome.value) : outcome;
  };

/** What is done by lot, drawing and bench alike; a part of it is taken back and done again. */
const ACTS: readonly Act[] = [
  made((bench, _lots, number) => changeTitle(bench, `Edit ${number}`)),
  made((bench, lots) =>
    recolourWire(bench, lots.oneOf(bench.circuit.wires).id, lots.oneOf(["RD", "BK/YE", "BN", "GY"])),
  ),
  made((bench, lots) => changeLength(bench, lots.oneOf(bench.circuit.wires).id, `${1 + lots.upTo(90) / 10} m`)),
  made((bench, lots) => moveThings(bench, [lots.oneOf(bench.circuit.parts).id], lots.upTo(9) - 4, lots.upTo(9) - 4)),
  made((bench, lots) => throwControl(bench, "S2", lots.oneOf(["open", "shut"]))),
  made((bench, lots) => plantFault(bench, `${lots.oneOf(bench.circuit.wires).id}:open`)),
  made((bench, _lots, number) => beginJob(bench, `job-${number}`, { vehicle: `Vehicle ${number}` })),
  undo,
  redo,
];

/** The desk after the next thing that can be done, by lot: what a person would be refused is tried in another way. */
export function nextDesk(desk: Desk, lots: Lots, number: number): Desk {
  for (let tries = 0; tries < 200; tries++) {
    const next = lots.oneOf(ACTS)(desk, lots, number);
    if (next.ok) return next.value;
  }
  throw new Error("nothing can be done on this desk");
}
