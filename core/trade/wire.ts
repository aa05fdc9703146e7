import { assert } from "../base/outcome.ts";
import type { Celsius, Metres, Ohms, Share, SquareMillimetres } from "../base/units.ts";
import type { Source } from "./source.ts";
import { MEMORY, published } from "./source.ts";

/**
 * Annealed copper at 20 C: resistivity 1/58 ohm mm2 per metre (NBS Handbook 100, Copper Wire Tables, 1966), temperature
 * coefficient (IEC 60287, table 1), and the Celsius at which its ohms would reach zero (TE Connectivity, "Temperature
 * considerations for DC relays").
 */
export const ANNEALED_COPPER = {
  ohmMm2PerMetre: 0.017241,
  perKelvinAt20: 0.00393,
  zeroCelsius: -234.5,
  source: published(
    "NBS Handbook 100, Copper Wire Tables, 1966; IEC 60287 table 1; TE Connectivity, Temperature considerations for DC relays",
  ),
} as const;

/**
 * Ohms of copper at `celsius` over its ohms at `fromCelsius`: (234.5 + T1) / (234.5 + T0) (TE Connectivity, "Temperature
 * considerations for DC relays"). From 20 C it agrees with the coefficient 0.00393 to a thousandth.
 */
export function copperRatio(celsius: Celsius, fromCelsius: Celsius = 20): Share {
  const { zeroCelsius } = ANNEALED_COPPER;
  assert(celsius > zeroCelsius && fromCelsius > zeroCelsius, "copper is above the temperature where its ohms vanish");
  return (celsius - zeroCelsius) / (fromCelsius - zeroCelsius);
}

/** Ratio of ohms by a linear law: 1 + coefficient x degrees above the reference. */
export function linearRatio(perKelvin: number, degreesAbove: Celsius): Share {
  return 1 + perKelvin * degreesAbove;
}

/** Least ohms per metre that this area of annealed copper can have at 20 C (NBS Handbook 100 resistivity over area). */
export function geometricOhmsPerMetre(mm2: SquareMillimetres): Ohms {
  assert(mm2 > 0, "a wire has copper in it");
  return ANNEALED_COPPER.ohmMm2PerMetre / mm2;
}

/** A metric wire size: the model's ohms per metre at 20 C, and the published ceiling where there is one. */
export interface MetricSize {
  readonly mm2: SquareMillimetres;
  readonly ohmsPerMetre: Ohms;
  readonly source: Source;
  /** Most ohms per metre of flexible plain copper by IEC 60228 class 5; null where the class has no such size. */
  readonly class5OhmsPerMetre: Ohms | null;
}

/** Source of the ceilings in METRIC_SIZES. */
export const CLASS_5_SOURCE = published("EN/IEC 60228 class 5, conductor resistance table");

function size(mm2: SquareMillimetres, milliohms: number, class5Milliohms: number | null): MetricSize {
  const ceiling = class5Milliohms === null ? null : class5Milliohms / 1000;
  return { mm2, ohmsPerMetre: milliohms / 1000, source: MEMORY, class5OhmsPerMetre: ceiling };
}

/**
 * Vehicle wire sizes. Ohms per metre: most allowed by ISO 6722-1 for plain copper at 20 C, FROM MEMORY, the standard was
 * not opened; every row lies between bare geometry and IEC 60228 class 5 (published).
 */
export const METRIC_SIZES: readonly MetricSize[] = [
  size(0.22, 84.8, null),
  size(0.35, 54.4, null),
  size(0.5, 37.1, 39.0),
  size(0.75, 24.7, 26.0),
  size(1.0, 18.5, 19.5),
  size(1.5, 12.7, 13.3),
  size(2.5, 7.6, 7.98),
  size(4, 4.71, 4.95),
  size(6, 3.14, 3.3),
  size(10, 1.82, 1.91),
  size(16, 1.16, 1.21),
  size(25, 0.743, 0.78),
];

function factorOf(row: MetricSize): Share {
  return row.ohmsPerMetre / geometricOhmsPerMetre(row.mm2);
}

/** How much worse than bare geometry a wire of a size between the table's is: between its neighbours' factors. */
function strandFactor(mm2: SquareMillimetres): Share {
  const above = METRIC_SIZES.find((row) => row.mm2 >= mm2) ?? METRIC_SIZES[METRIC_SIZES.length - 1]!;
  const below = METRIC_SIZES.filter((row) => row.mm2 <= mm2).at(-1) ?? above;
  if (above.mm2 <= below.mm2) return factorOf(below);
  const along = (mm2 - below.mm2) / (above.mm2 - below.mm2);
  return factorOf(below) + along * (factorOf(above) - factorOf(below));
}

/**
 * Ohms per metre at 20 C of a vehicle wire, with its source. A size of the table gives the table's figure; any other is
 * bare geometry times the strand factor of its neighbours, so it stands no better than they do.
 */
export function metricOhmsPerMetre(mm2: SquareMillimetres): { readonly ohmsPerMetre: Ohms; readonly source: Source } {
  const row = METRIC_SIZES.find((each) => each.mm2 === mm2);
  if (row) return { ohmsPerMetre: row.ohmsPerMetre, source: row.source };
  return { ohmsPerMetre: geometricOhmsPerMetre(mm2) * strandFactor(mm2), source: MEMORY };
}

/** Ohms of a length of vehicle wire at its own temperature. Copper above 0 mm2, length not below 0. */
export function wireOhms(wire: {
  readonly mm2: SquareMillimetres;
  readonly metres: Metres;
  readonly celsius: Celsius;
}): Ohms {
  assert(wire.metres >= 0, "a wire has no negative length");
  return metricOhmsPerMetre(wire.mm2).ohmsPerMetre * wire.metres * copperRatio(wire.celsius);
}
