import type { Bench } from "../../core/edit/bench.ts";
import { observationsNow } from "../../core/edit/views.ts";
import { conditionText } from "../../core/live/condition.ts";
import { faultText } from "../../core/live/fault.ts";
import type { Argument } from "../../schemas/calls.ts";
import type { Settings } from "../../schemas/settings.ts";
import type { SheetsWanted } from "../workers/sheets.ts";
import type { PrintWhat } from "./state.ts";

/** What the preview shows of a bench: with the faults where they are shown. */
export function sheetsWanted(bench: Bench, { what, page, connector }: PrintWhat, settings: Settings): SheetsWanted {
  const seen = observationsNow(bench);
  return {
    what,
    page,
    connector,
    condition: bench.condition,
    faults: bench.showFaults ? bench.faults : [],
    complaint: seen?.complaint ?? null,
    others: seen?.others ?? [],
    look: settings.look,
    paper: settings.paper,
    palette: settings.ink === "black" ? "black" : "light",
  };
}

/** The same as the host is asked for it as a PDF, in the spellings of the command line. */
export function pdfArgument(
  bench: Bench,
  { what, page, connector }: PrintWhat,
  settings: Settings,
): Argument<"print.pdf"> {
  const seen = observationsNow(bench);
  const observed = seen ? [seen.complaint, ...seen.others].map(({ check, word }) => `${check.id}=${word}`) : [];
  return {
    circuit: bench.circuit,
    what,
    ...(what === "sheet" && page !== null && { page }),
    condition: conditionText(bench.condition),
    faults: bench.showFaults ? bench.faults.map(faultText) : [],
    ...(seen && what === "checklist" && { complaint: seen.complaint.check.id, observed }),
    ...(what === "table" && { connector }),
    look: settings.look,
    paper: settings.paper,
    ink: settings.ink,
  };
}
