import { describe, expect, test } from "vitest";
import { motor, motorDoing, motorLaw, speedVolts } from "../../core/parts/motor.ts";
import { wiperMotor } from "../../core/parts/wiperMotor.ts";
import { motorFrom } from "../../core/trade/motors.ts";
import { battery, ohms, onBench, type Wired } from "./bench.ts";

const FORWARD: readonly Wired[] = [
  ["1", "-", battery(12)],
  ["2", "-", ohms(0.001)],
];

// School-robotics motor table: window lift, left, 84 rpm, 1.8 A free, 21 A stalled at 12 V; M. Niehus, DC motor theory
describe("the law of a published window motor", () => {
  const window = { volts: 12, stallAmps: 21, friction: 0.8 };
  const { ke } = motorFrom({ ratedVolts: 12, freeAmps: 1.8, stallAmps: 21, rpm: 84 });
  const rpm = (volts: number) => volts / ke / ((2 * Math.PI) / 60);

  test("its windings have 0.571 ohm", () => {
    expect(motorLaw({ ...window, runAmps: 1.8 }).ohms).toBeCloseTo(0.571, 3);
  });

  test("its back-EMF at 1.8 A is that of 84 rpm, at 8 A that of 56.9 rpm", () => {
    const [free, loaded] = [motorLaw({ ...window, runAmps: 1.8 }), motorLaw({ ...window, runAmps: 8 })];
    expect(rpm(speedVolts(free, 1.8))).toBeCloseTo(84, 1);
    expect(rpm(speedVolts(loaded, 8))).toBeCloseTo(56.9, 1);
  });

  test("held with 0.3 ohm in series it draws 13.77 A, at 10 V without 17.5 A", () => {
    const held = (volts: number, series: number) =>
      onBench(motor, {
        part: { settings: { amps: 1.8, stall: 21 } },
        fault: ["seized"],
        wired: [
          ["+", "-", { law: "source", volts, ohms: 1e-6 }],
          ["+", "1", ohms(series)],
          ["2", "-", ohms(1e-6)],
        ],
      });
    expect(held(12, 0.3).amps("windings")).toBeCloseTo(13.77, 2);
    expect(held(10, 1e-6).amps("windings")).toBeCloseTo(17.5, 2);
  });
});

