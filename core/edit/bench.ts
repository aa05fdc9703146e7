import type { Amps, Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Circumstance } from "../diagnose/comesAndGoes.ts";
import type { JobAbout } from "../diagnose/job.ts";
import type { Reading } from "../diagnose/reading.ts";
import type { WeightFactor } from "../diagnose/weighing.ts";
import type { Wiggled } from "../diagnose/wiggle.ts";
import type { Fault } from "../live/fault.ts";
import type { Clipped } from "../live/instruments/clipped.ts";
import type { Observed } from "../live/judge.ts";
import type { PartStates } from "../live/standing.ts";

/**
 * Where the circuit stood before its present condition: live state goes on from here, so that latches hold and a melted
 * fuse stays melted. The circuit with nothing wrong and the one with the faults have a history each.
 */
export interface Before {
  readonly condition: Condition;
  /** States of parts in the circuit with nothing wrong. */
  readonly good: PartStates;
  /** States of parts in the circuit as it is, faults put in and fuses melted. */
  readonly now: PartStates;
}

/**
 * All that is open, as plain data that JSON keeps. What is worth undoing stands here and nothing else: the page that is
 * shown, zoom, the set of symbols, what is chosen or lit up belong to the window.
 */
export interface Bench {
  readonly circuit: Circuit;
  readonly condition: Condition;
  readonly before: Before;
  readonly faults: readonly Fault[];
  /** Texts of those faults that come and go and are away now. Time alone changes it: it is neither undone nor kept. */
  readonly gone: readonly string[];
  /** Whether the drawing shows the circuit with the faults, or with nothing wrong. */
  readonly showFaults: boolean;
  /** Instruments on the bench, and where each is clipped. */
  readonly clipped: readonly Clipped[];
  /** Id of the function check that is complained of. */
  readonly complaint: string | null;
  /** What was seen of the function checks, by id; one that is not named was not tried. */
  readonly observed: Readonly<Record<string, Observed>>;
  /** What was read on the vehicle, in the order it was. Facts: they stay, whatever is done to the drawing. */
  readonly readings: readonly Reading[];
  /** Volts of the battery at rest, measured; null where nobody did. */
  readonly batteryVolts: Volts | null;
  /** Amps expected of the sleeping vehicle; null where nobody said. */
  readonly sleepingAmps: Amps | null;
  /** When the complaint shows. */
  readonly when: readonly Circumstance[];
  /** What the meter kept while places were moved. */
  readonly wiggled: readonly Wiggled[];
  /** What else is known of the job in hand; null where what was noted belongs to none. */
  readonly job: JobAbout | null;
  /** Factors on starting weights that hold for this circuit, whatever the job. */
  readonly weights: readonly WeightFactor[];
}

/** What stands on a bench beside its circuit, by name. */
export const BENCH_FIELDS = [
  "condition",
  "before",
  "faults",
  "showFaults",
  "clipped",
  "complaint",
  "observed",
  "readings",
  "batteryVolts",
  "sleepingAmps",
  "when",
  "wiggled",
  "job",
  "weights",
] as const satisfies readonly Exclude<keyof Bench, "circuit">[];

/** A bench with this circuit at rest, nothing wrong and nothing noted. */
export function benchFor(circuit: Circuit): Bench {
  return {
    circuit,
    condition: {},
    before: { condition: {}, good: {}, now: {} },
    faults: [],
    gone: [],
    showFaults: true,
    clipped: [],
    complaint: null,
    observed: {},
    readings: [],
    batteryVolts: null,
    sleepingAmps: null,
    when: [],
    wiggled: [],
    job: null,
    weights: [],
  };
}
