import type { Volts } from "../base/units.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import type { Fault } from "../live/fault.ts";
import { cautionsFor } from "./explain.ts";
import { handsOf } from "./proofMinutes.ts";
import { type ProofProbe, windowAt } from "./proofProbes.ts";
import { readWith } from "./reads.ts";
import type { Fineness } from "./spread.ts";
import type { Expected, Step } from "./step.ts";

/** A reading under load, before and after the repair. */
export interface ProofRow {
  /** As a row of an order, though red may be a battery post: its one setting expects what the mended circuit shows. */
  readonly step: Step;
  /** The check in whose condition it is read. */
  readonly check: FunctionCheck;
  /** Volts with the fault, and mended. */
  readonly before: Volts;
  readonly after: Volts;
  /** Numbers of the masked states that it parts from the mended circuit. */
  readonly tells: readonly number[];
}

/** What a row is solved for. */
export interface RowAsk {
  readonly circuit: Circuit;
  readonly complaint: FunctionCheck;
  readonly faults: readonly Fault[];
  /** Volts of the battery over those of the drawing's. */
  readonly scale: number;
}

/** A row in full, solved anew with the meter in the circuit. */
export function rowFor(
  { circuit, complaint, faults, scale }: RowAsk,
  probe: ProofProbe,
  told: Pick<Step, "number" | "minutes" | "why">,
): Omit<ProofRow, "tells"> {
  const { red, black, reached, check, fineness } = probe;
  const [at, other] = reached;
  const how = { black, instrument: "meter volts", lampTo: null } as const;
  const voltsWith = (planted: readonly Fault[]): Volts =>
    scale *
    (readWith(circuit, planted, complaint.condition, { red, ...how, condition: check.condition }).shows.volts ?? 0);
  const turns = check.expect === "forward" || check.expect === "reverse";
  const hands = handsOf(circuit, probe);
  const cautions = cautionsFor(
    circuit,
    {
      ...how,
      at,
      sweepOf: null,
      conditions: [0],
      positions: [""],
      hands,
      fineness,
      alsoOpen: other?.access ?? null,
      minutes: told.minutes,
    },
    [turns ? [check.load] : []],
  );
  const after = voltsWith([]);
  return {
    check,
    after,
    before: voltsWith(faults),
    step: {
      ...told,
      ...how,
      point: red,
      connector: at.connector,
      cavity: at.cavity,
      colour: red === at.point ? at.colour : null,
      sweepOf: null,
      settings: [{ condition: check.condition, position: "", expect: expectedAt(after, fineness) }],
      access: at.access,
      hands,
      cautions,
      outcomes: [],
      ohms: null,
    },
  };
}

/** The window of a mended circuit, to hundredths of a volt or whole millivolts: a drop counts in them. */
function expectedAt(volts: Volts, fineness: Fineness): Expected {
  const spread = windowAt(volts, fineness);
  const [unit, share] = fineness === "millivolts" ? (["mV", 1] as const) : (["V", 100] as const);
  const factor = unit === "mV" ? 1000 : 1;
  const rounded = (each: Volts): number => Math.round(each * factor * share) / share;
  const low = rounded(volts - spread);
  return { low: volts >= 0 ? Math.max(0, low) : low, high: rounded(volts + spread), unit, lamp: null, word: null };
}
