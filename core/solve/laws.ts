import { assert } from "../base/outcome.ts";
import type { Amps, Siemens, Volts } from "../base/units.ts";
import type { Law } from "./element.ts";

/**
 * The laws of a network's elements as numbers in a row, so that the inner loops touch no objects. Every law rises or
 * stays level with the volts and passes 0 amps somewhere: that is why a network of them always has a solution.
 */
export interface LawTable {
  /** Which law each element has: one of the codes below. Size E, the number of elements. */
  readonly code: Uint8Array;
  /** Four numbers an element, what they are is told in `numbersOf`. Size 4 E. */
  readonly numbers: Float64Array;
}

/** Code of an ideal joint in the table of laws. */
export const JOINT = 0;
/** Code of a resistor. */
export const RESISTOR = 1;
/** Code of a battery. */
export const SOURCE = 2;
/** Code of a filament. */
export const LAMP = 3;
/** Code of a motor. */
export const MOTOR = 4;
/** Code of a diode. */
export const DIODE = 5;
/** Code of a regulated source. */
export const REGULATED = 6;
const CODES = {
  joint: JOINT,
  resistor: RESISTOR,
  source: SOURCE,
  lamp: LAMP,
  motor: MOTOR,
  diode: DIODE,
  regulated: REGULATED,
};

/** A cold filament conducts ten times what it does at its rated volts: (0 + COLD)^-0.225 = 10. */
const COLD_TIMES = 10;
const COLD = COLD_TIMES ** (-1 / 0.225);

/** A table with the law of every element. Throws where a number makes no sense, such as 0 ohms. */
export function tableOf(laws: readonly Law[]): LawTable {
  const table = { code: new Uint8Array(laws.length), numbers: new Float64Array(4 * laws.length) };
  for (let e = 0; e < laws.length; e++) writeLaw(table, e, laws[e]!);
  return table;
}

/** Puts the law of element e into the table. Throws where a number makes no sense. */
export function writeLaw(table: LawTable, e: number, law: Law): void {
  const numbers = numbersOf(law);
  assert(numbers.every(Number.isFinite), "a law has numbers that make sense");
  table.code[e] = CODES[law.law];
  table.numbers.fill(0, 4 * e, 4 * e + 4);
  table.numbers.set(numbers, 4 * e);
}

/** True where element e has the same law with the same numbers in both tables. */
export function isSameLaw(one: LawTable, other: LawTable, e: number): boolean {
  if (one.code[e] !== other.code[e]) return false;
  for (let n = 4 * e; n < 4 * e + 4; n++) if (one.numbers[n] !== other.numbers[n]) return false;
  return true;
}

/** True for the laws whose amps are no straight line over the volts. */
export function isBent(code: number): boolean {
  return code >= LAMP;
}

function numbersOf(law: Law): readonly number[] {
  switch (law.law) {
    case "joint":
      return [];
    case "resistor":
      // siemens
      return [siemensOf(law.ohms)];
    case "source":
      // siemens, volts with no current
      return [siemensOf(law.ohms), law.volts];
    case "lamp":
      // 1 / rated volts, siemens at the rated volts
      return [positive(1 / law.ratedVolts), positive(law.ratedAmps / law.ratedVolts)];
    case "motor":
      // volts at which it begins to turn, siemens stalled, siemens of the slope while turning, amps of friction
      return [
        notNegative(law.frictionAmps * law.ohms),
        positive(1 / law.ohms),
        positive(1 / (law.ohms + notNegative(law.speedOhms))),
        law.frictionAmps,
      ];
    case "diode":
      // saturation amps, emission volts, volts at which it conducts well: a slope of about 0.7 siemens or more
      return [
        positive(law.saturationAmps),
        positive(law.emissionVolts),
        law.emissionVolts * Math.max(8, Math.log(law.emissionVolts / (Math.SQRT2 * law.saturationAmps))),
      ];
    case "regulated":
      // volts with no current, siemens, greatest amps, volts below which the amps stay at their greatest
      return [law.volts, positive(1 / law.ohms), notNegative(law.maxAmps), law.volts - law.maxAmps * law.ohms];
  }
}

