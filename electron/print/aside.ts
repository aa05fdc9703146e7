import { Worker } from "node:worker_threads";
import { type Outcome, refuse } from "../../core/base/outcome.ts";
import type { Seconds } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { ClassPrint } from "../../core/paper/classTable.ts";
import type { Paper, PrintPalette } from "../../core/paper/placing.ts";
import type { SheetAsk } from "../../schemas/calls/print.ts";
import type { Under } from "./under.ts";

/** What any print says. */
interface OnPaper {
  readonly paper: Paper;
  readonly palette: PrintPalette;
  /** The day of making. */
  readonly made: Date;
}

/** Sheets of a circuit to be painted as a PDF. */
export interface CircuitPrintJob extends OnPaper {
  readonly circuit: Circuit;
  readonly ask: SheetAsk;
  /** Pictures under each of the sheets. */
  readonly under: readonly (readonly Under[])[];
}

/** The table of a class to be painted as a PDF. */
export interface ClassPrintJob extends OnPaper {
  readonly ofClass: ClassPrint;
}

/** Sheets to be painted as a PDF. */
export type PrintJob = CircuitPrintJob | ClassPrintJob;

/** A PDF and what it holds. */
export interface Printed {
  readonly pdf: Uint8Array;
  readonly title: string;
  readonly sheets: number;
}

/** Longest that a print may take. */
const LONGEST: Seconds = 120;

/**
 * Paints sheets in a thread of their own: a checklist is worked out for seconds, and the window must not stand still
 * for it. `printer` is the file that the thread runs. Refuses as `sheetsFor` does, and `print-too-long`.
 */
export function printAside(printer: URL | string, job: PrintJob): Promise<Outcome<Printed>> {
  return new Promise((resolve, reject) => {
    const thread = new Worker(printer, { workerData: job });
    const end = setTimeout(() => {
      void thread.terminate();
      resolve(refuse("print-too-long", { seconds: LONGEST }));
    }, LONGEST * 1_000);
    thread.once("message", (outcome: Outcome<Printed>) => resolve(outcome));
    thread.once("error", reject);
    thread.once("exit", () => {
      clearTimeout(end);
      reject(new Error("broken invariant: a printing thread gives an answer before it ends"));
    });
  });
}
