import { PAPER_WORDS as WORDS } from "../../core/base/words/paper.ts";
import { HANDOVER_WORDS, PROOF_WORDS } from "../../core/base/words/proof.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { faultTitle, parseFault } from "../../core/live/fault.ts";
import type { SheetAsk } from "../../schemas/calls/print.ts";
import { connectorOf, seenOf } from "../asked.ts";

/** Most of a circuit's title that stands in the name of a print, so that what the print shows has room after it. */
const LONGEST = 40;

/** Sheets that show a circuit with the faults asked for; of others these are what was found. */
const WITH_FAULTS: readonly SheetAsk["what"][] = ["sheet", "table", "straight", "budget"];

/** What a print is called, as a document and as a file: `Roof vents, position table X6, with W13 broken`. */
export function printTitle(circuit: Circuit, ask: SheetAsk): string {
  const title = circuit.title.trim().slice(0, LONGEST).trim();
  const faults = ask.faults.flatMap((text) => {
    const fault = parseFault(circuit, text);
    return fault.ok ? [fault.value] : [];
  });
  const [first] = faults;
  const named = first && faults.length === 1 ? faultTitle(circuit, first) : WORDS.faults(faults.length);
  const said = !first || !WITH_FAULTS.includes(ask.what) ? "" : WORDS.printedWith(named);
  return [title, shown(circuit, ask), said].filter((words) => words !== "").join(", ");
}

function shown(circuit: Circuit, ask: SheetAsk): string {
  switch (ask.what) {
    case "sheet": {
      const number = circuit.pages.findIndex(({ id }) => id === ask.page) + 1;
      const page = number === 0 || circuit.pages.length === 1 ? "" : `, ${WORDS.printedPage(number)}`;
      return `${WORDS.printedSheet}${page}`;
    }
    case "checklist":
      return WORDS.printedOrder;
    case "branches":
      return WORDS.printedBranches;
    case "wiggle":
      return WORDS.printedWiggle;
    case "table": {
      const connector = connectorOf(circuit, ask.connector);
      return WORDS.printedTable(connector.ok ? connector.value : "");
    }
    case "budget":
      return WORDS.printedBudget(ask.load ?? loadComplainedOf(circuit, ask.complaint));
    case "proof":
      return PROOF_WORDS.sheet;
    case "handover":
      return HANDOVER_WORDS.sheet;
    case "straight":
      return WORDS.printedBranch(ask.load ?? loadComplainedOf(circuit, ask.complaint));
  }
}

function loadComplainedOf(circuit: Circuit, complaint: string | undefined): string {
  const seen = seenOf(circuit, complaint);
  return seen.ok ? seen.value.complaint.check.load : "";
}
