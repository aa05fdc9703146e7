import type { Amps, Celsius, Ohms, Share, Volts } from "../base/units.ts";
import type { Source } from "./source.ts";
import { derived, MEMORY, published, quoted, weakest } from "./source.ts";

/** Families of plug-in blade fuses. */
export const FUSE_FAMILIES = ["mini", "regular", "maxi"] as const;
export type FuseFamily = (typeof FUSE_FAMILIES)[number];

/** Whether a word names a family. */
export function isFuseFamily(word: string): word is FuseFamily {
  return FUSE_FAMILIES.some((family) => family === word);
}

/** A rating and the colour of the body that carries it. */
export interface FuseBody {
  readonly amps: Amps;
  readonly colour: string;
}

const BLADE_BODIES: readonly FuseBody[] = [
  { amps: 1, colour: "black" },
  { amps: 2, colour: "grey" },
  { amps: 3, colour: "violet" },
  { amps: 4, colour: "pink" },
  { amps: 5, colour: "light brown" },
  { amps: 7.5, colour: "brown" },
  { amps: 10, colour: "red" },
  { amps: 15, colour: "blue" },
  { amps: 20, colour: "yellow" },
  { amps: 25, colour: "clear" },
  { amps: 30, colour: "green" },
  { amps: 35, colour: "blue-green" },
  { amps: 40, colour: "orange" },
];

/** Source of the mini and regular rows of FUSE_BODIES, of its maxi rows, and of the range of mini ratings. */
export const FUSE_BODY_SOURCES = {
  blades: published("dieelektronikerseite.de, blade-fuse colours"),
  maxi: published("extract of DIN 72581-3 form E at noiasca.rothschopf.net"),
  ranges: published("thelingofpower.blogspot.com, Automotive fuses, October 2007"),
} as const;

/**
 * Ratings and body colours (blade-fuse colour sheet of dieelektronikerseite.de; maxi: extract of DIN 72581-3 form E).
 * One colour means other ratings in other families, so colour alone never sets a rating.
 */
export const FUSE_BODIES: Readonly<Record<FuseFamily, readonly FuseBody[]>> = {
  mini: BLADE_BODIES.filter((body) => body.amps >= 2 && body.amps <= 30),
  regular: BLADE_BODIES,
  maxi: [
    { amps: 20, colour: "yellow" },
    { amps: 30, colour: "light green" },
    { amps: 40, colour: "orange" },
    { amps: 50, colour: "red" },
    { amps: 60, colour: "light blue" },
    { amps: 70, colour: "brown" },
    { amps: 80, colour: "clear" },
  ],
};

/** Body colour of a rating in its family; null where the family has no such rating. */
export function bodyColour(family: FuseFamily, ratedAmps: Amps): string | null {
  return FUSE_BODIES[family].find((body) => body.amps === ratedAmps)?.colour ?? null;
}

/** Voltage and breaking limits of blade fuses (Littelfuse ATOF 287 sheet, as two design notes quote it). */
export const BLADE_LIMITS = {
  volts: 32 as Volts,
  breakingAmps: 1000 as Amps,
  source: quoted("Littelfuse ATOF 287 sheet"),
};

/** A fuse's own ohms at 20 C without current. */
export interface ColdOhms {
  readonly ohms: Ohms;
  readonly source: Source;
}

interface ColdRow extends ColdOhms {
  readonly amps: Amps;
}

function cold(amps: Amps, milliohms: number, source: Source): ColdRow {
  return { amps, ohms: milliohms / 1000, source };
}

