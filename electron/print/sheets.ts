import type { PartId } from "../../core/base/ids.ts";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { branchesFor } from "../../core/diagnose/branches.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import type { Drawing } from "../../core/drawing/mark.ts";
import { branchOf } from "../../core/live/branch.ts";
import { budgetOf } from "../../core/live/budget.ts";
import { parseCondition } from "../../core/live/condition.ts";
import type { Fault } from "../../core/live/fault.ts";
import { branchSheets } from "../../core/paper/branchSheet.ts";
import { budgetSheets } from "../../core/paper/budget.ts";
import { checklistSheets } from "../../core/paper/checklist.ts";
import { circuitSheets } from "../../core/paper/circuitSheets.ts";
import { withOwnWords } from "../../core/paper/ownWords.ts";
import type { Paper } from "../../core/paper/placing.ts";
import { straightSheets } from "../../core/paper/straight.ts";
import { tableSheets } from "../../core/paper/table.ts";
import { wiggleSheets } from "../../core/paper/wiggle.ts";
import type { SheetAsk } from "../../schemas/calls/print.ts";
import { connectorOf, faultsOf, seenOf, wiggleOf } from "../asked.ts";
import { handover, proof } from "./proofSheets.ts";
import { searchedIn } from "./searched.ts";

/**
 * The sheets of a circuit that are asked for, on this paper. Refuses what the circuit does not have, `no-suspects`, and
 * with `over-60-volts` the sheets that would lead a probe.
 */
export function sheetsFor(circuit: Circuit, ask: SheetAsk, paper: Paper): Outcome<readonly Drawing[]> {
  const sheets = plainSheets(circuit, ask, paper);
  return sheets.ok ? ok(withOwnWords(sheets.value, ask)) : sheets;
}

function plainSheets(circuit: Circuit, ask: SheetAsk, paper: Paper): Outcome<readonly Drawing[]> {
  switch (ask.what) {
    case "sheet":
      return sheet(circuit, ask, paper);
    case "checklist":
      return checklist(circuit, ask);
    case "branches":
      return branches(circuit, ask);
    case "wiggle":
      return wiggle(circuit, ask);
    case "table":
      return table(circuit, ask);
    case "straight":
      return straight(circuit, ask);
    case "budget":
      return budget(circuit, ask);
    case "proof":
      return proof(circuit, ask);
    case "handover":
      return handover(circuit, ask);
  }
}

function sheet(circuit: Circuit, ask: SheetAsk, paper: Paper): Outcome<readonly Drawing[]> {
  const known = circuit.pages.map((page) => page.id);
  if (ask.page !== undefined && !known.includes(ask.page))
    return refuse("page-unknown-print", { page: ask.page, pages: known.join(", ") });
  const condition = parseCondition(circuit, ask.condition);
  if (!condition.ok) return condition;
  const faults = faultsOf(circuit, ask.faults);
  if (!faults.ok) return faults;
  const { page = null, look } = ask;
  return circuitSheets({ circuit, page, condition: condition.value, faults: faults.value, look, paper });
}

function checklist(circuit: Circuit, ask: SheetAsk): Outcome<readonly Drawing[]> {
  const probed = mayBeProbed(circuit);
  if (!probed.ok) return probed;
  const searched = searchedIn(circuit, ask);
  if (!searched.ok) return searched;
  const { complaint, ...known } = searched.value;
  const order = probeOrder(circuit, complaint, known);
  return order.suspects.length === 0 ? refuse("no-suspects") : ok(checklistSheets({ circuit, order }));
}

function branches(circuit: Circuit, ask: SheetAsk): Outcome<readonly Drawing[]> {
  const searched = searchedIn(circuit, ask);
  if (!searched.ok) return searched;
  const { complaint, ...known } = searched.value;
  const found = branchesFor(circuit, complaint, {
    ...known,
    ...(ask.depth !== undefined && { depth: ask.depth }),
  });
  return found.ok ? ok(branchSheets({ circuit, branches: found.value })) : found;
}

function wiggle(circuit: Circuit, ask: SheetAsk): Outcome<readonly Drawing[]> {
  const probed = mayBeProbed(circuit);
  if (!probed.ok) return probed;
  const seen = seenOf(circuit, ask.complaint, ask.observed, ask.sleeping);
  if (!seen.ok) return seen;
  const sheet = wiggleOf(circuit, seen.value, ask.when, ask.wiggled);
  if (!sheet.ok) return sheet;
  return sheet.value.rows.length === 0 ? refuse("no-suspects") : ok(wiggleSheets({ circuit, wiggle: sheet.value }));
}

function table(circuit: Circuit, ask: SheetAsk): Outcome<readonly Drawing[]> {
  const probed = mayBeProbed(circuit);
  if (!probed.ok) return probed;
  const connector = connectorOf(circuit, ask.connector);
  if (!connector.ok) return connector;
  const faults = faultsOf(circuit, ask.faults);
  if (!faults.ok) return faults;
  return ok(
    tableSheets({ circuit, table: positionTable(circuit, connector.value, faults.value), faults: faults.value }),
  );
}

/** What a sheet of one load is asked for: its load, the condition it is shown in, and faults. */
interface OfLoad {
  readonly load: PartId;
  readonly condition: Condition;
  readonly faults: readonly Fault[];
}

/** The load that is named, or the complaint's, in the condition given or else the complaint's own. */
function ofLoad(circuit: Circuit, ask: SheetAsk): Outcome<OfLoad> {
  const seen = ask.load === undefined || ask.complaint !== undefined ? seenOf(circuit, ask.complaint) : null;
  if (seen && !seen.ok) return seen;
  const check = seen?.value.complaint.check;
  const condition = parseCondition(circuit, ask.condition);
  if (!condition.ok) return condition;
  const faults = faultsOf(circuit, ask.faults);
  if (!faults.ok) return faults;
  return ok({
    load: ask.load ?? check!.load,
    condition: ask.condition === "" && check ? check.condition : condition.value,
    faults: faults.value,
  });
}

function straight(circuit: Circuit, ask: SheetAsk): Outcome<readonly Drawing[]> {
  const probed = mayBeProbed(circuit);
  if (!probed.ok) return probed;
  const asked = ofLoad(circuit, ask);
  return asked.ok ? straightSheets({ circuit, ...asked.value, look: ask.look }) : asked;
}

function budget(circuit: Circuit, ask: SheetAsk): Outcome<readonly Drawing[]> {
  const probed = mayBeProbed(circuit);
  if (!probed.ok) return probed;
  const asked = ofLoad(circuit, ask);
  if (!asked.ok) return asked;
  const branch = branchOf(circuit, asked.value);
  if (!branch.ok) return branch;
  return ok(budgetSheets({ circuit, budget: budgetOf(circuit, branch.value), faults: asked.value.faults }));
}
