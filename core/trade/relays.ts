import type { Amps, Celsius, Ohms, Share, Volts, Watts } from "../base/units.ts";
import type { Source } from "./source.ts";
import { published, quoted } from "./source.ts";
import { copperRatio } from "./wire.ts";

/** A relay coil as its sheet gives it. Null where the sheet was silent or not seen. */
export interface CoilClass {
  readonly name: string;
  readonly ratedVolts: Volts;
  readonly ohms: Ohms | null;
  /** Share by which the ohms may lie above or below. */
  readonly tolerance: Share | null;
  readonly mustOperateVolts: Volts | null;
  readonly mustReleaseVolts: Volts | null;
  readonly watts: Watts | null;
  readonly source: Source;
}

const F7 = quoted("TE F7 relay sheet V23134X0000A002, in an engineering note of 2026");
const VF4A = published("TE VF4A sheet, coil table");
const RELAY_B = published("TE Connectivity Power Relay B, mini ISO, data sheet");
const OEN_78 = published("OEN 78 automotive power relay, data sheet");
const OEN_76 = published("OEN 76 mini automotive relay, data sheet");
const MICRO = published("listing of a micro ISO change-over relay at sa.tilga.com");

function coil(
  name: string,
  source: Source,
  ratedVolts: Volts,
  [ohms, tolerance, mustOperateVolts, mustReleaseVolts, watts]: readonly (number | null)[],
): CoilClass {
  return {
    name,
    ratedVolts,
    ohms: ohms ?? null,
    tolerance: tolerance ?? null,
    mustOperateVolts: mustOperateVolts ?? null,
    mustReleaseVolts: mustReleaseVolts ?? null,
    watts: watts ?? null,
    source,
  };
}

/**
 * Coils by class, from the TE F7 (quoted), VF4A and Power Relay B sheets, the OEN 76 and 78 sheets and a micro ISO listing.
 * Figures in a row: ohms, tolerance, must-operate volts, must-release volts, watts.
 */
export const COIL_CLASSES: readonly CoilClass[] = [
  coil("power, 70 A", F7, 12, [90, 0.1, 7.2, 1.6, 1.6]),
  coil("mini ISO, 40 A change-over", VF4A, 12, [null, null, 7.2, 1.2, null]),
  coil("mini ISO, 40 A change-over", VF4A, 24, [null, null, 14.4, 2.4, null]),
  coil("mini ISO, 35 A, code 001", RELAY_B, 12, [85, 0.1, 8, 1.5, 1.7]),
  coil("mini ISO, 35 A, code 002", RELAY_B, 12, [75, 0.1, 6.5, 1, 1.9]),
  coil("mini ISO, 35 A, code 004", RELAY_B, 24, [255, 0.1, 16, 3, 2.3]),
  coil("small power", OEN_78, 12, [100, 0.1, 7.2, 1.2, 1.44]),
  coil("small power", OEN_78, 24, [320, 0.1, 14.8, 2.4, null]),
  coil("mini for boards", OEN_76, 12, [130, 0.1, 9, 1.2, 1.2]),
  coil("mini for boards", OEN_76, 24, [570, 0.1, 18, 2.4, null]),
  coil("micro ISO", MICRO, 12, [109, null, null, null, 1.3]),
];

/** What a relay's coil is when nobody says otherwise. */
export interface CoilDefaults {
  readonly ohms: Ohms;
  readonly pullInVolts: Volts;
  readonly dropOutVolts: Volts;
  readonly source: Source;
}

/** 12 V: the 70 A power relay (TE F7 sheet, quoted). 24 V: ohms of the OEN 78 sheet, volts of the TE VF4A sheet. */
export const COIL_DEFAULTS: { readonly 12: CoilDefaults; readonly 24: CoilDefaults } = {
  12: { ohms: 90, pullInVolts: 7.2, dropOutVolts: 1.6, source: F7 },
  24: {
    ohms: 320,
    pullInVolts: 14.4,
    dropOutVolts: 2.4,
    source: published("OEN 78 (ohms) and TE VF4A (volts) relay sheets"),
  },
};

/** The coil defaults for a vehicle's nominal volts: 24 V from 18 V up. */
export function coilDefaults(nominalVolts: Volts): CoilDefaults {
  return nominalVolts >= 18 ? COIL_DEFAULTS[24] : COIL_DEFAULTS[12];
}

