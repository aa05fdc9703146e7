import { describe, expect, test } from "vitest";
import { ampacity, circularMilsFor, thinnestGaugeFor } from "../../core/trade/ampacity.ts";
import { chargeOf, loadTestLimitVolts, passesCranking } from "../../core/trade/battery.ts";
import { ampsFromDrop, bodyColour, ratedDropVolts } from "../../core/trade/fuses.ts";
import {
  gaugeCircularMils,
  gaugeDiameterMm,
  gaugeMm2,
  gaugeOhmsPerMetre,
  parseGauge,
  STRANDED_WIRE,
} from "../../core/trade/gauge.ts";
import { holdsFor, meltWindow } from "../../core/trade/meltWindow.ts";
import {
  COIL_CLASSES,
  COIL_COEFFICIENT_AT_25,
  COIL_DEFAULTS,
  CONTACT_DROPS,
  coilOhmsAt,
  contactOhms,
  isPulledIn,
  mostContactOhms,
  pullInVoltsAt,
} from "../../core/trade/relays.ts";
import { geometricOhmsPerMetre, linearRatio, METRIC_SIZES, metricOhmsPerMetre } from "../../core/trade/wire.ts";
import { near } from "./near.ts";

/** Gauge of a name that the test knows to be good. */
function gauge(name: string): number {
  const parsed = parseGauge(name);
  if (!parsed.ok) throw new Error(name);
  return parsed.value;
}

const milliohms = (ohms: number) => ohms * 1000;

describe("wire", () => {
  // ASTM B258 law, as doneinbrowser.com/awg-wire-size-chart states it
  test("1: AWG 36 is 0.1270 mm across", () => near(gaugeDiameterMm(36), 0.127, 0.0001));

  // Tables at daycounter.com, linuxfocus.org and wp.1728.org
  test("2: AWG 0000 is 11.684 mm across", () => near(gaugeDiameterMm(gauge("0000")), 11.684, 0.005));

  // Table at linuxfocus.org, AWG 5 to 27
  test("3: AWG 18 is 1.024 mm across, 0.823 mm2, 20.95 milliohm per metre", () => {
    near(gaugeDiameterMm(18), 1.024, 0.001);
    near(gaugeMm2(18), 0.823, 0.001);
    near(milliohms(gaugeOhmsPerMetre(18)), 20.95, 0.02);
  });

  // Table at linuxfocus.org
  test("4: AWG 12 is 3.31 mm2, 5.211 milliohm per metre", () => {
    near(gaugeMm2(12), 3.31, 0.01);
    near(milliohms(gaugeOhmsPerMetre(12)), 5.211, 0.005);
  });

  // Table at linuxfocus.org
  test("5: AWG 10 has 3.277 milliohm per metre", () => near(milliohms(gaugeOhmsPerMetre(10)), 3.277, 0.003));

  // Derived from the ASTM B258 law; the shop rule says 10
  test("6: ten gauges thinner has 10.16 times the ohms", () =>
    near(gaugeOhmsPerMetre(24) / gaugeOhmsPerMetre(14), 10.16, 0.02));

  // Derived from NBS Handbook 100, 1966
  test("7: a metre of exactly 2.5 mm2 annealed copper has 6.896 milliohm", () =>
    near(milliohms(geometricOhmsPerMetre(2.5)), 6.896, 0.001));

  // Derived from NBS Handbook 100, 1966, and IEC 60287 table 1
  test("8: AWG 18 at 80 C has 25.89 milliohm per metre", () => near(milliohms(gaugeOhmsPerMetre(18, 80)), 25.89, 0.02));

  // Engineering note of 2026 on relay, fuse and wire selection, from the Alpha Wire AWG chart
  test("9: 18.9 A loses 0.172 V in a metre of tinned stranded AWG 14", () => {
    const wire = STRANDED_WIRE.find((each) => each.gauge === 14 && each.plating === "tin")!;
    near(wire.ohmsPerMetre * 18.9, 0.172, 0.001);
  });

  // Derived from ABYC E-11: K 10.75
  test("10: 10 A over 30 ft for 0.36 V needs 8958 circular mils, so AWG 10", () => {
    const needed = circularMilsFor({ amps: 10, outAndBackFeet: 30, allowedVolts: 0.36 });
    near(needed, 8958, 5);
    expect(thinnestGaugeFor(needed)).toEqual({ ok: true, value: 10 });
    near(gaugeCircularMils(10), 10383, 5);
  });

  // 33 CFR 183.425, Table 5; engine-space factor from marincofaq.wordpress.com, wire charts
  test("11: AWG 16 at 105 C carries 25 A, 21.25 A in an engine space", () => {
    const open = ampacity({ gauge: 16, insulation: 105, inEngineSpace: false });
    const engine = ampacity({ gauge: 16, insulation: 105, inEngineSpace: true });
    expect(open).toEqual({ ok: true, value: 25 });
    expect(engine.ok).toBe(true);
    if (engine.ok) near(engine.value, 21.25, 0.1);
  });

  // IEC 60228 class 5 as bayka.de gives it; floor derived from NBS Handbook 100, 1966
  test("12: modelled wire lies between bare geometry and IEC 60228 class 5", () => {
    const { ohmsPerMetre } = metricOhmsPerMetre(1.5);
    expect(milliohms(ohmsPerMetre)).toBeGreaterThanOrEqual(11.49);
    expect(milliohms(ohmsPerMetre)).toBeLessThanOrEqual(13.3);
    for (const size of METRIC_SIZES.filter((each) => each.class5OhmsPerMetre !== null)) {
      const modelled = metricOhmsPerMetre(size.mm2).ohmsPerMetre;
      expect(modelled).toBeGreaterThanOrEqual(geometricOhmsPerMetre(size.mm2));
      expect(modelled).toBeLessThanOrEqual(size.class5OhmsPerMetre!);
    }
  });
});

