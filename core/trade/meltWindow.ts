import type { Amps, Seconds, Share } from "../base/units.ts";
import type { FuseFamily } from "./fuses.ts";
import type { Source } from "./source.ts";
import { derived, MEMORY, published, quoted, weakest } from "./source.ts";

/** Seconds, or never. */
export type MeltSeconds = Seconds | "never";

/** At this share of the rating a fuse melts not before `least` and not after `most`. */
export interface FuseGate {
  readonly share: Share;
  readonly least: Seconds;
  readonly most: MeltSeconds;
  readonly source: Source;
}

function gate(share: Share, least: Seconds, most: MeltSeconds, source: Source): FuseGate {
  return { share, least, most, source };
}

const HUNDRED_HOURS: Seconds = 360_000;
const ISO_8820 = published("remark on ISO 8820-3 at noiasca.rothschopf.net");
const FORM_E = published("extract of DIN 72581-3 form E at noiasca.rothschopf.net");
const ATOF = quoted("Littelfuse ATOF 287 sheet, 18 August 2022, in a design note");
const ATOF_10 = quoted("Littelfuse ATOF 287 sheet r2.7, 10 A, in an engineering note of 2026");
const LIKE_10 = derived("the 10 A gates of the Littelfuse ATOF 287 sheet r2.7, taken for the other ratings to 30 A");
const MAXI = quoted("Littelfuse MAXI 299 sheet, 6 January 2025, in a design note");

function regularTo30(ratedAmps: Amps): readonly FuseGate[] {
  const sheet = ratedAmps === 10 ? ATOF_10 : LIKE_10;
  return [
    gate(1.1, HUNDRED_HOURS, "never", MEMORY),
    gate(1.35, 0.75, 1800, ISO_8820),
    gate(1.6, 0.25, 50, sheet),
    gate(2, 0.15, 5, sheet),
    gate(3.5, 0.04, 0.5, MEMORY),
    gate(6, 0.02, 0.1, MEMORY),
  ];
}

const REGULAR_35_AND_40: readonly FuseGate[] = [
  gate(1, HUNDRED_HOURS, "never", ATOF),
  gate(1.35, 0.75, 1800, ISO_8820),
  gate(2, 0.15, 5, ATOF),
  gate(3.5, 0.08, 0.5, ATOF),
  gate(6, 0, 0.15, ATOF),
];

const MAXI_GATES: readonly FuseGate[] = [
  gate(1, HUNDRED_HOURS, "never", FORM_E),
  gate(1.35, 60, 1800, FORM_E),
  gate(2, 2, 60, FORM_E),
  gate(3.5, 0.2, 7, FORM_E),
  gate(6, 0.04, 1, MAXI),
];

/**
 * The gates of a fuse, by rising share: regular from the ATOF 287 sheet and ISO 8820-3 (whose 1800 s at 135 % is wider
 * than the sheet's 600 s), maxi from DIN 72581-3 form E and the MAXI 299 sheet. Mini is taken as regular, from memory.
 */
export function fuseGates(family: FuseFamily, ratedAmps: Amps): readonly FuseGate[] {
  if (family === "maxi") return MAXI_GATES;
  if (family === "mini") return regularTo30(ratedAmps).map((each) => ({ ...each, source: MEMORY }));
  return ratedAmps >= 35 ? REGULAR_35_AND_40 : regularTo30(ratedAmps);
}

/** When a fuse melts: not before `least`, not after `most`. */
export interface MeltWindow {
  readonly least: Seconds;
  readonly most: MeltSeconds;
  readonly source: Source;
}

/** Amps of a gate. DIN 72581-3 form E drops the part of an ampere: 40 A is its 135 % of 30 A. */
function gateAmps(family: FuseFamily, ratedAmps: Amps, share: Share): Amps {
  const amps = ratedAmps * share;
  return family === "maxi" ? Math.floor(amps + 1e-9) : amps;
}

/**
 * The window in which a cold fuse melts at a steady current of either sign. Between two gates it is as wide as they allow:
 * not before the least of the next gate, not after the most of the last; never one time in between.
 */
export function meltWindow(family: FuseFamily, ratedAmps: Amps, amps: Amps): MeltWindow {
  const gates = fuseGates(family, ratedAmps);
  const flow = Math.abs(amps);
  const hair = 1e-9 * ratedAmps;
  const next = gates.find((each) => gateAmps(family, ratedAmps, each.share) >= flow - hair);
  const last = gates.filter((each) => gateAmps(family, ratedAmps, each.share) <= flow + hair).at(-1);
  const sources = [next, last].flatMap((each) => (each ? [each.source] : []));
  return { least: next?.least ?? 0, most: last?.most ?? "never", source: weakest(sources[0]!, ...sources.slice(1)) };
}

/** Seconds that a cold fuse is sure to carry this current; 0 where nothing is sure. */
export function holdsFor(family: FuseFamily, ratedAmps: Amps, amps: Amps): Seconds {
  return meltWindow(family, ratedAmps, amps).least;
}

/** Above this share of its rating a fuse is taken to melt for as long as the condition lasts (the 135 % gate ends it for sure). */
export const MELTS_ABOVE: Share = 1.35;

/** Above this share it is taken to melt even while a spring-back switch is only held (the 200 % gate: 5 s at most, maxi 60 s). */
export const MELTS_ABOVE_WHILE_HELD: Share = 2;
