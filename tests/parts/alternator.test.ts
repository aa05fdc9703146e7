import { describe, expect, test } from "vitest";
import { alternator } from "../../core/parts/alternator.ts";
import { battery, filament, ohms, onBench, type Wired } from "./bench.ts";

/** A 12 V battery at B+, and a 3 W charge lamp from it to D+ through a key that is on or off. */
function car(key: "on" | "off"): readonly Wired[] {
  return [
    ["B+", "-", battery(12.6)],
    ["B-", "-", ohms(0.001)],
    ["B+", "15", ohms(key === "on" ? 0.01 : 1e9)],
    ["15", "D+", filament(3)],
  ];
}

function lampVolts(key: "on" | "off", running: boolean, fault?: readonly [string]): number {
  const stood = onBench(alternator, {
    wired: car(key),
    around: { engineRunning: running },
    ...(fault ? { fault } : {}),
  });
  return stood.volts("15") - stood.volts("D+");
}

describe("the charge lamp", () => {
  // TM 10-3930-671-24, charge indicator symptom table: key off, off; key on and stopped, on; running, off
  test("is off with the key off, on with the key on and the engine stopped, off when running", () => {
    expect(Math.abs(lampVolts("off", false))).toBeLessThan(0.1);
    expect(lampVolts("on", false)).toBeGreaterThan(10);
    expect(Math.abs(lampVolts("on", true))).toBeLessThan(0.5);
  });

  // same table, row 1: key off and lamp on, the rectifier bridge. The other consumers of 15 are the lamp's way home.
  test("has volts across it with the key off when a positive diode is shorted", () => {
    const wired: readonly Wired[] = [...car("off"), ["15", "-", ohms(10)]];
    const stood = onBench(alternator, { wired, fault: ["shorted-positive-1"] });
    expect(stood.volts("D+") - stood.volts("15")).toBeGreaterThan(5);
  });

  // same table, row 2: on and stopped and no lamp
  test("stays dark with the key on when the rotor or the regulator is open", () => {
    for (const mode of ["field-open", "regulator-open"])
      expect(Math.abs(lampVolts("on", false, [mode]))).toBeLessThan(0.1);
  });

  test("stays lit when running and the alternator gives nothing", () => {
    expect(lampVolts("on", true, ["no-output"])).toBeGreaterThan(10);
  });
});

describe("a stopped alternator", () => {
  test("draws nothing from B+ and returns D+ through its rotor", () => {
    const stood = onBench(alternator, { wired: car("off") });
    expect(stood.state).toBe("stopped");
    expect(12.6 - stood.volts("B+")).toBeLessThan(1e-4);
    const lit = onBench(alternator, { wired: car("on") });
    expect(lit.amps("field")).toBeGreaterThan(0.2);
  });

  test("conducts from B- to B+ when the battery is put in backwards", () => {
    const stood = onBench(alternator, {
      wired: [
        ["B-", "-", battery(12.6)],
        ["B+", "-", ohms(0.1)],
      ],
    });
    expect(stood.volts("B+")).toBeGreaterThan(9);
  });
});

describe("a running alternator", () => {
  const running = { engineRunning: true };

  // 14.2 V is common practice, no source; 28 V is within US Army TM 5-2410-240-23-1, 24 to 28 V
  test("holds its set volts at B+, and D+ is as high", () => {
    for (const [volts, emf, set] of [
      [12, 12.6, 14.2],
      [24, 25.2, 28],
    ] as const) {
      const wired: readonly Wired[] = [
        ["B+", "-", { law: "source", volts: emf, ohms: 0.1 }],
        ["B-", "-", ohms(0.001)],
      ];
      const stood = onBench(alternator, { volts, wired, around: running });
      expect(stood.state).toBe("charging");
      expect(Math.abs(stood.volts("B+") - set)).toBeLessThan(0.3);
      expect(Math.abs(stood.volts("D+") - stood.volts("B+"))).toBeLessThan(0.3);
      expect(stood.doing).toMatchObject({ doing: "charging" });
    }
  });

  test("gives no more than its rating and sags beyond it", () => {
    const wired: readonly Wired[] = [
      ["B+", "-", ohms(0.1)],
      ["B-", "-", ohms(0.001)],
    ];
    const stood = onBench(alternator, { wired, around: running });
    expect(stood.doing!.amps).toBeGreaterThan(69);
    expect(stood.doing!.amps).toBeLessThan(73);
    expect(stood.volts("B+")).toBeLessThan(8);
  });

  test("gives less with a diode open, and less still with one shorted", () => {
    const loaded = (fault?: readonly [string]) => {
      const wired: readonly Wired[] = [
        ["B+", "-", ohms(0.2)],
        ["B-", "-", ohms(0.001)],
      ];
      return onBench(alternator, { wired, around: running, ...(fault ? { fault } : {}) }).doing!.amps;
    };
    expect(loaded(["open-negative-2"])).toBeLessThan(loaded());
    expect(loaded(["shorted-negative-2"])).toBeLessThan(loaded(["open-negative-2"]));
  });

  test("gives nothing with its field or regulator open, and does not hunt", () => {
    for (const mode of ["field-open", "regulator-open"]) {
      const stood = onBench(alternator, { wired: car("on"), around: running, fault: [mode] });
      expect([mode, stood.state, stood.doing?.work]).toEqual([mode, "no-output", 0]);
    }
  });

  test("one that does not excite itself needs its charge lamp", () => {
    const part = { settings: { selfExciting: false } };
    expect(onBench(alternator, { part, wired: car("on"), around: running }).state).toBe("charging");
    expect(onBench(alternator, { part, wired: car("on").slice(0, 2), around: running }).state).toBe("stopped");
  });

  test("overcharges with its regulator set too high", () => {
    const wired: readonly Wired[] = [
      ["B+", "-", { law: "source", volts: 12.6, ohms: 0.1 }],
      ["B-", "-", ohms(0.001)],
    ];
    expect(onBench(alternator, { wired, around: running, fault: ["overcharging", 16.5] }).volts("B+")).toBeGreaterThan(
      15.8,
    );
  });
});
