import { describe, expect, test } from "vitest";
import {
  coldFilamentOhms,
  hotOhms,
  LAMPS,
  lampAmps,
  lampCategory,
  lightShare,
  ratedLamp,
} from "../../core/trade/lamps.ts";

describe("lamps", () => {
  const lamp = { volts: 12, amps: 0.25 };

  test("amps are odd in volts, rise with them, and near zero follow the cold filament", () => {
    expect(lampAmps(0, lamp)).toBe(0);
    let before = 0;
    for (let volts = 0.001; volts < 30; volts *= 1.1) {
      const amps = lampAmps(volts, lamp);
      expect(lampAmps(-volts, lamp)).toBe(-amps);
      expect(amps).toBeGreaterThan(before);
      expect(volts / amps).toBeGreaterThanOrEqual(coldFilamentOhms(lamp) * 0.9999);
      before = amps;
    }
    expect(1e-6 / lampAmps(1e-6, lamp)).toBeCloseTo(coldFilamentOhms(lamp), 3);
    expect(lampAmps(12, lamp)).toBeCloseTo(0.25, 5);
  });

  // Wikipedia, "Lamp rerating": light goes as the 3.4th power of volts
  test("at half its volts a lamp gives a tenth of its light", () => {
    expect(lightShare(6, 12)).toBeCloseTo(0.0947, 4);
    expect(lightShare(-12, 12)).toBe(1);
  });

  test("every category with watts has a rated point, one without has none", () => {
    for (const category of LAMPS) {
      for (const [i, filament] of category.filaments.entries()) {
        const rated = ratedLamp(category, i);
        if (filament.watts === null) expect(rated).toBeNull();
        else expect(rated!.volts * rated!.amps).toBeCloseTo(filament.watts, 9);
      }
      expect(ratedLamp(category, 2)).toBeNull();
    }
    expect(lampCategory("P21/5W", 48)).toBeNull();
  });

  // EU Directive 97/24/EC, annex sheet P21/5W
  test("the small filament of P21/5W takes 6 W at 13.5 V", () => {
    const small = ratedLamp(lampCategory("P21/5W", 12)!, 1)!;
    expect(hotOhms(small)).toBeCloseTo(13.5 ** 2 / 6, 6);
  });
});
