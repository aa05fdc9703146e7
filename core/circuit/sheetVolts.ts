import type { Volts } from "../base/units.ts";

/** Less than this reads 0.00. */
export const LEAST_VOLTS: Volts = 0.005;
/** A reading may have as many decimals as this. */
const DECIMALS = [1, 2] as const;

/** A reading as a sheet says it, `11.98 V`. */
export function voltsText(volts: Volts, decimals: (typeof DECIMALS)[number]): string {
  return `${(Math.abs(volts) < LEAST_VOLTS ? 0 : volts).toFixed(decimals).replace("-", "−")}\u00A0V`;
}

/** Whether a sheet says the same of two readings. */
export function readsAlike(one: Volts | null, other: Volts | null): boolean {
  if (one === other) return true;
  if (one === null || other === null || Math.abs(one - other) > 0.01) return false;
  return DECIMALS.every((decimals) => voltsText(one, decimals) === voltsText(other, decimals));
}
