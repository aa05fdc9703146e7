import { type Outcome, ok } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Found, foundBy } from "../../core/diagnose/found.ts";
import { handoverFacts } from "../../core/diagnose/handoverFacts.ts";
import { proofRun } from "../../core/diagnose/proofRun.ts";
import { restVoltsOf } from "../../core/live/restVolts.ts";
import { handoverSheets } from "../../core/paper/handover.ts";
import type { Sheet } from "../../core/paper/page.ts";
import { proofSheets } from "../../core/paper/proofSheet.ts";
import type { SheetAsk } from "../../schemas/calls/print.ts";
import { faultsOf, knownOf } from "../asked.ts";
import { type Searched, searchedIn } from "./searched.ts";

/** A search that ended, as it was asked for in words. */
interface Ended extends Searched, Found {}

function endedOf(circuit: Circuit, ask: SheetAsk): Outcome<Ended> {
  const searched = searchedIn(circuit, ask);
  if (!searched.ok) return searched;
  const faults = faultsOf(circuit, ask.faults);
  if (!faults.ok) return faults;
  const { complaint, ...known } = searched.value;
  const found = foundBy(circuit, complaint, known, faults.value);
  return found.ok ? ok({ ...searched.value, ...found.value }) : found;
}

/** The sheets of a proof run. Refuses as `foundBy` and `proofRun` do. */
export function proof(circuit: Circuit, ask: SheetAsk): Outcome<readonly Sheet[]> {
  const ended = endedOf(circuit, ask);
  if (!ended.ok) return ended;
  const { complaint, found, living, batteryVolts } = ended.value;
  const run = proofRun({ circuit, complaint: complaint.check, found, living, batteryVolts });
  if (!run.ok) return run;
  return ok(proofSheets({ circuit, proof: run.value, restVolts: batteryVolts ?? restVoltsOf(circuit) }));
}

/** The handover page. Refuses as `foundBy`, `handoverFacts` and `handoverSheets` do. */
export function handover(circuit: Circuit, ask: SheetAsk): Outcome<readonly Sheet[]> {
  const ended = endedOf(circuit, ask);
  if (!ended.ok) return ended;
  const after = knownOf(circuit, ask.readAfter);
  if (!after.ok) return after;
  const { complaint, found, batteryVolts, readings } = ended.value;
  const facts = handoverFacts({
    circuit,
    complaint: complaint.check,
    found,
    batteryVolts,
    readings,
    after: after.value.readings,
  });
  if (!facts.ok) return facts;
  return handoverSheets({
    circuit,
    complaint: complaint.check,
    found,
    facts: facts.value,
    observed: complaint.word,
    told: ask.told,
    did: ask.done,
    after: ask.after,
    watch: ask.watch,
    vehicle: ask.vehicle,
    job: ask.number,
  });
}
