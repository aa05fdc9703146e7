import type { Volts } from "../base/units.ts";

/** How finely a row is read: on volts, on millivolts across a fuse, or on tenths of them where the vehicle sleeps. */
export type Fineness = "volts" | "millivolts" | "tenths";

/** Gap that parts two clusters of readings: at least this many volts, or this share of the higher one (guesses). */
const GAP: Readonly<Record<Fineness, { readonly volts: Volts; readonly share: number }>> = {
  volts: { volts: 0.12, share: 0.03 },
  // A fuse's ohms are known to a tenth or so.
  millivolts: { volts: 0.003, share: 0.2 },
  // A still reading, to the last figure of a usual meter.
  tenths: { volts: 0.0003, share: 0.2 },
};

/** Volts by which two readings must differ to tell two suspects apart, for the higher of them. */
export function gapAt(volts: Volts, fineness: Fineness = "volts"): Volts {
  const own = gapIn(volts, GAP[fineness]);
  // Across a blown fuse stand battery volts, read as finely as any.
  return Math.min(own, gapIn(volts, GAP.volts));
}

function gapIn(volts: Volts, { volts: least, share }: (typeof GAP)[Fineness]): Volts {
  return Math.max(least, share * Math.abs(volts));
}

/** Standard spread of a reading about what the drawing predicts: a third of the gap, so that classes hold three of them. */
export function spreadAt(volts: Volts, fineness: Fineness = "volts"): Volts {
  return gapAt(volts, fineness) / 3;
}
