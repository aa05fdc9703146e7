import { describe, expect, test } from "vitest";
import {
  chargeOf,
  chargingRange,
  internalOhms,
  internalOhmsFromCca,
  loadTestLimitVolts,
  openVolts,
  passesCranking,
} from "../../core/trade/battery.ts";

describe("charge", () => {
  test("volts at rest lead to a charge and back, on 12 and 24 V", () => {
    for (let charge = 0; charge <= 1; charge += 0.05) {
      for (const nominal of [12, 24]) expect(chargeOf(openVolts(charge, nominal), nominal)).toBeCloseTo(charge, 9);
    }
  });

  // US Army TM 5-3805-262-20, page 5-142, doubled
  test("a 24 V set at 24.4 V is half charged", () => expect(chargeOf(24.4, 24)).toBeCloseTo(0.5, 9));

  test("charge stays between 0 and 1", () => {
    expect([-5, 0, 20].map((volts) => chargeOf(volts))).toEqual([0, 0, 1]);
    expect([openVolts(-1), openVolts(2)]).toEqual([11.7, 12.6]);
  });
});

describe("under load", () => {
  // OpenStax College Physics, starter-motor problem: 0.0100 ohm
  test("a 12 V battery has 10 milliohm, two in series have 20", () => {
    expect(internalOhms(12)).toBe(0.01);
    expect(internalOhms(24)).toBe(0.02);
  });

  // Derived from the rating's definition: at least 7.2 V at -18 C
  test("300, 600 and 900 cold-cranking amps are 18, 9 and 6 milliohm", () => {
    expect([300, 600, 900].map((amps) => Math.round(internalOhmsFromCca(amps) * 1e5) / 100)).toEqual([18, 9, 6]);
    expect(() => internalOhmsFromCca(0)).toThrow();
  });

  // US Army TM 9-2320-211-20: not under 18 V
  test("a 24 V truck may crank at 18 V and not at 17.9 V", () => {
    expect(passesCranking(18, 24)).toBe(true);
    expect(passesCranking(17.9, 24)).toBe(false);
  });

  test("the load-test limit rises with warmth and is flat beyond the table", () => {
    let before = 0;
    for (let celsius = -40; celsius <= 40; celsius++) {
      const limit = loadTestLimitVolts(celsius);
      expect(limit).toBeGreaterThanOrEqual(before);
      before = limit;
    }
    expect([loadTestLimitVolts(-40), loadTestLimitVolts(40)]).toEqual([8.5, 9.6]);
  });
});

describe("charging", () => {
  // Vehicle maker's service manual, section 33, page 1335
  test("a 12 V regulator holds 14.0 to 15.0 V at 20 C and 13.5 to 14.7 V at 80 C", () => {
    expect(chargingRange(12)).toMatchObject({ least: 14, most: 15 });
    expect(chargingRange(12, 80)).toMatchObject({ least: 13.5, most: 14.7 });
  });

  // US Army TM 5-2410-240-23-1
  test("24 to 28 V is accepted on 24 V", () => expect(chargingRange(24)).toMatchObject({ least: 24, most: 28 }));
});
