import { assert } from "../base/outcome.ts";
import type { Amps, Celsius, Ohms, Seconds, Share, Volts } from "../base/units.ts";
import type { Source } from "./source.ts";
import { derived, PRACTICE, published, weakest } from "./source.ts";

/** How many 12 V batteries make up the nominal volts: 1, or 2 from 18 V up. */
export function batteriesInSeries(nominalVolts: Volts): 1 | 2 {
  return nominalVolts >= 18 ? 2 : 1;
}

type Point = readonly [x: number, y: number];

/** Straight lines between points of rising x; flat outside them. */
function between(points: readonly Point[], x: number): number {
  const above = points.findIndex(([atX]) => atX >= x);
  if (above === 0) return points[0]![1];
  if (above === -1) return points[points.length - 1]![1];
  const [x0, y0] = points[above - 1]!;
  const [x1, y1] = points[above]!;
  return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}

/** Source of OPEN_CIRCUIT. */
export const OPEN_CIRCUIT_SOURCE = published("US Army TM 5-3805-262-20, page 5-142");

/**
 * Open-circuit volts of a 12 V lead-acid battery and the charge they tell, after 15 s of lamps and 3 minutes' rest (US
 * Army TM 5-3805-262-20, page 5-142). A meter that is 1 % off is 15 % of charge off.
 */
export const OPEN_CIRCUIT: readonly { readonly volts: Volts; readonly charge: Share }[] = [
  { volts: 11.7, charge: 0 },
  { volts: 12.0, charge: 0.25 },
  { volts: 12.2, charge: 0.5 },
  { volts: 12.4, charge: 0.75 },
  { volts: 12.6, charge: 1 },
];

/** State of charge, 0 to 1, from volts at rest; straight lines between the rows, twice the volts for 24 V. */
export function chargeOf(restVolts: Volts, nominalVolts: Volts = 12): Share {
  const points = OPEN_CIRCUIT.map((row): Point => [row.volts, row.charge]);
  return between(points, restVolts / batteriesInSeries(nominalVolts));
}

/** Open-circuit volts at a state of charge, 0 to 1: the table the other way round. */
export function openVolts(charge: Share, nominalVolts: Volts = 12): Volts {
  const points = OPEN_CIRCUIT.map((row): Point => [row.charge, row.volts]);
  return between(points, charge) * batteriesInSeries(nominalVolts);
}

/** Inner ohms of a healthy 12 V car battery (OpenStax College Physics, starter-motor problem). */
export const INTERNAL_OHMS = {
  ohms: 0.01 as Ohms,
  source: published("OpenStax College Physics, starter-motor problem"),
};

/** Default inner ohms for a vehicle's nominal volts: each battery in series adds its own. */
export function internalOhms(nominalVolts: Volts): Ohms {
  return INTERNAL_OHMS.ohms * batteriesInSeries(nominalVolts);
}

/** Source of internalOhmsFromCca. */
export const CCA_SOURCE = derived("battery rating texts of 1997 and 1999: 30 s at -18 C with at least 7.2 V");

/** Most inner ohms at -18 C of a 12 V battery of these cold-cranking amps: (12.6 - 7.2) / amps. */
export function internalOhmsFromCca(coldCrankingAmps: Amps): Ohms {
  assert(coldCrankingAmps > 0, "a battery cranks");
  return (12.6 - 7.2) / coldCrankingAmps;
}

/** A voltage that a battery is judged by. */
export interface BatteryLimit {
  readonly volts: Volts;
  readonly source: Source;
}

/** Least volts while cranking for 15 s: 12 V (US Army TM 10-3930-671-24), 24 V truck (US Army TM 9-2320-211-20). */
export const CRANKING_LIMITS: { readonly 12: BatteryLimit; readonly 24: BatteryLimit } = {
  12: { volts: 9.6, source: published("US Army TM 10-3930-671-24, pages F-299 and F-303, at 21 to 27 C") },
  24: { volts: 18, source: published("US Army TM 9-2320-211-20, 24 V starter test") },
};

