import type { Outcome } from "../../core/base/outcome.ts";
import type { Volts } from "../../core/base/units.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { branchesFor } from "../../core/diagnose/branches.ts";
import type { Circumstance } from "../../core/diagnose/comesAndGoes.ts";
import { foundBy } from "../../core/diagnose/found.ts";
import { handoverFacts } from "../../core/diagnose/handoverFacts.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { proofRun } from "../../core/diagnose/proofRun.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import type { Observation } from "../../core/diagnose/suspects.ts";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import type { Weighing } from "../../core/diagnose/weighing.ts";
import { type Wiggled, wiggleSheet } from "../../core/diagnose/wiggle.ts";
import type { Drawing } from "../../core/drawing/mark.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { branchOf } from "../../core/live/branch.ts";
import { budgetOf } from "../../core/live/budget.ts";
import type { Fault } from "../../core/live/fault.ts";
import { restVoltsOf } from "../../core/live/restVolts.ts";
import { branchSheets } from "../../core/paper/branchSheet.ts";
import { budgetSheets } from "../../core/paper/budget.ts";
import { checklistSheets } from "../../core/paper/checklist.ts";
import { circuitSheets } from "../../core/paper/circuitSheets.ts";
import { handoverSheets } from "../../core/paper/handover.ts";
import { withOwnWords } from "../../core/paper/ownWords.ts";
import { type Paper, type Placing, type PrintPalette, placingOn } from "../../core/paper/placing.ts";
import { proofSheets } from "../../core/paper/proofSheet.ts";
import { straightSheets } from "../../core/paper/straight.ts";
import { tableSheets } from "../../core/paper/table.ts";
import { wiggleSheets } from "../../core/paper/wiggle.ts";
import type { Look } from "../../core/parts/kind.ts";

/** What is to be printed: the bench's own values, where the host's call has their spellings. */
export interface SheetsWanted {
  readonly what: "sheet" | "checklist" | "branches" | "wiggle" | "table" | "straight" | "budget" | "proof" | "handover";
  /** Page of a sheet; all pages where null. */
  readonly page: string | null;
  readonly condition: Condition;
  readonly faults: readonly Fault[];
  readonly complaint: Observation | null;
  readonly others: readonly Observation[];
  /** What was found, for a proof run and a handover page; empty or absent while nothing is. */
  readonly found?: readonly Fault[];
  readonly handover?: HandoverSaid;
  /** This very vehicle; empty or absent where only the circuit's is known. */
  readonly vehicle?: string;
  /** Who works on it; empty or absent where they gave no name. */
  readonly technician?: string;
  readonly readings: readonly Reading[];
  readonly batteryVolts: Volts | null;
  readonly when: readonly Circumstance[];
  readonly wiggled: readonly Wiggled[];
  readonly weighing: Weighing;
  readonly connector: string;
  /** Load of a straight branch; "" where the circuit has none. */
  readonly load: string;
  readonly look: Look;
  readonly paper: Paper;
  readonly palette: PrintPalette;
}

/** What a handover page says in people's own words, and what was read after the repair. */
export interface HandoverSaid {
  readonly told: string;
  readonly done: string;
  readonly after: string;
  readonly watch: string;
  readonly job: string;
  readonly readings: readonly Reading[];
}

/** A printed page: where its sheet lies on the paper, and the sheet as SVG, its paper clear. */
export interface PrintedPage {
  readonly placing: Placing;
  readonly svg: string;
  readonly title: string;
}

/** The pages as the PDF has them, from the same marks; none where there is nothing to print. */
export function printedPages(circuit: Circuit, wanted: SheetsWanted): readonly PrintedPage[] {
  const { paper, palette } = wanted;
  return withOwnWords(drawingsOf(circuit, wanted), wanted).map((drawing) => ({
    placing: placingOn(drawing, paper),
    svg: svgOf(drawing, { palette, inPage: true, isClear: true }),
    title: drawing.title ?? "",
  }));
}

function drawingsOf(circuit: Circuit, wanted: SheetsWanted): readonly Drawing[] {
  const { what, complaint, others, readings, batteryVolts, weighing, connector, faults } = wanted;
  if (what === "sheet") return sheetsIn(circuitSheets({ circuit, ...wanted }));
  if (what === "table")
    return connector === "" || !mayBeProbed(circuit).ok
      ? []
      : tableSheets({ circuit, table: positionTable(circuit, connector, faults), faults });
  if (what === "budget") {
    const branch = branchOf(circuit, wanted);
    const isOpen = branch.ok && mayBeProbed(circuit).ok;
    return isOpen ? budgetSheets({ circuit, budget: budgetOf(circuit, branch.value), faults }) : [];
  }
  if (what === "straight") {
    const { load, condition, look } = wanted;
    if (!mayBeProbed(circuit).ok) return [];
    return sheetsIn(straightSheets({ circuit, load, condition, faults, look }));
  }
  if (!complaint) return [];
  if (what === "wiggle") {
    if (!mayBeProbed(circuit).ok) return [];
    const wiggle = wiggleSheet(circuit, { ...complaint, word: "sometimes" }, others, wanted.when, wanted.wiggled);
    return wiggle.rows.length === 0 ? [] : wiggleSheets({ circuit, wiggle });
  }
  if (what === "proof" || what === "handover") return proofDrawings(circuit, wanted, complaint);
  if (what === "branches") {
    const branches = branchesFor(circuit, complaint, { others, readings, batteryVolts, weighing });
    return branches.ok ? branchSheets({ circuit, branches: branches.value }) : [];
  }
  const order = probeOrder(circuit, complaint, { others, readings, batteryVolts, weighing });
  return order.suspects.length === 0 ? [] : checklistSheets({ circuit, order });
}

function proofDrawings(circuit: Circuit, wanted: SheetsWanted, complaint: Observation): readonly Drawing[] {
  const { what, others, readings, batteryVolts, weighing, found: faults = [], handover, vehicle } = wanted;
  if (faults.length === 0) return [];
  const ended = foundBy(circuit, complaint, { others, readings, batteryVolts, weighing }, faults);
  if (!ended.ok) return [];
  const ask = { circuit, complaint: complaint.check, batteryVolts, ...ended.value };
  if (what === "proof") {
    const proof = proofRun(ask);
    return proof.ok
      ? proofSheets({ circuit, proof: proof.value, restVolts: batteryVolts ?? restVoltsOf(circuit) })
      : [];
  }
  const facts = handoverFacts({ ...ask, readings, after: handover?.readings ?? [] });
  if (!facts.ok) return [];
  const { told, done: did, after, watch, job } = handover ?? {};
  const said = { told, did, after, watch, job, vehicle: vehicle || undefined };
  return sheetsIn(handoverSheets({ ...ask, facts: facts.value, observed: complaint.word, ...said }));
}

/** The sheets, or none where there is nothing to print. */
function sheetsIn(sheets: Outcome<readonly Drawing[]>): readonly Drawing[] {
  return sheets.ok ? sheets.value : [];
}
