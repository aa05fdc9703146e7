import { parentPort, workerData } from "node:worker_threads";
import { assert, type Outcome, ok } from "../../core/base/outcome.ts";
import type { Printed, PrintJob } from "./aside.ts";
import { pdfOf } from "./pdf.ts";
import { printTitle } from "./printTitle.ts";
import { sheetsFor } from "./sheets.ts";

// Run as a thread by `printAside`: one job in, one answer out.
const port = parentPort;
assert(port, "the printer runs in a thread");
void printed(workerData as PrintJob).then((outcome) => port.postMessage(outcome));

async function printed({ circuit, ask, paper, palette, under, made }: PrintJob): Promise<Outcome<Printed>> {
  const sheets = sheetsFor(circuit, ask, paper);
  if (!sheets.ok) return sheets;
  const title = printTitle(circuit, ask);
  const pdf = await pdfOf(sheets.value, { paper, palette, under, title, made });
  return ok({ pdf, title, sheets: sheets.value.length });
}