/** Amps that a coil needs to pull in; the same hot and cold, so pull-in volts follow the coil's ohms. */
export function pullInAmps(coilOhms: Ohms, pullInVolts: Volts): Amps {
  return pullInVolts / coilOhms;
}

/**
 * Coil ohms at another temperature (TE Connectivity, "Temperature considerations for DC relays"; Babcock, relay notes). Sheets
 * give coils at 20 C or 25 C: say which.
 */
export function coilOhmsAt(ohms: Ohms, celsius: Celsius, fromCelsius: Celsius = 20): Ohms {
  return ohms * copperRatio(celsius, fromCelsius);
}

/** Pull-in (or drop-out) volts at another coil temperature: they scale as the ohms do, same sources as `coilOhmsAt`. */
export function pullInVoltsAt(volts: Volts, celsius: Celsius, fromCelsius: Celsius = 20): Volts {
  return volts * copperRatio(celsius, fromCelsius);
}

/** Another maker's straight-line coefficient per kelvin from 25 C; use with `linearRatio` (Kilovac application note). */
export const COIL_COEFFICIENT_AT_25 = {
  perKelvin: 0.003853,
  source: published("Kilovac application note on relay voltages"),
};

/** Whether the relay is pulled in, from the volts across its coil and how it was: between the two limits it stays. */
export function isPulledIn(
  wasPulledIn: boolean,
  coilVolts: Volts,
  limits: { readonly pullInVolts: Volts; readonly dropOutVolts: Volts },
): boolean {
  const volts = Math.abs(coilVolts);
  if (volts >= limits.pullInVolts) return true;
  return volts <= limits.dropOutVolts ? false : wasPulledIn;
}

/** Drop of a new contact at a current: what is usual and what still passes. */
export interface ContactDrop {
  readonly atAmps: Amps;
  readonly typicalVolts: Volts;
  readonly mostVolts: Volts;
  readonly source: Source;
}

const CONTACT = published("TE Connectivity Power Relay B and VF4A, mini ISO, data sheets");

/** Initial drop of make and break contacts at 10 A (TE Connectivity Power Relay B and VF4A, mini ISO, data sheets). */
export const CONTACT_DROPS: { readonly make: ContactDrop; readonly break: ContactDrop } = {
  make: { atAmps: 10, typicalVolts: 0.015, mostVolts: 0.2, source: CONTACT },
  break: { atAmps: 10, typicalVolts: 0.02, mostVolts: 0.25, source: CONTACT },
};

/** Ohms of a healthy contact: its usual drop over the amps of the sheet. */
export function contactOhms(contact: "make" | "break"): Ohms {
  const { typicalVolts, atAmps } = CONTACT_DROPS[contact];
  return typicalVolts / atAmps;
}

/** Most ohms that a sheet still lets a new contact have. */
export function mostContactOhms(contact: "make" | "break"): Ohms {
  const { mostVolts, atAmps } = CONTACT_DROPS[contact];
  return mostVolts / atAmps;
}

/** Amps that a mini ISO relay carries all the time, by ambient (TE Connectivity Power Relay B and VF4A sheets). */
export const CONTACT_AMPS: readonly {
  readonly ratedAmps: Amps;
  readonly celsius: Celsius;
  readonly makeAmps: Amps;
  readonly breakAmps: Amps;
}[] = [
  { ratedAmps: 40, celsius: 23, makeAmps: 60, breakAmps: 45 },
  { ratedAmps: 40, celsius: 85, makeAmps: 40, breakAmps: 30 },
  { ratedAmps: 40, celsius: 125, makeAmps: 17, breakAmps: 12 },
  { ratedAmps: 35, celsius: 23, makeAmps: 50, breakAmps: 35 },
  { ratedAmps: 35, celsius: 85, makeAmps: 35, breakAmps: 25 },
  { ratedAmps: 35, celsius: 125, makeAmps: 15, breakAmps: 10 },
];

/** Source of CONTACT_AMPS. */
export const CONTACT_AMPS_SOURCE = CONTACT;

/** Contact drops that other makers print at 10 A (OEN 40, 76, 78 and 79 sheets). */
export const OTHER_CONTACT_DROPS = {
  atAmps: 10 as Amps,
  volts: [0.03, 0.05, 0.06, 0.1] as readonly Volts[],
  source: published("OEN 40, 79, 76 and 78 relay data sheets"),
};
