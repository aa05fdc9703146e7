import { readingFits } from "../../core/diagnose/readingFits.ts";
import { readingText } from "../../core/diagnose/readingText.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { observationsNow } from "../../core/edit/views.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { loadsOf } from "../../core/live/branch.ts";
import { conditionText } from "../../core/live/condition.ts";
import { faultText } from "../../core/live/fault.ts";
import type { Argument } from "../../schemas/calls.ts";
import type { Settings } from "../../schemas/settings.ts";
import type { SheetsWanted } from "../workers/sheets.ts";
import type { PrintWhat } from "./state.ts";

/** Load whose branch is followed: the one picked, else that of the complaint, else the circuit's first; "" for none. */
export function straightLoad({ circuit, complaint }: Bench, { load }: Pick<PrintWhat, "load">): string {
  const loads = loadsOf(wiringOf(circuit));
  const complained = circuit.checks.find(({ id }) => id === complaint)?.load;
  return [load, complained, loads[0]].find((id) => id !== undefined && loads.includes(id)) ?? "";
}

/** What the preview shows of a bench: with the faults where they are shown. */
export function sheetsWanted(bench: Bench, printing: PrintWhat, settings: Settings): SheetsWanted {
  const { what, page, connector } = printing;
  const seen = observationsNow(bench);
  return {
    what,
    page,
    connector,
    load: straightLoad(bench, printing),
    condition: bench.condition,
    faults: bench.showFaults ? bench.faults : [],
    complaint: seen?.complaint ?? null,
    others: seen?.others ?? [],
    readings: bench.readings,
    batteryVolts: bench.batteryVolts,
    look: settings.look,
    paper: settings.paper,
    palette: settings.ink === "black" ? "black" : "light",
  };
}

/** The same as the host is asked for it as a PDF, in the spellings of the command line. */
export function pdfArgument(bench: Bench, printing: PrintWhat, settings: Settings): Argument<"print.pdf"> {
  const { what, page, connector } = printing;
  const seen = observationsNow(bench);
  const observed = seen ? [seen.complaint, ...seen.others].map(({ check, word }) => `${check.id}=${word}`) : [];
  return {
    circuit: bench.circuit,
    what,
    ...(what === "sheet" && page !== null && { page }),
    condition: conditionText(bench.condition),
    faults: bench.showFaults ? bench.faults.map(faultText) : [],
    ...(seen &&
      (what === "checklist" || what === "branches") && {
        complaint: seen.complaint.check.id,
        observed,
        ...readIn(bench),
      }),
    ...(what === "table" && { connector }),
    ...((what === "straight" || what === "budget") && { load: straightLoad(bench, printing) }),
    look: settings.look,
    paper: settings.paper,
    ink: settings.ink,
  };
}

/** What was read, in the spellings of the command line; what was struck out or fits the drawing no more is left away. */
function readIn({ circuit, readings, batteryVolts }: Bench): Pick<Argument<"print.pdf">, "read" | "battery"> {
  const counted = readings.filter((reading) => reading.standing !== "struck" && readingFits(circuit, reading));
  return {
    read: counted.map((reading) => readingText(circuit, reading)),
    ...(batteryVolts !== null && { battery: String(batteryVolts) }),
  };
}
