import type { Lots } from "../../core/base/seed.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Known, probeOrder } from "../../core/diagnose/order.ts";
import type { Possible } from "../../core/diagnose/possible.ts";
import { type Probe, type Reading, readingOf, type Shows } from "../../core/diagnose/reading.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { repairsOf } from "../../core/diagnose/repairs.ts";
import type { ProbeOrder, Step } from "../../core/diagnose/step.ts";
import type { Observation } from "../../core/diagnose/suspects.ts";
import { OPEN_FROM } from "../../core/trade/instruments.ts";

/** Rows after which a search is given up. */
const MOST_ROWS = 30;

/** How a search for a planted fault ended. */
export interface Ended {
  readonly order: ProbeOrder;
  readonly rows: number;
  readonly minutes: number;
  /** The true repair leads, or is among those that nothing tells apart. */
  readonly isFound: boolean;
  /** Before every row: the share of the leading repair and whether it is the true one, and the share of the true one. */
  readonly course: readonly { readonly leads: number; readonly isRight: boolean; readonly truth: number }[];
}

/** The probes of a row: one for every setting. */
export function probesOf({ point, black, instrument, lampTo, settings }: Step): readonly Probe[] {
  return settings.map(({ condition }) => ({ red: point, black, instrument, lampTo, condition }));
}

/**
 * Takes the first row of the order again and again, with what a circuit with the true fault shows; `misread` may change
 * a reading. Ends when the order says so.
 */
export function search(
  circuit: Circuit,
  complaint: Observation,
  truth: Possible,
  misread: (shows: Shows, row: Step) => Shows = (shows) => shows,
  known: Known = {},
): Ended {
  const readings: Reading[] = [];
  const course: Ended["course"][number][] = [];
  let minutes = 0;
  for (let rows = 0; ; rows++) {
    const order = probeOrder(circuit, complaint, { ...known, readings });
    const row = order.steps[0];
    const repairs = repairsOf(order.suspects);
    course.push({
      leads: repairs[0]?.share ?? 0,
      isRight: repairs[0]?.repair === truth.repair,
      truth: repairs.find(({ repair }) => repair === truth.repair)?.share ?? 0,
    });
    if (order.progress === "certain" || order.progress === "tied" || !row || rows === MOST_ROWS)
      return { order, rows, minutes, isFound: isFound(order, truth), course };
    minutes += row.minutes;
    for (const probe of probesOf(row)) {
      const { shows } = readWith(circuit, truth.faults, complaint.check.condition, probe);
      readings.push(readingOf(probe, misread(shows, row)));
    }
  }
}

function isFound({ progress, suspects }: ProbeOrder, truth: Possible): boolean {
  const leader = repairsOf(suspects)[0];
  if (progress === "tied") return suspects.some(({ repairGroup }) => repairGroup === truth.repair);
  return leader?.repair === truth.repair;
}

/** Amps that are read round the wrong wire where there should be none. */
const WRONG_AMPS = 5;

/** A person who misreads that share of measured rows: nothing at all where there was something, battery volts where there was none. */
export function careless(share: number, nominalVolts: number, lot: Lots): (shows: Shows, row: Step) => Shows {
  let row: Step | null = null;
  let isWrong = false;
  return (shows, of) => {
    if (of !== row) isWrong = lot() < share;
    row = of;
    if (!isWrong) return shows;
    if (shows.ohms !== undefined) return { ...shows, ohms: shows.ohms < OPEN_FROM / 2 ? OPEN_FROM : 0 };
    if (shows.amps !== undefined) return { ...shows, amps: shows.amps > WRONG_AMPS / 2 ? 0 : WRONG_AMPS };
    if (shows.volts === null) return shows;
    const volts = shows.volts > nominalVolts / 4 ? 0 : nominalVolts;
    const word = shows.word === null ? null : (OTHER[shows.word] ?? shows.word);
    return { volts, word };
  };
}

const OTHER: Readonly<Record<string, string>> = {
  bright: "dark",
  dim: "dark",
  dark: "bright",
};
