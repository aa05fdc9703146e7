import type { Outcome } from "../../core/base/outcome.ts";
import type { WireState } from "../../core/base/states.ts";
import type { Amps, Volts } from "../../core/base/units.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import type { Circumstance } from "../../core/diagnose/comesAndGoes.ts";
import type { JumperCheck } from "../../core/diagnose/flow/jumper.ts";
import type { Shares } from "../../core/diagnose/flow/shares.ts";
import type { SneakSearch } from "../../core/diagnose/flow/sneaks.ts";
import type { PositionTable } from "../../core/diagnose/positionTable.ts";
import type { ProofRun } from "../../core/diagnose/proofRun.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import type { ProbeOrder, Suspect } from "../../core/diagnose/step.ts";
import type { Weighing } from "../../core/diagnose/weighing.ts";
import type { Wiggled, WiggleSheet } from "../../core/diagnose/wiggle.ts";
import type { Fault } from "../../core/live/fault.ts";
import type { Observed, Verdict } from "../../core/live/judge.ts";
import type { PrintedPage, SheetsWanted } from "./sheets.ts";
import type { Trouble } from "./trouble.ts";

/** What the page asks of the worker. */
export type Question =
  | {
      readonly ask: "order";
      readonly complaint: string;
      readonly observed: Readonly<Record<string, Observed>>;
      readonly readings: readonly Reading[];
      readonly batteryVolts: Volts | null;
      readonly sleepingAmps: Amps | null;
      readonly when: readonly Circumstance[];
      readonly wiggled: readonly Wiggled[];
      readonly weighing: Weighing;
    }
  | { readonly ask: "table"; readonly connectors: readonly string[]; readonly faults: readonly Fault[] }
  | { readonly ask: "verdicts"; readonly faults: readonly Fault[] }
  | {
      readonly ask: "proof";
      readonly complaint: string;
      readonly found: Suspect;
      readonly living: readonly Suspect[];
      readonly batteryVolts: Volts | null;
    }
  | { readonly ask: "pages"; readonly wanted: SheetsWanted }
  | { readonly ask: "shares"; readonly place: string }
  | { readonly ask: "sneaks" }
  | {
      readonly ask: "jumper";
      readonly from: string;
      readonly to: string;
      /** Null for a bare lead. */
      readonly fuseAmps: Amps | null;
      readonly condition: Condition;
      readonly faults: readonly Fault[];
    };

/** The probe order with the state of its point in the good circuit for every setting of every row. */
export interface OrderAnswer {
  readonly order: ProbeOrder;
  readonly states: readonly (readonly WireState[])[];
  /** Places to move, where the complaint comes and goes. */
  readonly wiggle: WiggleSheet | null;
}

/** What proves a repair; null where nothing can. */
export interface ProofAnswer {
  readonly run: ProofRun | null;
}

/** The answer to each question. */
export interface Answers {
  readonly order: OrderAnswer;
  readonly table: readonly PositionTable[];
  /** By check: what the circuit with its faults does in it. */
  readonly verdicts: Readonly<Record<string, Verdict>>;
  readonly proof: ProofAnswer;
  readonly pages: readonly PrintedPage[];
  /** What hangs on a place; a refusal where it is none that others share. */
  readonly shares: Outcome<Shares>;
  readonly sneaks: SneakSearch;
  /** What a jumper would do; a refusal where an end is no point. */
  readonly jumper: Outcome<JumperCheck>;
}

/** A question on its way to the worker. */
export interface Asked {
  readonly number: number;
  /** Present where it is another circuit than that of the question before. */
  readonly circuit?: Circuit;
  readonly question: Question;
}

/** An answer on its way back, or the program's own error. */
export interface Answered extends Partial<Trouble> {
  readonly number: number;
  readonly answer?: Answers[Question["ask"]];
}