describe("a motor", () => {
  test("draws its running amps at its rated volts and turns with terminal 1 positive", () => {
    const stood = onBench(motor, {
      wired: [
        ["1", "2", { law: "source", volts: 12, ohms: 1e-6 }],
        ["2", "-", ohms(1)],
      ],
    });
    expect(stood.amps("windings")).toBeCloseTo(3, 4);
    expect(stood.doing?.doing).toBe("forward");
    expect(stood.doing?.work).toBeCloseTo(12 - 3 * 1.2, 3);
  });

  test("turns the other way, as fast, with its leads changed over", () => {
    const forward = onBench(motor, { wired: FORWARD });
    const reverse = onBench(motor, {
      wired: [
        ["2", "-", battery(12)],
        ["1", "-", ohms(0.001)],
      ],
    });
    expect(reverse.doing?.doing).toBe("reverse");
    expect(reverse.doing?.work).toBeCloseTo(forward.doing!.work, 9);
    expect(reverse.doing?.amps).toBeCloseTo(-forward.doing!.amps, 9);
  });

  test("is off with no volts, and stands humming below the volts that overcome its friction", () => {
    expect(onBench(motor, { wired: [["1", "-", ohms(1)]] }).doing?.doing).toBe("off");
    const weak = onBench(motor, {
      wired: [
        ["1", "-", battery(2)],
        ["2", "-", ohms(0.001)],
      ],
    });
    expect(weak.doing).toMatchObject({ doing: "stalled", work: 0 });
  });

  test("seized and jammed give the same volts and amps but are two repairs", () => {
    const [seized, jammed] = ["seized", "jammed"].map((mode) => onBench(motor, { wired: FORWARD, fault: [mode] }));
    expect(seized?.doing).toEqual(jammed?.doing);
    expect(seized?.doing).toMatchObject({ doing: "stalled", work: 0 });
    expect(seized?.doing?.amps).toBeCloseTo(12 / 1.211, 2);
  });

  test("worn brushes slow it the more, the more ohms they add", () => {
    const work = [0.5, 2, 8].map((value) => onBench(motor, { wired: FORWARD, fault: ["worn", value] }).doing!.work);
    const healthy = onBench(motor, { wired: FORWARD }).doing!.work;
    expect([healthy, ...work]).toEqual([healthy, ...work].sort((a, b) => b - a));
    expect(work[0]).toBeLessThan(healthy);
    expect(work[2]).toBe(0);
  });

  test("shorted windings draw far more than held ones and turn nothing", () => {
    const stood = onBench(motor, { wired: FORWARD, fault: ["shorted"] });
    expect(stood.doing).toMatchObject({ doing: "stalled", work: 0 });
    expect(stood.amps("windings")).toBeGreaterThan(100);
  });

  test("an open winding and an open cut-out both leave it dead with full volts at terminal 1", () => {
    const part = { settings: { cutOut: true } };
    for (const mode of ["open", "cut-out-open"]) {
      const stood = onBench(motor, { part, wired: FORWARD, fault: [mode] });
      expect([mode, stood.doing?.doing, Math.abs(stood.amps("windings"))]).toEqual([mode, "off", 0]);
      expect(stood.volts("1")).toBeCloseTo(12, 6);
    }
    expect(onBench(motor, { part, wired: FORWARD }).doing?.doing).toBe("forward");
  });

  test("a motor said to run at its stall amps still has a law that rises", () => {
    expect(motorLaw({ volts: 12, runAmps: 10, stallAmps: 10, friction: 0.8 }).speedOhms).toBeGreaterThan(0);
  });

  test("just at its friction amps it does not turn", () => {
    const law = motorLaw({ volts: 12, runAmps: 3, stallAmps: 10, friction: 0.8 });
    expect([2.4, 2.5, -2.5].map((amps) => motorDoing(law, false, amps))).toEqual(["stalled", "forward", "reverse"]);
  });
});

describe("a wiper motor", () => {
  const feed = (...terminals: readonly string[]): readonly Wired[] => [
    ["31", "-", ohms(0.001)],
    ["+", "-", battery(12)],
    ...terminals.map((terminal): Wired => ["+", terminal, ohms(0.001)]),
  ];
  const at = (position: string, wired: readonly Wired[], fault?: readonly [string]) =>
    onBench(wiperMotor, { wired, around: { positions: { "": position } }, ...(fault ? { fault } : {}) });
  const switchAtRest: Wired = ["53", "31b", ohms(0.01)];

  // one vehicle maker's wiper inspection pages, 1999 to 2012: low 41-57 rpm, high 63-84 rpm
  test("turns at a low and a high speed of the published ranges", () => {
    const [low, high] = [at("turning", feed("53")).doing!.work, at("turning", feed("53b")).doing!.work];
    expect(low).toBeGreaterThan(41);
    expect(low).toBeLessThan(57);
    expect(high).toBeGreaterThan(63);
    expect(high).toBeLessThan(84);
  });

  test("with its switch at rest runs on until the arms are parked, then stands", () => {
    const wired = [...feed("53a"), switchAtRest];
    expect(at("turning", wired).doing?.doing).toBe("forward");
    expect(at("parked", wired).doing).toMatchObject({ doing: "off", work: 0 });
  });

  test("with the park switch burnt open stops where it is", () => {
    const wired = [...feed("53a"), switchAtRest];
    expect(at("turning", wired, ["stuck-open-31b-53a"]).doing?.doing).toBe("off");
  });

  test("with one brush open keeps the other speed", () => {
    expect(at("turning", feed("53b"), ["open-low"]).doing?.doing).toBe("forward");
    expect(at("turning", feed("53"), ["open-low"]).doing?.doing).toBe("off");
  });
});
