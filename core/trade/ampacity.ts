import type { Outcome } from "../base/outcome.ts";
import { ok, refuse } from "../base/outcome.ts";
import type { Amps, Celsius, Share, SquareMillimetres, Volts } from "../base/units.ts";
import type { Gauge } from "./gauge.ts";
import { gaugeCircularMils, gaugeName, TRADE_GAUGES } from "./gauge.ts";
import { published } from "./source.ts";

/** Insulation classes of the table, in Celsius that the insulation bears. */
export const INSULATION_CLASSES = [60, 75, 80, 90, 105, 125, 200] as const;
export type InsulationClass = (typeof INSULATION_CLASSES)[number];

/** Source of AMPACITY. */
export const AMPACITY_SOURCE = published("33 CFR 183.425, Table 5 (boats), ambient 30 C, cranking conductors excluded");

/** Allowed amps by gauge, in the order of INSULATION_CLASSES, at 30 C around the wire (33 CFR 183.425, Table 5). */
export const AMPACITY: readonly { readonly gauge: Gauge; readonly amps: readonly Amps[] }[] = [
  { gauge: 18, amps: [10, 10, 15, 20, 20, 25, 25] },
  { gauge: 16, amps: [15, 15, 20, 25, 25, 30, 35] },
  { gauge: 14, amps: [20, 20, 25, 30, 35, 40, 45] },
  { gauge: 12, amps: [25, 25, 35, 40, 45, 50, 55] },
  { gauge: 10, amps: [40, 40, 50, 55, 60, 70, 70] },
  { gauge: 8, amps: [55, 65, 70, 70, 80, 90, 100] },
  { gauge: 6, amps: [80, 95, 100, 100, 120, 125, 135] },
  { gauge: 4, amps: [105, 125, 130, 135, 160, 170, 180] },
  { gauge: 2, amps: [140, 170, 175, 180, 210, 225, 240] },
  { gauge: 1, amps: [165, 195, 210, 210, 245, 265, 280] },
  { gauge: 0, amps: [195, 230, 245, 245, 285, 305, 325] },
];

/**
 * Share of the table's amps left in an engine space at 50 C, for 105 C insulation; the other classes' factors were not
 * found (Ancor catalogue 2023, appendix page 70).
 */
export const ENGINE_SPACE_FACTOR = {
  insulationCelsius: 105 as InsulationClass,
  ambientCelsius: 50 as Celsius,
  factor: 0.85 as Share,
  source: published("Ancor catalogue 2023, appendix page 70"),
};

/**
 * Amps a wire may carry all the time by 33 CFR 183.425, Table 5. Refuses `gauge-not-in-table`, and
 * `engine-space-factor-unknown` for an engine space with other than 105 C insulation.
 */
export function ampacity(wire: {
  readonly gauge: Gauge;
  readonly insulation: InsulationClass;
  readonly inEngineSpace: boolean;
}): Outcome<Amps> {
  const row = AMPACITY.find((each) => each.gauge === wire.gauge);
  if (!row) return refuse("gauge-not-in-table", { gauge: gaugeName(wire.gauge) });
  const amps = row.amps[INSULATION_CLASSES.indexOf(wire.insulation)]!;
  if (!wire.inEngineSpace) return ok(amps);
  if (wire.insulation !== ENGINE_SPACE_FACTOR.insulationCelsius) {
    return refuse("engine-space-factor-unknown", { insulation: wire.insulation });
  }
  return ok(amps * ENGINE_SPACE_FACTOR.factor);
}

/** Source of bundleFactor. */
export const BUNDLE_SOURCE = published("UL 1426 allowable amperage tables; marine cable catalogue, page 212");

/**
 * Share of its amps left to a wire among this many current-carrying ones (UL 1426 tables). A marine rule for 50 V and
 * more: the same catalogue asks for none below 50 V, so on a vehicle it is only a caution.
 */
export function bundleFactor(conductors: number): Share {
  if (conductors >= 25) return 0.4;
  if (conductors >= 7) return 0.5;
  if (conductors >= 4) return 0.6;
  return conductors === 3 ? 0.7 : 1;
}

/** Source of circularMilsFor and DROP_CLASSES. */
export const ABYC_SOURCE = published("ABYC E-11, clauses 11.14.1.2 and 11.14.2.6, as quoted on a cruising forum");

/** Copper needed in circular mils: K I L / E with K = 10.75, length out and back in feet (ABYC E-11). */
export function circularMilsFor(run: {
  readonly amps: Amps;
  readonly outAndBackFeet: number;
  readonly allowedVolts: Volts;
}): number {
  return (10.75 * run.amps * run.outAndBackFeet) / run.allowedVolts;
}

/** The thinnest gauge sold that has at least these circular mils; refuses `no-gauge-thick-enough`. */
export function thinnestGaugeFor(circularMils: number): Outcome<Gauge> {
  const gauge = TRADE_GAUGES.find((each) => gaugeCircularMils(each) >= circularMils);
  return gauge === undefined ? refuse("no-gauge-thick-enough", { circularMils }) : ok(gauge);
}

/** Share of the supply that a whole circuit may lose: critical circuits and the rest (ABYC E-11). */
export const DROP_CLASSES: { readonly critical: Share; readonly other: Share } = { critical: 0.03, other: 0.1 };

/** Source of THIN_WALL_AMPS. */
export const THIN_WALL_SOURCE = published(
  "MK Global Trading, Automotive Cable Range, thin-wall ISO 6722 class B table",
);

/** Supplier's amps for thin-wall vehicle wire (MK Global Trading, Automotive Cable Range, ISO 6722 class B). */
export const THIN_WALL_AMPS: readonly { readonly mm2: SquareMillimetres; readonly amps: Amps }[] = [
  { mm2: 0.5, amps: 11 },
  { mm2: 0.75, amps: 14 },
  { mm2: 1.0, amps: 16.5 },
  { mm2: 1.5, amps: 21 },
  { mm2: 2.0, amps: 25 },
  { mm2: 2.5, amps: 29 },
  { mm2: 3.0, amps: 33 },
  { mm2: 4.0, amps: 39 },
  { mm2: 4.5, amps: 42 },
  { mm2: 6.0, amps: 50 },
  { mm2: 8.5, amps: 63 },
  { mm2: 10, amps: 70 },
];

/** Shop rule for cars, amps per mm2 all the time and for a short time (kewet.de cable cross-section page; no standard). */
export const SHOP_RULE = {
  ampsPerMm2: 5,
  shortTimeAmpsPerMm2: 10,
  source: published("kewet.de, cable cross-sections, an owners' club reference"),
};

/** Source of USUAL_SIZES. */
export const USUAL_SIZES_SOURCE = SHOP_RULE.source;

/** Sizes usually seen for a load of up to these amps (kewet.de cable cross-section page; no standard). */
export const USUAL_SIZES: readonly { readonly upToAmps: Amps; readonly mm2: SquareMillimetres }[] = [
  { upToAmps: 2.5, mm2: 0.75 },
  { upToAmps: 8, mm2: 1.5 },
  { upToAmps: 16, mm2: 2.5 },
  { upToAmps: 40, mm2: 6 },
];
