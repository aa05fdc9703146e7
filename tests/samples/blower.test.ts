import { describe, expect, it } from "vitest";
import type { Observed } from "../../core/live/judge.ts";
import { BLOWER_RESISTORS, MOTOR_CURRENTS } from "../../core/trade/motors.ts";
import { living } from "../diagnose/living.ts";
import { failing, lossyPlaces, lost, restless, sample, stand, volts } from "./onTheBench.ts";

const TRACTOR = sample("5-blower");
const SPEEDS = ["speed-1", "speed-2", "speed-3", "speed-4"] as const;

function observed(id: string, word: Observed) {
  return { check: TRACTOR.checks.find((check) => check.id === id)!, word };
}

function at(speed: string, ...faults: readonly string[]) {
  return stand(TRACTOR, `S1=on,S2=${speed}`, ...faults);
}

describe("the healthy cab", () => {
  it("passes every check", () => {
    expect(failing(TRACTOR)).toEqual([]);
  });

  it("neither chatters nor melts a fuse in any check or scene", () => {
    expect(restless(TRACTOR)).toEqual([]);
  });

  it("loses no more volts than the trade allows (core/trade/limits.ts)", () => {
    expect(lossyPlaces(TRACTOR)).toEqual([]);
  });

  it("draws more in each speed than in the one below, and 23 A at most (vehicle maker's sheet 2888275)", () => {
    const amps = SPEEDS.map((speed) => at(speed).parts.get("M1")!.amps);
    expect(amps).toEqual([...amps].sort((one, other) => one - other));
    expect(amps[0]).toBeLessThan(5);
    expect(amps[3]).toBeLessThanOrEqual(MOTOR_CURRENTS.find(({ name }) => name === "blower, most")!.mostAmps);
    expect(amps[3]).toBeGreaterThan(15);
  });

  it("has 2.50, 0.75 and 0.25 ohm in series in speeds 1 to 3 (vehicle maker's sheet 2888275)", () => {
    BLOWER_RESISTORS.ohms.slice(0, 3).forEach((ohms, index) => {
      const live = at(SPEEDS[index]!);
      const measured = lost(live, "R1.4", `R1.${index + 1}`) / live.parts.get("M1")!.amps;
      expect(Math.abs(measured / ohms - 1)).toBeLessThan(0.03);
    });
  });
});

describe("what the pins of the switch read (common practice, no source)", () => {
  it("shows battery volts at all four of its lines with the switch off, through the motor", () => {
    const live = stand(TRACTOR, "S1=on");
    for (const pin of ["1", "2", "3", "4"]) {
      expect(live.points.get(`X7-${pin}`)!.state).toBe("powered-through-load");
      expect(volts(live, `X7-${pin}`)).toBeGreaterThan(12.4);
    }
    expect(live.points.get("X7-5")!.state).toBe("grounded");
  });

  it("grounds the tap in use and puts the rest of the chain between", () => {
    const live = at("speed-1");
    const states = ["1", "2", "3", "4"].map((pin) => live.points.get(`X7-${pin}`)!.state);
    expect(states).toEqual(["grounded", "between", "between", "between"]);
    const read = ["1", "2", "3", "4"].map((pin) => volts(live, `X7-${pin}`));
    expect(read).toEqual([...read].sort((one, other) => one - other));
  });

  it("floats on all lines with the key off", () => {
    const live = stand(TRACTOR, "");
    for (const pin of ["1", "2", "3", "4"]) expect(live.points.get(`X7-${pin}`)!.state).toBe("floating");
  });

  it("reads battery volts at the switch's ground pin when its ground is off", () => {
    const live = at("speed-4", "GP3:off");
    expect(live.points.get("X7-5")!.state).toBe("powered-through-load");
    expect(volts(live, "X7-5")).toBeGreaterThan(12);
  });
});

describe("which fault gives which signs", () => {
  it.each([
    ["R1:link-melted", ["speed-1", "speed-2", "speed-3"]],
    ["R1:open-step-3", ["speed-1", "speed-2", "speed-3"]],
    ["R1:open-step-2", ["speed-1", "speed-2"]],
    ["R1:open-step-1", ["speed-1"]],
    ["X7-4:backed-out", ["speed-4"]],
    ["S2:stuck-open-31-2", ["speed-2"]],
    ["GP3:off", [...SPEEDS]],
    ["K1:coil-open", [...SPEEDS]],
    ["F3:blown", [...SPEEDS]],
    ["F2:blown", [...SPEEDS, "switch-lamp"]],
    ["GP5:off", [...SPEEDS, "switch-lamp"]],
    ["K1:welded", ["key-off"]],
  ])("%s fails %j", (fault, fails) => {
    expect(failing(TRACTOR, fault)).toEqual(fails);
  });

  it("runs in top speed with the pack unplugged", () => {
    expect(stand(TRACTOR, "S1=on,S2=speed-4,apart:X6").parts.get("M1")!.doing).toBe("forward");
    expect(stand(TRACTOR, "S1=on,S2=speed-3,apart:X6").parts.get("M1")!.doing).toBe("off");
  });

  it("suspects the pack and its motor pin alone when only top speed works", () => {
    const suspects = living(TRACTOR, observed("speed-2", "dead"), [
      observed("speed-4", "works"),
      observed("speed-1", "dead"),
      observed("speed-3", "dead"),
    ]);
    const single = suspects.filter(({ faults }) => faults.length === 1);
    expect(new Set(single.map(({ faults }) => faults[0]!.target))).toEqual(new Set(["R1", "X6-4"]));
    const others = suspects.filter(({ faults }) => faults.length > 1);
    expect(new Set(others.map(({ repair }) => repair))).toEqual(new Set(["X6|mend the plug"]));
    expect(suspects.map(({ id }) => id)).toContain("R1:link-melted");
  });

  it("blows F3 with a seized fan in top speed and not in speed 1, where the pack only gets hot", () => {
    expect(at("speed-4", "M1:seized").happenings).toMatchObject([{ what: "melted", part: "F3" }]);
    expect(at("speed-1", "M1:seized").happenings).toEqual([]);
    expect(at("speed-1", "M1:seized").parts.get("M1")!.doing).toBe("stalled");
  });
});