describe("fuses", () => {
  // Blade-fuse colours at dieelektronikerseite.de; DIN 72581-3 form E extract at noiasca.rothschopf.net
  test("13: red is 10 A on a regular blade and 50 A on a maxi", () => {
    expect(bodyColour("regular", 10)).toBe("red");
    expect(bodyColour("maxi", 50)).toBe("red");
  });

  // mvwautotechniek.nl, voltage drop over fuses
  test("14: 1.0 mV across a regular 10 A fuse is 130 mA", () => near(ampsFromDrop("regular", 10, 0.001), 0.13, 0.003));

  // MACS Service Reports, June 2017, fuse drop chart
  test("15: 0.1 mV across a mini 15 A fuse is 22 mA, 1.0 mV is 218 mA", () => {
    near(ampsFromDrop("mini", 15, 0.0001), 0.022, 0.001);
    near(ampsFromDrop("mini", 15, 0.001), 0.218, 0.005);
  });

  // ATOF 287 sheet r2.7 in an engineering note of 2026
  test("16: a 10 A blade at 20 A opens between 0.15 and 5 s", () =>
    expect(meltWindow("regular", 10, 20)).toMatchObject({ least: 0.15, most: 5 }));

  // ATOF 287 sheet r2.7 in an engineering note of 2026
  test("17: a 10 A blade at 16 A opens between 0.25 and 50 s", () =>
    expect(meltWindow("regular", 10, 16)).toMatchObject({ least: 0.25, most: 50 }));

  // ATOF 287 sheet of 18 August 2022 in a design note
  test("18: a regular 40 A opens between 0.08 and 0.5 s at 140 A, within 0.15 s at 240 A", () => {
    expect(meltWindow("regular", 40, 140)).toMatchObject({ least: 0.08, most: 0.5 });
    expect(meltWindow("regular", 40, 240).most).toBe(0.15);
  });

  // DIN 72581-3 form E extract at noiasca.rothschopf.net
  test("19: a maxi 30 A opens in 2 to 60 s at 60 A, 0.2 to 7 s at 105 A, 60 to 1800 s at 40 A", () => {
    expect(meltWindow("maxi", 30, 60)).toMatchObject({ least: 2, most: 60 });
    expect(meltWindow("maxi", 30, 105)).toMatchObject({ least: 0.2, most: 7 });
    expect(meltWindow("maxi", 30, 40)).toMatchObject({ least: 60, most: 1800 });
  });

  // ATOF 287 sheet of 18 August 2022 in a design note
  test("20: a regular 40 A at 40 A drops 96 mV and holds 100 h", () => {
    near(milliohms(ratedDropVolts("regular", 40)), 96, 10);
    expect(holdsFor("regular", 40, 40)).toBe(360_000);
    expect(meltWindow("regular", 40, 40).most).toBe("never");
  });
});