const ATOF = quoted("Littelfuse ATOF 287 sheet, 18 August 2022, in a design note");
const MAXI = quoted("Littelfuse MAXI 299 sheet, 6 January 2025, in a design note");
const REGULAR_COLD: readonly ColdRow[] = [
  cold(1, 123, MEMORY),
  cold(2, 53.5, MEMORY),
  cold(3, 31.1, MEMORY),
  cold(4, 22.8, MEMORY),
  cold(5, 17.9, MEMORY),
  cold(7.5, 10.9, MEMORY),
  cold(10, 7.69, derived("mvwautotechniek.nl, voltage drop over fuses: 1 mV at 130 mA")),
  cold(15, 4.8, MEMORY),
  cold(20, 3.4, MEMORY),
  cold(25, 2.5, MEMORY),
  cold(30, 2.0, MEMORY),
  cold(40, 1.44, ATOF),
];
const MINI_15 = cold(15, 4.59, derived("MACS Service Reports, June 2017, fuse drop chart: 1.0 mV at 218 mA"));

/**
 * Cold ohms by rating, each with its source: regular 10 A from mvwautotechniek.nl and 40 A from the ATOF 287 sheet, mini
 * 15 A from MACS Service Reports June 2017, maxi 30 to 40 A from the MAXI 299 sheet; the rest from memory, mini taken as
 * regular.
 */
export const COLD_OHMS: Readonly<Record<FuseFamily, readonly ColdRow[]>> = {
  mini: REGULAR_COLD.filter((row) => row.amps >= 2 && row.amps <= 30).map((row) =>
    row.amps === MINI_15.amps ? MINI_15 : { ...row, source: MEMORY },
  ),
  regular: REGULAR_COLD,
  maxi: [cold(30, 1.9, MAXI), cold(35, 1.7, MAXI), cold(40, 1.4, MAXI)],
};

/**
 * Cold ohms of a fuse. A rating that has no row keeps the product of amps and ohms of its nearest rows, since fuses of
 * one family drop much the same volts at their rating.
 */
export function coldOhms(family: FuseFamily, ratedAmps: Amps): ColdOhms {
  const rows = COLD_OHMS[family];
  const row = rows.find((each) => each.amps === ratedAmps);
  if (row) return { ohms: row.ohms, source: row.source };
  const below = rows.filter((each) => each.amps < ratedAmps).at(-1) ?? rows[0]!;
  const above = rows.find((each) => each.amps > ratedAmps) ?? below;
  const volts = (below.amps * below.ohms + above.amps * above.ohms) / 2;
  const from = derived("amps times ohms of the nearest rows, kept");
  return { ohms: volts / ratedAmps, source: weakest(from, below.source, above.source) };
}

/**
 * Ohms at rated current over cold ohms: 96 mV / (40 A x 1.44 mohm), and 75 mV / (40 A x 1.4 mohm) for maxi (derived from
 * the ATOF 287 and MAXI 299 sheets). Mini is taken as regular, from memory.
 */
export const HOT_RATIO: Readonly<Record<FuseFamily, { readonly ratio: Share; readonly source: Source }>> = {
  mini: { ratio: 1.67, source: MEMORY },
  regular: { ratio: 1.67, source: derived(ATOF.document) },
  maxi: { ratio: 1.34, source: derived(MAXI.document) },
};

/** Volts across a fuse that has carried its rated current for long. */
export function ratedDropVolts(family: FuseFamily, ratedAmps: Amps): Volts {
  return ratedAmps * coldOhms(family, ratedAmps).ohms * HOT_RATIO[family].ratio;
}

/** Amps through a cold fuse from the volts read across it. Good for a small current only: it warms near its rating. */
export function ampsFromDrop(family: FuseFamily, ratedAmps: Amps, volts: Volts): Amps {
  return volts / coldOhms(family, ratedAmps).ohms;
}

/** Most that a 40 A maxi fuse carries all the time, by ambient (Littelfuse MAXI 299 sheet, 6 January 2025, quoted). */
export const MAXI_40_DERATING: readonly { readonly celsius: Celsius; readonly amps: Amps }[] = [
  { celsius: 20, amps: 40 },
  { celsius: 65, amps: 34 },
  { celsius: 85, amps: 30 },
  { celsius: 110, amps: 25 },
  { celsius: 125, amps: 22 },
];

/** Source of MAXI_40_DERATING. */
export const MAXI_40_DERATING_SOURCE = MAXI;
