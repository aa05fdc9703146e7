import { assert } from "../base/outcome.ts";
import type { Amps, Ohms, Volts, Watts } from "../base/units.ts";
import type { Source } from "./source.ts";
import { MEMORY, published } from "./source.ts";

/** Turns a minute at the output shaft. */
export type Rpm = number;

/** What a motor's sheet gives: currents turning free and stalled, and free speed, at rated volts. */
export interface MotorRating {
  readonly ratedVolts: Volts;
  readonly freeAmps: Amps;
  readonly stallAmps: Amps;
  readonly rpm: Rpm;
}

/** A permanent-magnet motor: V = I ohms + ke w. `ke` is volts per radian a second at the output shaft. */
export interface Motor {
  readonly ohms: Ohms;
  readonly ke: number;
  readonly freeAmps: Amps;
}

const RADIANS_PER_RPM = (2 * Math.PI) / 60;

/**
 * The motor behind a rating: ohms = V / stall amps, ke = (V - free amps x ohms) / free speed (M. Niehus, DC motor theory,
 * mniehus.github.io). Stall amps must exceed free amps.
 */
export function motorFrom(rating: MotorRating): Motor {
  assert(
    rating.stallAmps > rating.freeAmps && rating.rpm > 0,
    "a motor draws more when stalled than when turning free",
  );
  const ohms = rating.ratedVolts / rating.stallAmps;
  const ke = (rating.ratedVolts - rating.freeAmps * ohms) / (rating.rpm * RADIANS_PER_RPM);
  return { ohms, ke, freeAmps: rating.freeAmps };
}

/** Speed of the output shaft at these volts and amps, with `seriesOhms` of wiring before the motor; never below 0. */
export function speedAt(motor: Motor, volts: Volts, amps: Amps, seriesOhms: Ohms = 0): Rpm {
  return Math.max(0, (volts - amps * (motor.ohms + seriesOhms)) / motor.ke / RADIANS_PER_RPM);
}

/** Amps of the stalled motor at these volts, with `seriesOhms` of wiring before it. */
export function stallAmpsAt(motor: Motor, volts: Volts, seriesOhms: Ohms = 0): Amps {
  return volts / (motor.ohms + seriesOhms);
}

/** Most power at the shaft: stall torque times free speed over 4, reached at half speed. */
export function peakWatts(stallNewtonMetres: number, rpm: Rpm): Watts {
  return (stallNewtonMetres * rpm * RADIANS_PER_RPM) / 4;
}

/** A motor as published, at 12 V. Null where the source is silent. */
export interface PublishedMotor {
  readonly name: string;
  readonly rpm: Rpm;
  readonly freeAmps: Amps | null;
  readonly stallAmps: Amps;
  readonly stallNewtonMetres: number;
  readonly source: Source;
}

const SCHOOL = published("school-robotics motor parameter table in public source");
const WIKI = published("FIRST Robotics wiki, window motor pages");

function motor(
  name: string,
  source: Source,
  rpm: Rpm,
  freeAmps: Amps | null,
  stallAmps: Amps,
  stallNewtonMetres: number,
): PublishedMotor {
  return { name, rpm, freeAmps, stallAmps, stallNewtonMetres, source };
}

/** Small motors at 12 V (a school-robotics motor table in public source; FIRST Robotics wiki, window motor pages). */
export const MOTORS: readonly PublishedMotor[] = [
  motor("window lift, right", SCHOOL, 84, 1.8, 18.6, 10.6),
  motor("window lift, left", SCHOOL, 84, 1.8, 21, 10.6),
  motor("window lift, school data", WIKI, 92, null, 24.8, 9.2),
  motor("window lift, second maker", WIKI, 85, null, 21, 8.33),
  motor("window lift, older type", SCHOOL, 92, 0.5, 20, 9.19),
  motor("window lift, third maker", SCHOOL, 70, 0.5, 20, 13.3),
  motor("throttle actuator", SCHOOL, 5300, 0.4, 7, 0.127),
];

/** Amps that a motor was seen or is said to draw in use. */
export interface MotorCurrent {
  readonly name: string;
  readonly volts: Volts | null;
  readonly leastAmps: Amps;
  readonly mostAmps: Amps;
  readonly source: Source;
}

const LIFT = published("wikilec.com, Window lift motor");
const BENCH = published("a vehicle maker's wiper motor component test, 2006");

/** Running and stalled currents of body motors: wikilec.com, a 2006 wiper test, vehicle makers' blower sheets; some from memory. */
export const MOTOR_CURRENTS: readonly MotorCurrent[] = [
  { name: "window lowering", volts: 12, leastAmps: 3.5, mostAmps: 3.5, source: LIFT },
  { name: "window raising", volts: 12, leastAmps: 8, mostAmps: 8, source: LIFT },
  { name: "window at its end stop", volts: 12, leastAmps: 15, mostAmps: 15, source: LIFT },
  { name: "window lowering", volts: 14, leastAmps: 4, mostAmps: 4, source: LIFT },
  { name: "window raising", volts: 14, leastAmps: 10, mostAmps: 10, source: LIFT },
  { name: "window at its end stop", volts: 14, leastAmps: 20, mostAmps: 20, source: LIFT },
  { name: "wiper, unloaded, low", volts: null, leastAmps: 2, mostAmps: 2, source: BENCH },
  { name: "wiper, unloaded, high", volts: null, leastAmps: 3, mostAmps: 3, source: BENCH },
  {
    name: "wiper in use",
    volts: null,
    leastAmps: 5,
    mostAmps: 5,
    source: published("wiper maker's FAQ, amequipment.com"),
  },
  { name: "wiper, stalled", volts: null, leastAmps: 20, mostAmps: 30, source: MEMORY },
  {
    name: "blower, most",
    volts: null,
    leastAmps: 23,
    mostAmps: 23,
    source: published("vehicle maker's sheet 2888275"),
  },
  {
    name: "blower, other maker, most",
    volts: null,
    leastAmps: 22,
    mostAmps: 30,
    source: published("vehicle maker's sheet GF83.10-P-2102-02A"),
  },
  { name: "seat, lock or mirror motor, running", volts: null, leastAmps: 2, mostAmps: 5, source: MEMORY },
  { name: "seat motor, stalled", volts: null, leastAmps: 15, mostAmps: 25, source: MEMORY },
  { name: "lock motor, stalled", volts: null, leastAmps: 3, mostAmps: 6, source: MEMORY },
  { name: "mirror motor, stalled", volts: null, leastAmps: 0.2, mostAmps: 0.5, source: MEMORY },
];

/** Series ohms of a heater blower at its speeds, slow to full (vehicle maker's sheet 2888275). */
export const BLOWER_RESISTORS: { readonly ohms: readonly Ohms[]; readonly source: Source } = {
  ohms: [2.5, 0.75, 0.25, 0],
  source: published("vehicle maker's sheet 2888275"),
};
