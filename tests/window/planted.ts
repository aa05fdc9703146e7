import { probeOrder } from "../../core/diagnose/order.ts";
import { type Reading, readingOf, type Shows } from "../../core/diagnose/reading.ts";
import { showsText } from "../../core/diagnose/readingText.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { parseFault } from "../../core/live/fault.ts";
import { sample } from "../samples/onTheBench.ts";

/** A row that the program asks for, with what the vehicle shows in it. */
export interface PlantedRow {
  readonly number: number;
  readonly point: string;
  readonly shows: readonly Shows[];
}

/** A vehicle with a fault in it, that is read in the order of the program. */
export interface Planted {
  /** The row to take next; null once the program is sure, or has no more. */
  next(): PlantedRow | null;
  /** Readings taken so far. */
  count(): number;
}

/** What is typed has two decimals, as a meter shows them. */
function metered(shows: Shows): Shows {
  const hundredths = (figure: number): number => Number(figure.toFixed(2));
  return {
    ...shows,
    volts: shows.volts === null ? null : hundredths(shows.volts),
    ...(shows.ohms === undefined ? {} : { ohms: hundredths(shows.ohms) }),
    ...(shows.amps === undefined ? {} : { amps: hundredths(shows.amps) }),
  };
}

/** The vehicle of a sample on which a check is dead because of a fault. */
export function planted(name: string, check: string, fault: string): Planted {
  const circuit = sample(name);
  const complaint = { check: circuit.checks.find(({ id }) => id === check)!, word: "dead" } as const;
  const truth = parseFault(circuit, fault);
  if (!truth.ok) throw new Error(`${fault} was refused`);
  const readings: Reading[] = [];
  return {
    next() {
      const { progress, steps } = probeOrder(circuit, complaint, { readings });
      const [row] = steps;
      if (!row || progress === "certain" || progress === "tied") return null;
      const { number, point, black, instrument, lampTo } = row;
      const probes = row.settings.map(({ condition }) => ({ red: point, black, instrument, lampTo, condition }));
      const shows = probes.map((probe) =>
        metered(readWith(circuit, [truth.value], complaint.check.condition, probe).shows),
      );
      probes.forEach((probe, index) => {
        readings.push(readingOf(probe, shows[index]!));
      });
      return { number, point, shows };
    },
    count: () => readings.length,
  };
}

/** What a person types for a row. */
export function entryText(shows: readonly Shows[]): string {
  return shows.map((each) => showsText(each, finenessShown(each))).join("  ");
}

function finenessShown({ ohms, amps }: Shows): "volts" | "ohms" | "amps" {
  if (ohms !== undefined) return "ohms";
  return amps === undefined ? "volts" : "amps";
}
