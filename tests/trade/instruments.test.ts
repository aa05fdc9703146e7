import { describe, expect, test } from "vitest";
import { brightness, meterVolts, mostOhmsShowing, testLamp } from "../../core/trade/instruments.ts";
import { lampAmps } from "../../core/trade/lamps.ts";

describe("instruments", () => {
  test("a test lamp is bright from 90 %, dim from 30 %, dark below", () => {
    expect([10.8, 10.79, 3.6, 3.59, 0].map((volts) => brightness(volts, 12))).toEqual([
      "bright",
      "dim",
      "dim",
      "dark",
      "dark",
    ]);
    expect(brightness(-24, 24)).toBe("bright");
  });

  test("the heavy lamp finds a poor joint that the small lamp passes", () => {
    const small = mostOhmsShowing("bright", "small", 12.6, 12);
    const heavy = mostOhmsShowing("bright", "heavy", 12.6, 12);
    expect(small).toBeGreaterThan(1);
    expect(heavy).toBeLessThan(1);
    expect(mostOhmsShowing("dim", "heavy", 3, 12)).toBe(0);
  });

  test("the ohms that leave a lamp just dim do leave it just dim", () => {
    const ohms = mostOhmsShowing("dim", "small", 25.2, 24);
    const lamp = testLamp("small", 24);
    expect(25.2 - ohms * lampAmps(0.3 * 24, lamp)).toBeCloseTo(0.3 * 24, 9);
  });

  test("a meter shows all of a stiff source and half of one as high as itself", () => {
    expect(meterVolts(12, 0)).toBe(12);
    expect(meterVolts(12, 10e6)).toBeCloseTo(6, 9);
  });
});