/** Whether battery and connections pass the cranking test of their nominal volts. */
export function passesCranking(crankingVolts: Volts, nominalVolts: Volts = 12): boolean {
  return crankingVolts >= CRANKING_LIMITS[batteriesInSeries(nominalVolts) === 2 ? 24 : 12].volts;
}

/** Most amps of a 24 V truck starter in that test (US Army TM 9-2320-211-20). */
export const STARTER_LIMIT_24 = { amps: 300 as Amps, source: published("US Army TM 9-2320-211-20, 24 V starter test") };

/** Longest single crank and the pause after it (US Army TM 10-3930-671-24). */
export const LONGEST_CRANK = {
  seconds: 30 as Seconds,
  pauseSeconds: 120 as Seconds,
  source: published("US Army TM 10-3930-671-24"),
};

/** Source of LOAD_TEST. */
export const LOAD_TEST_SOURCE = published("a vehicle maker's battery load-test table");

/** Least volts of a 12 V battery after 15 s at half its cold-cranking amps, by temperature (vehicle maker's load-test table). */
export const LOAD_TEST: readonly { readonly celsius: Celsius; readonly volts: Volts }[] = [
  { celsius: -18, volts: 8.5 },
  { celsius: -12, volts: 8.7 },
  { celsius: -7, volts: 8.9 },
  { celsius: -1, volts: 9.1 },
  { celsius: 4, volts: 9.3 },
  { celsius: 10, volts: 9.4 },
  { celsius: 16, volts: 9.5 },
  { celsius: 20, volts: 9.6 },
];

/** Least volts of a 12 V battery in the load test at this temperature, straight lines between the rows. */
export function loadTestLimitVolts(celsius: Celsius): Volts {
  return between(
    LOAD_TEST.map((row): Point => [row.celsius, row.volts]),
    celsius,
  );
}

/** Volts that a charging system may hold. */
export interface ChargingRange {
  readonly least: Volts;
  readonly most: Volts;
  readonly source: Source;
}

const REGULATOR = published(
  "a vehicle maker's service manual, section 33 Electrical, regulating voltage table, page 1335",
);

/** Regulating volts of a 12 V alternator by temperature (vehicle maker's service manual, section 33, page 1335). */
export const REGULATING_VOLTS: readonly (ChargingRange & { readonly celsius: Celsius })[] = [
  { celsius: -20, least: 14.2, most: 15.4, source: REGULATOR },
  { celsius: 20, least: 14.0, most: 15.0, source: REGULATOR },
  { celsius: 60, least: 13.7, most: 14.9, source: REGULATOR },
  { celsius: 80, least: 13.5, most: 14.7, source: REGULATOR },
];

/** Another maker's range for 12 V (alternator regulator description MCH0899FB1231). */
export const OTHER_CHARGING_12: ChargingRange = {
  least: 13.5,
  most: 14.5,
  source: published("alternator regulator description MCH0899FB1231"),
};

/** What is accepted at alternator B+ on 24 V (US Army TM 5-2410-240-23-1, charging system test). */
export const CHARGING_24: ChargingRange = {
  least: 24,
  most: 28,
  source: published("US Army TM 5-2410-240-23-1, charging system test"),
};

/** Range of charging volts: 12 V by temperature, straight lines between the rows; 24 V one range for all. */
export function chargingRange(nominalVolts: Volts, celsius: Celsius = 20): ChargingRange {
  if (batteriesInSeries(nominalVolts) === 2) return CHARGING_24;
  const along = (pick: (row: ChargingRange) => Volts) =>
    between(
      REGULATING_VOLTS.map((row): Point => [row.celsius, pick(row)]),
      celsius,
    );
  return { least: along((row) => row.least), most: along((row) => row.most), source: REGULATOR };
}

/** Volts that models start from: at rest, engine running, and the cranking limit. The 14.2 V is common practice, no source. */
export const MODEL_VOLTS = {
  12: { rest: 12.6 as Volts, running: 14.2 as Volts, cranking: 9.6 as Volts },
  24: { rest: 25.2 as Volts, running: 28 as Volts, cranking: 18 as Volts },
  source: weakest(derived("the tables of this file"), PRACTICE),
} as const;
