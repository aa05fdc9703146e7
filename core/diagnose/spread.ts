/**
 * How finely a row is read: on volts, on millivolts across a fuse, on tenths of them where the vehicle sleeps; or, in another
 * unit, on ohms or on amps.
 */
export type Fineness = "volts" | "millivolts" | "tenths" | "ohms" | "amps";

/** Gap that parts two clusters of readings: at least so much, or this share of the higher one (guesses). */
const GAP: Readonly<Record<Fineness, { readonly least: number; readonly share: number }>> = {
  volts: { least: 0.12, share: 0.03 },
  // A fuse's ohms are known to a tenth or so.
  millivolts: { least: 0.003, share: 0.2 },
  // A still reading, to the last figure of a usual meter.
  tenths: { least: 0.0003, share: 0.2 },
  // Leads and clips are some tenths of an ohm, and ohms of a load are known to a quarter.
  ohms: { least: 0.5, share: 0.3 },
  // A clamp's zero wanders, and what a load draws hangs on its wear.
  amps: { least: 0.4, share: 0.2 },
};

/** By how much two readings must differ to tell two suspects apart, for the higher of them, in the unit they are read in. */
export function gapAt(read: number, fineness: Fineness = "volts"): number {
  const own = gapIn(read, GAP[fineness]);
  // Across a blown fuse stand battery volts, read as finely as any.
  return fineness === "ohms" || fineness === "amps" ? own : Math.min(own, gapIn(read, GAP.volts));
}

function gapIn(read: number, { least, share }: (typeof GAP)[Fineness]): number {
  return Math.max(least, share * Math.abs(read));
}

/** Standard spread of a reading about what the drawing predicts: a third of the gap, so that classes hold three of them. */
export function spreadAt(read: number, fineness: Fineness = "volts"): number {
  return gapAt(read, fineness) / 3;
}
