import type { Outcome } from "../base/outcome.ts";
import { ok, refuse } from "../base/outcome.ts";
import type { Celsius, Millimetres, Ohms, SquareMillimetres } from "../base/units.ts";
import type { Source } from "./source.ts";
import { published, quoted } from "./source.ts";
import { ANNEALED_COPPER, copperRatio } from "./wire.ts";

/** An American gauge number: 24, 18, ... 1, 0; then -1 for 00, -2 for 000, -3 for 0000. */
export type Gauge = number;

/** One circular mil, the area of a circle a thousandth of an inch across. */
export const MM2_PER_CIRCULAR_MIL: SquareMillimetres = 5.067e-4;

/** Gauges sold as wire, thin to thick. */
export const TRADE_GAUGES: readonly Gauge[] = [24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3];

/** Diameter of a solid conductor of this gauge (law of ASTM B258: 0.127 mm x 92^((36 - n) / 39)). */
export function gaugeDiameterMm(gauge: Gauge): Millimetres {
  return 0.127 * 92 ** ((36 - gauge) / 39);
}

/** Copper area of a solid conductor of this gauge (ASTM B258). */
export function gaugeMm2(gauge: Gauge): SquareMillimetres {
  return (Math.PI / 4) * gaugeDiameterMm(gauge) ** 2;
}

/** Area of this gauge in circular mils: its diameter in thousandths of an inch, squared (ASTM B258). */
export function gaugeCircularMils(gauge: Gauge): number {
  return (gaugeDiameterMm(gauge) / 0.0254) ** 2;
}

/** Gauge number of a copper area, not rounded (the law of ASTM B258 turned round). */
export function gaugeOfMm2(mm2: SquareMillimetres): Gauge {
  const diameterMm = Math.sqrt((4 * mm2) / Math.PI);
  return 36 - (39 * Math.log(diameterMm / 0.127)) / Math.log(92);
}

/**
 * Ohms per metre of solid annealed copper of this gauge (ASTM B258 law; resistivity of NBS Handbook 100, 1966). Stranded
 * wire has more: see STRANDED_WIRE.
 */
export function gaugeOhmsPerMetre(gauge: Gauge, celsius: Celsius = 20): Ohms {
  return (ANNEALED_COPPER.ohmMm2PerMetre / gaugeMm2(gauge)) * copperRatio(celsius);
}

/** The gauge as the trade writes it: 18, 0, 00, 0000. */
export function gaugeName(gauge: Gauge): string {
  return gauge > 0 ? String(gauge) : "0".repeat(1 - gauge);
}

/** The gauge that a person wrote: "18", "00", "2/0"; refuses `gauge-unknown`. */
export function parseGauge(text: string): Outcome<Gauge> {
  const plain = text.trim();
  const aught = /^([1-4])\/0$/.exec(plain);
  if (aught) return ok(1 - Number(aught[1]));
  if (/^0{1,4}$/.test(plain)) return ok(1 - plain.length);
  if (/^([1-9]|[1-3][0-9]|40)$/.test(plain)) return ok(Number(plain));
  return refuse("gauge-unknown", { text });
}

/** A stranded wire of a gauge, as a maker measures it at 20 C. */
export interface StrandedWire {
  readonly gauge: Gauge;
  readonly plating: "tin" | "nickel";
  readonly ohmsPerMetre: Ohms;
  readonly source: Source;
}

const TINNED = quoted("Alpha Wire AWG chart, in an engineering note on relay, fuse and wire selection, 2026");
const NICKEL = published("Perkins 1200F, Electrical and Electronic Application and Installation Manual, table 4.6");

/**
 * Makers' figures for stranded wire: 1.09 to 1.30 times the solid gauge (Alpha Wire AWG chart, quoted; Perkins 1200F
 * installation manual, table 4.6).
 */
export const STRANDED_WIRE: readonly StrandedWire[] = [
  { gauge: 16, plating: "tin", ohmsPerMetre: 14.3e-3, source: TINNED },
  { gauge: 14, plating: "tin", ohmsPerMetre: 9.08e-3, source: TINNED },
  { gauge: 12, plating: "tin", ohmsPerMetre: 5.73e-3, source: TINNED },
  { gauge: 14, plating: "nickel", ohmsPerMetre: 9.82e-3, source: NICKEL },
  { gauge: 12, plating: "nickel", ohmsPerMetre: 6.41e-3, source: NICKEL },
  { gauge: 10, plating: "nickel", ohmsPerMetre: 4.11e-3, source: NICKEL },
  { gauge: 8, plating: "nickel", ohmsPerMetre: 2.59e-3, source: NICKEL },
  { gauge: 6, plating: "nickel", ohmsPerMetre: 1.55e-3, source: NICKEL },
  { gauge: 4, plating: "nickel", ohmsPerMetre: 1.06e-3, source: NICKEL },
  { gauge: 2, plating: "nickel", ohmsPerMetre: 0.62e-3, source: NICKEL },
  { gauge: 0, plating: "nickel", ohmsPerMetre: 0.383e-3, source: NICKEL },
];

/** Source of SAE_CIRCULAR_MILS. */
export const SAE_GAUGE_SOURCE = published("Ancor catalogue 2023, appendix page 70");

/** Circular mils of wire sold to the SAE gauge, which is thinner than AWG (Ancor catalogue 2023, appendix page 70). */
export const SAE_CIRCULAR_MILS: readonly { readonly gauge: Gauge; readonly circularMils: number }[] = [
  { gauge: 18, circularMils: 1537 },
  { gauge: 16, circularMils: 2336 },
  { gauge: 14, circularMils: 3702 },
  { gauge: 12, circularMils: 5833 },
  { gauge: 10, circularMils: 9343 },
  { gauge: 8, circularMils: 14810 },
  { gauge: 6, circularMils: 24538 },
  { gauge: 4, circularMils: 37360 },
  { gauge: 2, circularMils: 62450 },
  { gauge: 1, circularMils: 77790 },
  { gauge: 0, circularMils: 98980 },
];

/** Copper area of wire sold to the SAE gauge; refuses `gauge-not-in-table`. */
export function saeGaugeMm2(gauge: Gauge): Outcome<SquareMillimetres> {
  const row = SAE_CIRCULAR_MILS.find((each) => each.gauge === gauge);
  if (!row) return refuse("gauge-not-in-table", { gauge: gaugeName(gauge) });
  return ok(row.circularMils * MM2_PER_CIRCULAR_MIL);
}
