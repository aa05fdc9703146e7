import { describe, expect, test } from "vitest";
import { ampacity, bundleFactor, thinnestGaugeFor } from "../../core/trade/ampacity.ts";
import {
  gaugeDiameterMm,
  gaugeMm2,
  gaugeName,
  gaugeOfMm2,
  gaugeOhmsPerMetre,
  parseGauge,
  SAE_CIRCULAR_MILS,
  STRANDED_WIRE,
  saeGaugeMm2,
  TRADE_GAUGES,
} from "../../core/trade/gauge.ts";
import {
  copperRatio,
  geometricOhmsPerMetre,
  linearRatio,
  METRIC_SIZES,
  metricOhmsPerMetre,
  wireOhms,
} from "../../core/trade/wire.ts";

describe("gauges", () => {
  test("a gauge's area leads back to the gauge", () => {
    for (const gauge of TRADE_GAUGES) expect(gaugeOfMm2(gaugeMm2(gauge))).toBeCloseTo(gauge, 9);
  });

  test("a gauge's name leads back to the gauge", () => {
    for (const gauge of TRADE_GAUGES) expect(parseGauge(gaugeName(gauge))).toEqual({ ok: true, value: gauge });
    expect(gaugeName(-3)).toBe("0000");
  });

  test("2/0 is 00", () => expect(parseGauge("2/0")).toEqual({ ok: true, value: -1 }));

  test.each(["", "41", "1.5", "-1", "00000", "AWG"])("%j is no gauge", (text) => {
    expect(parseGauge(text)).toMatchObject({ ok: false, refusal: { code: "gauge-unknown" } });
  });

  // Doubling rules at epanorama.net and daycounter.com
  test("6 gauges double the diameter, 20 make it ten times, 3 double the ohms", () => {
    expect(gaugeDiameterMm(12) / gaugeDiameterMm(18)).toBeCloseTo(2, 1);
    expect(gaugeDiameterMm(4) / gaugeDiameterMm(24)).toBeCloseTo(10, 0);
    expect(gaugeOhmsPerMetre(15) / gaugeOhmsPerMetre(12)).toBeCloseTo(2, 1);
  });

  // Ancor catalogue 2023, appendix page 70
  test("wire of an SAE gauge is thinner than the same AWG", () => {
    for (const row of SAE_CIRCULAR_MILS) {
      const sae = saeGaugeMm2(row.gauge);
      expect(sae.ok && sae.value < gaugeMm2(row.gauge)).toBe(true);
    }
    expect(saeGaugeMm2(24)).toMatchObject({ ok: false, refusal: { code: "gauge-not-in-table" } });
  });

  // Alpha Wire AWG chart, quoted; Perkins 1200F installation manual, table 4.6
  test("stranded wire has 1.09 to 1.30 times the ohms of its solid gauge", () => {
    for (const wire of STRANDED_WIRE) {
      const times = wire.ohmsPerMetre / gaugeOhmsPerMetre(wire.gauge);
      expect(times).toBeGreaterThan(1.08);
      expect(times).toBeLessThan(1.305);
    }
  });
});

describe("ampacity", () => {
  test("a gauge that the table lacks is refused", () => {
    const outcome = ampacity({ gauge: 24, insulation: 105, inEngineSpace: false });
    expect(outcome).toMatchObject({ ok: false, refusal: { code: "gauge-not-in-table" } });
  });

  test("the engine-space factor is not stretched to other insulation", () => {
    const outcome = ampacity({ gauge: 16, insulation: 60, inEngineSpace: true });
    expect(outcome).toMatchObject({ ok: false, refusal: { code: "engine-space-factor-unknown" } });
  });

  // 33 CFR 183.425, Table 5
  test("each insulation class reads its own column", () => {
    expect(ampacity({ gauge: 8, insulation: 75, inEngineSpace: false })).toEqual({ ok: true, value: 65 });
    expect(ampacity({ gauge: 0, insulation: 200, inEngineSpace: false })).toEqual({ ok: true, value: 325 });
  });

  // UL 1426 tables
  test("bundles of 3, 6, 7 and 25 keep 0.70, 0.60, 0.50 and 0.40", () => {
    expect([1, 3, 6, 7, 25].map(bundleFactor)).toEqual([1, 0.7, 0.6, 0.5, 0.4]);
  });

  test("more copper than AWG 0000 is refused", () => {
    expect(thinnestGaugeFor(300_000)).toMatchObject({ ok: false, refusal: { code: "no-gauge-thick-enough" } });
  });
});

describe("vehicle wire", () => {
  test("ohms grow with length and fall with size, between the table's rows too", () => {
    let before = Number.POSITIVE_INFINITY;
    for (let mm2 = 0.1; mm2 < 60; mm2 *= 1.01) {
      const { ohmsPerMetre } = metricOhmsPerMetre(mm2);
      expect(ohmsPerMetre).toBeLessThan(before);
      expect(ohmsPerMetre).toBeGreaterThan(geometricOhmsPerMetre(mm2));
      before = ohmsPerMetre;
    }
    const metre = wireOhms({ mm2: 2, metres: 1, celsius: 20 });
    expect(wireOhms({ mm2: 2, metres: 7, celsius: 20 })).toBeCloseTo(7 * metre, 12);
    expect(wireOhms({ mm2: 2, metres: 0, celsius: 20 })).toBe(0);
  });

  test("a size next to a table row has next to that row's ohms", () => {
    for (const row of METRIC_SIZES) {
      expect(metricOhmsPerMetre(row.mm2 * 1.000001).ohmsPerMetre / row.ohmsPerMetre).toBeCloseTo(1, 4);
      expect(metricOhmsPerMetre(row.mm2 * 0.999999).ohmsPerMetre / row.ohmsPerMetre).toBeCloseTo(1, 4);
    }
  });

  test("its ohms are marked from memory, in the table and between", () => {
    expect(metricOhmsPerMetre(2.5).source.standing).toBe("memory");
    expect(metricOhmsPerMetre(3).source.standing).toBe("memory");
  });

  // IEC 60287 table 1; TE Connectivity, "Temperature considerations for DC relays"
  test("the -234.5 C rule and the coefficient 0.00393 agree from -40 to 125 C", () => {
    for (const celsius of [-40, 0, 20, 80, 125]) {
      expect(Math.abs(copperRatio(celsius) / linearRatio(0.00393, celsius - 20) - 1)).toBeLessThan(0.001);
    }
  });

  test("a hot wire has the cold one's ohms times the copper ratio", () => {
    const cold = wireOhms({ mm2: 1, metres: 3, celsius: 20 });
    expect(wireOhms({ mm2: 1, metres: 3, celsius: 80 })).toBeCloseTo(cold * (314.5 / 254.5), 12);
  });

  test("no copper, negative length and absolute cold break an invariant", () => {
    expect(() => wireOhms({ mm2: 0, metres: 1, celsius: 20 })).toThrow();
    expect(() => wireOhms({ mm2: 1, metres: -1, celsius: 20 })).toThrow();
    expect(() => wireOhms({ mm2: 1, metres: 1, celsius: -300 })).toThrow();
  });
});