const siemensOf = (ohms: number): number => (ohms > 0 ? 1 / ohms : Number.NaN);
const positive = (value: number): number => (value > 0 ? value : Number.NaN);
const notNegative = (value: number): number => (value >= 0 ? value : Number.NaN);

// ---------------------------------------------------------------- what the laws say

/** Amps from a to b through element e with these volts from a to b: the true law, not a line. 0 for a joint. */
export function ampsAcross(table: LawTable, e: number, volts: Volts): Amps {
  const { numbers } = table;
  const n = 4 * e;
  const first = numbers[n]!;
  switch (table.code[e]) {
    case RESISTOR:
      return first * volts;
    case SOURCE:
      return first * (volts - numbers[n + 1]!);
    case LAMP: {
      const share = volts * first;
      return numbers[n + 1]! * volts * (share * share + COLD) ** -0.225;
    }
    case MOTOR: {
      const above = Math.abs(volts) - first;
      if (above < 0) return numbers[n + 1]! * volts;
      const amps = numbers[n + 3]! + numbers[n + 2]! * above;
      return volts < 0 ? -amps : amps;
    }
    case DIODE:
      return first * Math.expm1(volts / numbers[n + 1]!);
    case REGULATED:
      if (volts >= first) return 0;
      return Math.max((volts - first) * numbers[n + 1]!, -numbers[n + 2]!);
    default:
      return 0;
  }
}

/** Slope of the law in siemens at these volts, where the amps are known already; at a kink the slope above it. */
export function slopeAt(table: LawTable, e: number, volts: Volts, amps: Amps): Siemens {
  const { numbers } = table;
  const n = 4 * e;
  const first = numbers[n]!;
  switch (table.code[e]) {
    case RESISTOR:
    case SOURCE:
      return first;
    case LAMP: {
      const share = volts * first;
      return lampChord(numbers[n + 1]!, volts, amps) * (1 - (0.45 * share * share) / (share * share + COLD));
    }
    case MOTOR:
      return Math.abs(volts) < first ? numbers[n + 1]! : numbers[n + 2]!;
    case DIODE:
      return (amps + first) / numbers[n + 1]!;
    case REGULATED:
      return volts < first && volts >= numbers[n + 3]! ? numbers[n + 1]! : 0;
    default:
      return 0;
  }
}

/**
 * What an element conducts with all sources dead, in siemens: amps over volts as they stand, the cold slope at 0 V.
 * A source counts by its ohms; a regulated source too while it regulates, and not at all at its limit or blocked.
 */
export function chordAt(table: LawTable, e: number, volts: Volts, isRegulating: boolean): Siemens {
  const { numbers } = table;
  const n = 4 * e;
  const first = numbers[n]!;
  switch (table.code[e]) {
    case RESISTOR:
    case SOURCE:
      return first;
    case LAMP:
      return lampChord(numbers[n + 1]!, volts, ampsAcross(table, e, volts));
    case MOTOR:
      if (Math.abs(volts) < first) return numbers[n + 1]!;
      // Without friction it turns from 0 V on, where amps over volts are 0 / 0.
      return Math.abs(volts) < 1e-100 ? numbers[n + 2]! : ampsAcross(table, e, volts) / volts;
    case DIODE:
      return Math.abs(volts) < 1e-100 ? first / numbers[n + 1]! : ampsAcross(table, e, volts) / volts;
    case REGULATED:
      return isRegulating && numbers[n + 2]! > 0 ? numbers[n + 1]! : 0;
    default:
      return 0;
  }
}

/** Amps over volts of a lamp. Near 0 V the quotient loses its digits, and its limit is known. */
function lampChord(ratedSiemens: Siemens, volts: Volts, amps: Amps): Siemens {
  return Math.abs(volts) < 1e-100 ? COLD_TIMES * ratedSiemens : amps / volts;
}
