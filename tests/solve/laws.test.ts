import { describe, expect, it } from "vitest";
import type { Law } from "../../core/solve/element.ts";
import { ampsAcross, chordAt, slopeAt, tableOf } from "../../core/solve/laws.ts";

const lamp: Law = { law: "lamp", ratedVolts: 12, ratedAmps: 1.75 };
const motor: Law = { law: "motor", ohms: 0.5, frictionAmps: 2, speedOhms: 8 };
const diode: Law = { law: "diode", saturationAmps: 1e-9, emissionVolts: 0.045 };
const regulated: Law = { law: "regulated", volts: 14.2, ohms: 0.02, maxAmps: 90 };
const battery: Law = { law: "source", volts: 12.6, ohms: 0.01 };
const coil: Law = { law: "resistor", ohms: 85 };

const amps = (law: Law, volts: number) => ampsAcross(tableOf([law]), 0, volts);
const chord = (law: Law, volts: number, isRegulating = true) => chordAt(tableOf([law]), 0, volts, isRegulating);

describe("the laws", () => {
  it("give a lamp its rated amps at its rated volts, and the 0.55 power of the volts away from zero", () => {
    // Wikipedia, "Lamp rerating": current as the 0.55 power of the volts.
    expect(amps(lamp, 12)).toBeCloseTo(1.75, 3);
    expect(amps(lamp, 6) / amps(lamp, 12)).toBeCloseTo(0.5 ** 0.55, 3);
    expect(amps(lamp, -12)).toBe(-amps(lamp, 12));
  });

  it("give a cold filament a tenth of its hot ohms", () => {
    expect(chord(lamp, 0)).toBeCloseTo((10 * 1.75) / 12, 12);
    expect(chord(lamp, 1e-6)).toBeCloseTo((10 * 1.75) / 12, 6);
  });

  it("stall a motor up to the volts that beat its friction, and let it turn above", () => {
    expect(amps(motor, 0.9)).toBeCloseTo(1.8, 12);
    expect(amps(motor, 1)).toBeCloseTo(2, 12);
    expect(amps(motor, 9.5)).toBeCloseTo(3, 12);
    expect(amps(motor, -9.5)).toBeCloseTo(-3, 12);
  });

  it("let a regulated source give no amps above its volts and its most far below", () => {
    expect(amps(regulated, 14.3)).toBe(0);
    expect(amps(regulated, 14)).toBeCloseTo(-10, 9);
    expect(amps(regulated, 5)).toBe(-90);
  });

  it("charge a battery from above its volts and draw on it from below", () => {
    expect(amps(battery, 12.7)).toBeCloseTo(10, 9);
    expect(amps(battery, 12.5)).toBeCloseTo(-10, 9);
  });

  it.each([
    ["lamp", lamp, [-13, -0.4, 0.001, 0.2, 11]],
    ["motor", motor, [-9, -0.6, 0.3, 5]],
    ["diode", diode, [-3, -0.05, 0.1, 0.6, 0.8]],
    ["regulated", regulated, [3, 13.5, 14, 15]],
    ["source", battery, [0, 13]],
    ["resistor", coil, [-4, 12]],
  ] as const)("have for a %s the slope that its amps show", (_, law, points) => {
    const table = tableOf([law]);
    for (const volts of points) {
      const step = 1e-6 * Math.max(Math.abs(volts), 0.01);
      const seen = (amps(law, volts + step) - amps(law, volts - step)) / (2 * step);
      const told = slopeAt(table, 0, volts, amps(law, volts));
      expect(Math.abs(told - seen)).toBeLessThanOrEqual(1e-6 * Math.abs(told) + 1e-12);
    }
  });

  it("rise or stay level with the volts, all of them", () => {
    for (const law of [lamp, motor, diode, regulated, battery, coil]) {
      let last = Number.NEGATIVE_INFINITY;
      for (let volts = -30; volts <= 30; volts += 0.01) {
        expect(amps(law, volts)).toBeGreaterThanOrEqual(last);
        last = amps(law, volts);
      }
    }
  });

  it("count with sources dead: a battery by its ohms, a regulated source by its ohms only while it regulates", () => {
    expect(chord(battery, 12)).toBeCloseTo(100, 9);
    expect(chord(regulated, 14, true)).toBeCloseTo(50, 9);
    expect(chord(regulated, 5, false)).toBe(0);
    expect(chord(motor, 9.5)).toBeCloseTo(3 / 9.5, 12);
    expect(chord({ ...motor, frictionAmps: 0 }, 0)).toBeCloseTo(1 / 8.5, 12);
    expect(chord(diode, -12)).toBeCloseTo(1e-9 / 12, 15);
    expect(chord(diode, 0)).toBeCloseTo(1e-9 / 0.045, 15);
  });

  it.each([
    ["a resistor of 0 ohms", { law: "resistor", ohms: 0 }],
    ["a battery without ohms", { law: "source", volts: 12, ohms: 0 }],
    ["volts that are no number", { law: "source", volts: Number.NaN, ohms: 1 }],
    ["a lamp of no amps", { law: "lamp", ratedVolts: 12, ratedAmps: 0 }],
    ["a motor with friction below 0", { law: "motor", ohms: 1, frictionAmps: -1, speedOhms: 5 }],
    ["a diode of no saturation amps", { law: "diode", saturationAmps: 0, emissionVolts: 0.04 }],
    ["a regulated source without ohms", { law: "regulated", volts: 14, ohms: 0, maxAmps: 50 }],
  ] as const)("refuse %s as a broken invariant", (_, law) => {
    expect(() => tableOf([law])).toThrow("broken invariant");
  });
});
