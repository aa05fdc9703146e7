import { happensIn } from "../../core/diagnose/comesAndGoes.ts";
import { foundIn } from "../../core/diagnose/found.ts";
import { readingsTyped, readingText } from "../../core/diagnose/readingText.ts";
import type { Suspect } from "../../core/diagnose/step.ts";
import { mayBeWeighed, type Weighing } from "../../core/diagnose/weighing.ts";
import { weightText } from "../../core/diagnose/weightText.ts";
import { swingText } from "../../core/diagnose/wiggleEntry.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { observationsNow } from "../../core/edit/views.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { loadsOf } from "../../core/live/branch.ts";
import { conditionText } from "../../core/live/condition.ts";
import { faultText } from "../../core/live/fault.ts";
import type { Argument } from "../../schemas/calls.ts";
import type { Settings } from "../../schemas/settings.ts";
import type { HandoverSaid, SheetsWanted } from "../workers/sheets.ts";
import type { Open, PrintWhat } from "./state.ts";

/** Load whose branch is followed: the one picked, else that of the complaint, else the circuit's first; "" for none. */
export function straightLoad({ circuit, complaint }: Bench, { load }: Pick<PrintWhat, "load">): string {
  const loads = loadsOf(wiringOf(circuit));
  const complained = circuit.checks.find(({ id }) => id === complaint)?.load;
  return [load, complained, loads[0]].find((id) => id !== undefined && loads.includes(id)) ?? "";
}

/** A handover page on which nothing was written yet. */
export const NOTHING_SAID: HandoverSaid = { told: "", done: "", after: "", watch: "", job: "", readings: [] };

/** What a handover page says: as typed for it, else as the job in hand has it; after the repair what was read for the job. */
export function handoverSaid({ job }: Bench, { handover = NOTHING_SAID }: PrintWhat): HandoverSaid {
  if (job === null) return handover;
  return { ...handover, told: handover.told || job.told, done: handover.done || job.done, readings: job.after };
}

/** The suspect to prove, once the search is certain or orders now; null while it goes on or is worked out anew. */
export function foundNow({ order }: Open): Suspect | null {
  return order.answer === null || order.isOld ? null : foundIn(order.answer.order);
}

/** What the preview shows of a bench: with the faults where they are shown. */
export function sheetsWanted(
  bench: Bench,
  printing: PrintWhat,
  settings: Settings,
  weighing: Weighing,
  found: Suspect | null = null,
): SheetsWanted {
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
    found: found?.faults ?? [],
    handover: handoverSaid(bench, printing),
    vehicle: bench.job?.vehicle ?? "",
    technician: settings.person,
    readings: bench.readings,
    batteryVolts: bench.batteryVolts,
    when: bench.when,
    wiggled: bench.wiggled,
    weighing,
    look: settings.look,
    paper: settings.paper,
    palette: settings.ink === "black" ? "black" : "light",
  };
}

/** The same as the host is asked for it as a PDF, in the spellings of the command line. */
export function pdfArgument(
  bench: Bench,
  printing: PrintWhat,
  settings: Settings,
  weighing: Weighing,
  found: Suspect | null = null,
): Argument<"print.pdf"> {
  const { what, page, connector } = printing;
  const isProof = what === "proof" || what === "handover";
  const seen = observationsNow(bench);
  const observed = seen
    ? [seen.complaint, ...seen.others]
        .filter(({ check }) => bench.circuit.checks.includes(check))
        .map(({ check, word }) => `${check.id}=${word}`)
    : [];
  return {
    circuit: bench.circuit,
    what,
    ...(what === "sheet" && page !== null && { page }),
    condition: conditionText(bench.condition),
    faults: (isProof ? (found?.faults ?? []) : bench.showFaults ? bench.faults : []).map(faultText),
    ...(seen &&
      (isProof || what === "checklist" || what === "branches" || what === "wiggle") && {
        complaint: seen.complaint.check.id,
        observed,
        ...readIn(bench),
        weigh: weighing.circuit.filter(({ of }) => mayBeWeighed(bench.circuit, of)).map(weightText),
        shop: weighing.shop.map(weightText),
        solved: [...weighing.solved],
        ...(what === "wiggle" && {
          ...(bench.when.length > 0 && { when: happensIn(bench.when).join(",") }),
          wiggled: bench.wiggled.map((each) => `${each.place} : ${swingText(each)}`),
        }),
        ...(bench.sleepingAmps !== null && { sleeping: String(bench.sleepingAmps * 1000) }),
      }),
    ...(what === "handover" && saidIn(bench, printing)),
    ...filledIn({ vehicle: bench.job?.vehicle ?? "", technician: settings.person }),
    ...(what === "table" && { connector }),
    ...((what === "straight" || what === "budget") && { load: straightLoad(bench, printing) }),
    look: settings.look,
    paper: settings.paper,
    ink: settings.ink,
  };
}

/** What a handover page says, what is left empty left away. */
function saidIn(bench: Bench, printing: PrintWhat): Partial<Argument<"print.pdf">> {
  const { readings, job: number, ...said } = handoverSaid(bench, printing);
  return {
    ...filledIn({ ...said, number }),
    readAfter: readings.map((reading) => readingText(bench.circuit, reading)),
  };
}

/** Words that are not empty. */
function filledIn(words: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(words).filter(([, each]) => each.trim() !== ""));
}

/** What was read, in the spellings of the command line; what was struck out or fits the drawing no more is left away. */
function readIn({ circuit, readings, batteryVolts }: Bench): Pick<Argument<"print.pdf">, "read" | "battery"> {
  return {
    read: [...readingsTyped(circuit, readings)],
    ...(batteryVolts !== null && { battery: String(batteryVolts) }),
  };
}