describe("relays", () => {
  // TE F7 sheet V23134X0000A002 in an engineering note of 2026
  test("21: the default 12 V coil draws 133.3 mA and 1.60 W", () => {
    const amps = 12 / COIL_DEFAULTS[12].ohms;
    near(amps, 0.1333, 0.0005);
    near(12 * amps, 1.6, 0.01);
  });

  // Same note, which prints about 156 mA
  test("22: at 12.6 V with the coil at its least ohms it draws 155.6 mA", () => {
    const coil = COIL_CLASSES.find((each) => each.name === "power, 70 A")!;
    near(12.6 / (coil.ohms! * (1 - coil.tolerance!)), 0.1556, 0.0005);
  });

  // Same note
  test("23: the default relay is on at 7.2 V, off at 1.6 V, and keeps its state at 4.0 V", () => {
    const limits = COIL_DEFAULTS[12];
    expect(isPulledIn(false, 7.2, limits)).toBe(true);
    expect(isPulledIn(true, 1.6, limits)).toBe(false);
    expect(isPulledIn(true, 4, limits)).toBe(true);
    expect(isPulledIn(false, 4, limits)).toBe(false);
  });

  // Formula and inputs of TE Connectivity, "Temperature considerations for DC relays"; result derived
  test("24: 90 ohm and 6.5 V at 20 C are 112.98 ohm and 8.16 V at 85 C", () => {
    near(coilOhmsAt(90, 85), 112.98, 0.1);
    near(pullInVoltsAt(6.5, 85), 8.16, 0.01);
  });

  // Babcock, relay notes
  test("25: 320 ohm and 13.0 V at 25 C are 443.3 ohm and 18.0 V at 125 C", () => {
    near(coilOhmsAt(320, 125, 25), 443.3, 0.2);
    near(pullInVoltsAt(13, 125, 25), 18, 0.05);
  });

  // Kilovac application note, coefficient 0.003853 from 25 C
  test("26: 16 V at 25 C is 19.7 V at 85 C and 12.9 V at -25 C, by coefficient and by copper rule", () => {
    const { perKelvin } = COIL_COEFFICIENT_AT_25;
    near(16 * linearRatio(perKelvin, 85 - 25), 19.7, 0.05);
    near(16 * linearRatio(perKelvin, -25 - 25), 12.9, 0.05);
    near(pullInVoltsAt(16, 85, 25), 19.7, 0.05);
    near(pullInVoltsAt(16, -25, 25), 12.9, 0.05);
  });

  // TE Connectivity Power Relay B and VF4A sheets
  test("27: at 10 A a make contact drops 15 mV and may drop 200, a break contact 20 and 250", () => {
    near(contactOhms("make") * 10, 0.015, 1e-9);
    near(mostContactOhms("make") * 10, 0.2, 1e-9);
    near(contactOhms("break") * 10, 0.02, 1e-9);
    near(mostContactOhms("break") * 10, 0.25, 1e-9);
    expect(CONTACT_DROPS.make.atAmps).toBe(10);
  });

  // TE Connectivity Power Relay B, mini ISO, code 004; the sheet prints 2.3 W
  test("28: a 24 V coil of code 004 draws 94.1 mA and 2.26 W", () => {
    const coil = COIL_CLASSES.find((each) => each.name === "mini ISO, 35 A, code 004")!;
    near(coil.ratedVolts / coil.ohms!, 0.0941, 0.0005);
    near(coil.ratedVolts ** 2 / coil.ohms!, 2.26, 0.05);
    near(coil.watts!, 2.26, 0.05);
  });
});

describe("battery", () => {
  // US Army TM 5-3805-262-20, page 5-142
  test.each([
    [12.4, 0.75],
    [12.2, 0.5],
    [12.0, 0.25],
    [12.7, 1],
    [11.5, 0],
  ])("29: %s V at rest tells a charge of %s", (volts, charge) => near(chargeOf(volts), charge, 1e-9));

  // US Army TM 10-3930-671-24, at 21 to 27 C
  test("33: cranking at 9.4 V is flagged, at 9.8 V passes", () => {
    expect(passesCranking(9.4)).toBe(false);
    expect(passesCranking(9.8)).toBe(true);
  });

  // A vehicle maker's battery load-test table
  test("34: the load-test limit is 9.4 V at 10 C and 8.5 V at -18 C", () => {
    near(loadTestLimitVolts(10), 9.4, 1e-9);
    near(loadTestLimitVolts(-18), 8.5, 1e-9);
  });
});
