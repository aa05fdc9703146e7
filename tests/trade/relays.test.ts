import { describe, expect, test } from "vitest";
import {
  COIL_CLASSES,
  coilDefaults,
  coilOhmsAt,
  contactOhms,
  isPulledIn,
  pullInAmps,
  pullInVoltsAt,
} from "../../core/trade/relays.ts";

describe("relays", () => {
  // Sheets named in core/trade/relays.ts
  test("watts of a sheet are its volts squared over its ohms", () => {
    for (const coil of COIL_CLASSES) {
      if (coil.ohms === null || coil.watts === null) continue;
      expect(Math.abs(coil.ratedVolts ** 2 / coil.ohms - coil.watts)).toBeLessThan(0.1);
    }
  });

  // Sheets named in core/trade/relays.ts
  test("coils must operate from 54 to 75 % of rated volts and release at 8 to 13 %", () => {
    for (const { ratedVolts, mustOperateVolts, mustReleaseVolts } of COIL_CLASSES) {
      if (mustOperateVolts === null || mustReleaseVolts === null) continue;
      expect(mustOperateVolts / ratedVolts).toBeGreaterThan(0.54);
      expect(mustOperateVolts / ratedVolts).toBeLessThanOrEqual(0.75);
      expect(mustReleaseVolts / ratedVolts).toBeGreaterThan(0.08);
      expect(mustReleaseVolts / ratedVolts).toBeLessThan(0.135);
    }
  });

  // OEN 78 sheet (320 ohm) and TE VF4A sheet (14.4 V, 2.4 V)
  test("the 24 V default is 320 ohm, 14.4 V and 2.4 V", () => {
    expect(coilDefaults(24)).toMatchObject({ ohms: 320, pullInVolts: 14.4, dropOutVolts: 2.4 });
    expect(coilDefaults(12)).toMatchObject({ ohms: 90, pullInVolts: 7.2, dropOutVolts: 1.6 });
  });

  test("a hot coil pulls in at the same amps as a cold one", () => {
    const { ohms, pullInVolts } = coilDefaults(12);
    expect(pullInAmps(coilOhmsAt(ohms, 85), pullInVoltsAt(pullInVolts, 85))).toBeCloseTo(
      pullInAmps(ohms, pullInVolts),
      12,
    );
  });

  test("a coil pulls in on either polarity", () => {
    expect(isPulledIn(false, -12, coilDefaults(12))).toBe(true);
    expect(isPulledIn(true, -1, coilDefaults(12))).toBe(false);
  });

  // TE Connectivity Power Relay B and VF4A sheets: 15 mV and 20 mV at 10 A
  test("healthy contacts have 1.5 and 2 milliohm", () => {
    expect(contactOhms("make")).toBeCloseTo(0.0015, 9);
    expect(contactOhms("break")).toBeCloseTo(0.002, 9);
  });
});
