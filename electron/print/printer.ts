import { parentPort, workerData } from "node:worker_threads";
import { assert, type Outcome, ok } from "../../core/base/outcome.ts";
import { GRADE_WORDS } from "../../core/base/words/grade.ts";
import { classSheets } from "../../core/paper/classTable.ts";
import type { CircuitPrintJob, ClassPrintJob, Printed, PrintJob } from "./aside.ts";
import { pdfOf } from "./pdf.ts";
import { printTitle } from "./printTitle.ts";
import { sheetsFor } from "./sheets.ts";

// Run as a thread by `printAside`: one job in, one answer out.
const port = parentPort;
assert(port, "the printer runs in a thread");
void printed(workerData as PrintJob).then((outcome) => port.postMessage(outcome));

async function printed(job: PrintJob): Promise<Outcome<Printed>> {
  return "ofClass" in job ? ok(await classPrinted(job)) : circuitPrinted(job);
}

async function circuitPrinted(job: CircuitPrintJob): Promise<Outcome<Printed>> {
  const { circuit, ask, paper, palette, under, made } = job;
  const sheets = sheetsFor(circuit, ask, paper);
  if (!sheets.ok) return sheets;
  const title = printTitle(circuit, ask);
  const pdf = await pdfOf(sheets.value, { paper, palette, under, title, made });
  return ok({ pdf, title, sheets: sheets.value.length });
}

async function classPrinted({ ofClass, paper, palette, made }: ClassPrintJob): Promise<Printed> {
  const sheets = classSheets(ofClass);
  const { title } = GRADE_WORDS.sheet;
  return { pdf: await pdfOf(sheets, { paper, palette, title, made }), title, sheets: sheets.length };
}
