import { expect } from "vitest";

/** Expects a figure within a tolerance of the published one, and says both where it is not. */
export function near(actual: number, wanted: number, tolerance: number): void {
  expect(Math.abs(actual - wanted), `${actual} is not ${wanted} within ${tolerance}`).toBeLessThanOrEqual(tolerance);
}
