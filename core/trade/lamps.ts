import type { Amps, Ohms, Share, Volts, Watts } from "../base/units.ts";
import type { Source } from "./source.ts";
import { MEMORY, published } from "./source.ts";

/** The point where a lamp's amps are known. */
export interface RatedLamp {
  readonly volts: Volts;
  readonly amps: Amps;
}

/** Exponents of V / V0 for a tungsten lamp; life and light are given as a range (Wikipedia, "Lamp rerating"). */
export const LAMP_EXPONENTS = {
  amps: 0.55,
  watts: 1.6,
  light: 3.4,
  mostLight: 3.5,
  life: -12,
  mostLife: -16,
  colourTemperature: 0.42,
  source: published("Wikipedia, Lamp rerating, after Welch Allyn 2007 and Standard Handbook for Electrical Engineers"),
} as const;

/** A cold filament has about this share of its hot ohms (lamp-driver application note; elesa.com, lamp load). */
export const COLD_SHARE = {
  share: 0.1 as Share,
  source: published("lamp-driver application note; elesa.com, lamp load"),
};

/** First rush of current over the rated one: 10 to 12 for small lamps, 14 for others (application note; lamptech.co.uk). */
export const INRUSH = {
  least: 10,
  most: 14,
  source: published("lamp-driver application note; lamptech.co.uk, incandescent starting"),
} as const;

/**
 * Amps through a warm tungsten filament, of the sign of the volts: I0 (V / V0)^0.55 (Wikipedia, "Lamp rerating"). The law
 * fails near zero, so the ohms run smoothly down to a tenth of the rated ones there.
 */
export function lampAmps(volts: Volts, rated: RatedLamp): Amps {
  const u = volts / rated.volts;
  return rated.amps * u * (u * u + FLOOR) ** -HALF;
}

const HALF = (1 - LAMP_EXPONENTS.amps) / 2;
const FLOOR = COLD_SHARE.share ** (1 / HALF);

/** Share of its rated light that a lamp gives: |V / V0|^3.4 (Wikipedia, "Lamp rerating"). */
export function lightShare(volts: Volts, ratedVolts: Volts): Share {
  return Math.abs(volts / ratedVolts) ** LAMP_EXPONENTS.light;
}

/** Ohms of a lamp at its rated point. */
export function hotOhms(rated: RatedLamp): Ohms {
  return rated.volts / rated.amps;
}

/** Ohms of a lamp that is off and cool: a tenth of the hot ones. */
export function coldFilamentOhms(rated: RatedLamp): Ohms {
  return hotOhms(rated) * COLD_SHARE.share;
}

/** Amps in the first instant on a cold filament. */
export function inrushAmps(volts: Volts, rated: RatedLamp): Amps {
  return volts / coldFilamentOhms(rated);
}

/** One filament of a lamp category. `most` says that `watts` is a ceiling; else `tolerance` lies to both sides. */
export interface Filament {
  readonly ratedWatts: Watts;
  readonly watts: Watts | null;
  readonly tolerance: Share | null;
  readonly most: boolean;
  readonly lumens: number | null;
}

/** A lamp category of UN R37. */
export interface LampCategory {
  readonly name: string;
  readonly nominalVolts: Volts;
  readonly testVolts: Volts;
  readonly filaments: readonly Filament[];
  readonly source: Source;
}

function about(ratedWatts: Watts, watts: Watts, tolerance: Share, lumens: number): Filament {
  return { ratedWatts, watts, tolerance, most: false, lumens };
}

function atMost(ratedWatts: Watts, watts: Watts | null, lumens: number | null): Filament {
  return { ratedWatts, watts, tolerance: null, most: true, lumens };
}

const R37_1997 = published("EU Directive 97/24/EC, annex sheet P21/5W");
const PY = published("UN ECE/TRANS/WP.29/GRE/2012/34, PY21/5W");

function lamp(
  name: string,
  nominalVolts: Volts,
  testVolts: Volts,
  source: Source,
  ...filaments: readonly Filament[]
): LampCategory {
  return { name, nominalVolts, testVolts, filaments, source };
}

/**
 * Lamps of UN R37. P21/5W from EU Directive 97/24/EC, PY21/5W from GRE/2012/34, H1 12 V from cryer.org.uk; the others are
 * wholly or partly from memory and marked so.
 */
export const LAMPS: readonly LampCategory[] = [
  lamp("P21/5W", 12, 13.5, R37_1997, about(21, 25, 0.06, 440), about(5, 6, 0.1, 35)),
  lamp("P21/5W", 24, 28, R37_1997, about(21, 28, 0.06, 440), about(5, 10, 0.1, 40)),
  lamp("P21/5W", 6, 6.75, R37_1997, about(21, 26, 0.06, 440), about(5, 6, 0.1, 35)),
  lamp("PY21/5W", 12, 13.5, PY, atMost(21, 26.5, 270), atMost(5, 6.6, 21)),
  lamp("H1", 12, 13.2, published("cryer.org.uk, H1 lamp"), atMost(55, 68, 1550)),
  lamp("H1", 24, 28, MEMORY, atMost(70, null, null)),
  lamp("H3", 12, 13.2, MEMORY, atMost(55, null, 1450)),
  lamp("H4", 12, 13.2, MEMORY, atMost(60, 75, 1650), atMost(55, 68, 1000)),
  lamp("H7", 12, 13.2, MEMORY, atMost(55, 58, 1500)),
  lamp("P21W", 12, 13.5, MEMORY, atMost(21, 26.5, 460)),
  lamp("P21W", 24, 28, MEMORY, atMost(21, 29.7, 460)),
  lamp("R5W", 12, 13.5, MEMORY, atMost(5, 5.5, 50)),
  lamp("W5W", 12, 13.5, MEMORY, atMost(5, 5.5, 50)),
  lamp("C5W", 12, 13.5, MEMORY, atMost(5, 5.5, 45)),
  lamp("R10W", 12, 13.5, MEMORY, atMost(10, 11, 125)),
  lamp("T4W", 12, 13.5, MEMORY, atMost(4, 4.4, 35)),
  lamp("W3W", 12, 13.5, MEMORY, atMost(3, 3.45, 22)),
  lamp("W16W", 12, 13.5, MEMORY, atMost(16, 21.35, 310)),
];

/** The lamp of a category and nominal volts; null where the table has none. */
export function lampCategory(name: string, nominalVolts: Volts): LampCategory | null {
  return LAMPS.find((each) => each.name === name && each.nominalVolts === nominalVolts) ?? null;
}

/** Amps at test volts of a filament, the first one unless told; null where the watts are not known or there is none. */
export function ratedLamp(category: LampCategory, filament = 0): RatedLamp | null {
  const watts = category.filaments[filament]?.watts ?? null;
  return watts === null ? null : { volts: category.testVolts, amps: watts / category.testVolts };
}
