import { describe, expect, it } from "vitest";
import type { Observed } from "../../core/live/judge.ts";
import { living } from "../diagnose/living.ts";
import { failing, lossyPlaces, restless, sample, stand, verdicts, volts } from "./onTheBench.ts";

const VAN = sample("9-liftgate");
const UP = "S1=on,S2.up=pressed";
const DOWN = "S1=on,S2.down=pressed";
const BOTH = "S1=on,S2.up=pressed,S2.down=pressed";

function observed(id: string, word: Observed) {
  return { check: VAN.checks.find((check) => check.id === id)!, word };
}

function states(condition: string, points: readonly string[], ...faults: readonly string[]) {
  const live = stand(VAN, condition, ...faults);
  return points.map((point) => live.points.get(point)!.state);
}

describe("the healthy box van", () => {
  it("passes every check", () => {
    expect(failing(VAN)).toEqual([]);
  });

  it("neither chatters nor melts a fuse in any check or scene", () => {
    expect(restless(VAN)).toEqual([]);
  });

  it("loses no more volts than the trade allows (core/trade/limits.ts)", () => {
    expect(lossyPlaces(VAN)).toEqual([]);
  });

  it("draws nothing at rest, though 87 of both relays is always fed", () => {
    const rest = stand(VAN, "");
    expect(Math.abs(rest.parts.get("G1")!.amps)).toBeLessThan(0.001);
    for (const point of ["K1.87", "K2.87", "S1.1"])
      expect(rest.points.get(point)).toMatchObject({ state: "powered", alwaysFed: true });
  });
});

describe("two change-over relays (common practice, no source)", () => {
  const MOTOR = ["X3-1", "X3-2"];

  it("rest both ends of the motor on ground, and lift one end to feed", () => {
    expect(states("", MOTOR)).toEqual(["grounded", "grounded"]);
    expect(states(UP, MOTOR)).toEqual(["powered", "grounded"]);
    expect(states(DOWN, MOTOR)).toEqual(["grounded", "powered"]);
  });

  it("stand the motor still between two feeds with both buttons pressed, and sound the buzzer", () => {
    const live = stand(VAN, BOTH);
    expect(states(BOTH, MOTOR)).toEqual(["powered", "powered"]);
    expect(live.parts.get("M1")!.doing).toBe("off");
    expect(["K1", "K2", "H1"].map((id) => live.parts.get(id)!.doing)).toEqual(["pulled-in", "pulled-in", "on"]);
  });

  it("run it up through the break contact of the down relay: burnt, that relay's own direction still works", () => {
    expect(failing(VAN, "K2:stuck-open-30-87a")).toEqual(["gate-up"]);
    expect(failing(VAN, "K1:stuck-open-30-87a")).toEqual(["gate-down", "down-from-top"]);
    expect(failing(VAN, "K1:stuck-open-30-87")).toEqual(["gate-up"]);
  });

  it("run it without a button where one has welded, past its limit switch", () => {
    const welded = stand(VAN, "S1=on,S4=at-end", "K1:welded");
    expect(welded.parts.get("M1")!.doing).toBe("forward");
    expect(verdicts(VAN, "K1:welded")).toMatchObject({ "stops-at-top": "wrong", "cab-switch-off": "wrong" });
  });

  it("pull in over 8 V at the coil with all that is between (relay sheet, mini ISO 12 V: at most 8 V)", () => {
    const live = stand(VAN, UP);
    expect(volts(live, "K1.86") - volts(live, "K1.85")).toBeGreaterThan(11.5);
  });
});

describe("limit switches (common practice, no source)", () => {
  it("stop one direction and leave the other", () => {
    expect(stand(VAN, `S4=at-end,${UP}`).parts.get("M1")!.doing).toBe("off");
    expect(stand(VAN, `S4=at-end,${DOWN}`).parts.get("M1")!.doing).toBe("reverse");
    expect(stand(VAN, `S5=at-end,${DOWN}`).parts.get("M1")!.doing).toBe("off");
  });

  it("have feed before them and the coil's ground behind them while they stand open with the button held", () => {
    expect(states(`S1=on,S4=at-end,S2.up=pressed`, ["S4.1", "S4.2"])).toEqual(["powered", "grounded-through-load"]);
  });

  it("drive into the end where they stick closed", () => {
    expect(failing(VAN, "S4:stuck-closed-1-2")).toEqual(["stops-at-top"]);
    expect(failing(VAN, "S5:stuck-closed-1-2")).toEqual(["stops-at-bottom"]);
  });
});

describe("what lamp, buzzer and gate together tell (common practice, no source)", () => {
  const STUCK = ["gate-up", "gate-down", "down-from-top"];

  it.each([
    ["F2 blown: the gate alone", "F2:blown", STUCK],
    ["motor plug pin out: the gate alone", "X3-1:backed-out", STUCK],
    ["F3 blown: all of it", "F3:blown", [...STUCK, "gate-lamp", "buzzer-up", "buzzer-down"]],
    ["hand control's feed pin: all but the lamp", "X1-1:backed-out", [...STUCK, "buzzer-up", "buzzer-down"]],
    ["top limit open: up and its buzzer", "S4:stuck-open-1-2", ["gate-up", "buzzer-up"]],
    ["up coil open: up, and the buzzer still sounds", "K1:coil-open", ["gate-up"]],
    ["warner's ground: the buzzer alone", "GP6:off", ["buzzer-up", "buzzer-down"]],
    ["warner's output: the buzzer alone", "U1:output-dead-buzzer", ["buzzer-up", "buzzer-down"]],
  ])("%s", (_name, fault, fails) => {
    expect(failing(VAN, fault)).toEqual(fails);
  });

  it("clears hand control, limit and wires where the buzzer sounds and the gate does not go up", () => {
    const seen = [observed("gate-down", "works"), observed("buzzer-up", "works")];
    const ids = living(VAN, observed("gate-up", "dead"), seen).map(({ id }) => id);
    expect(ids.slice(0, 2).toSorted()).toEqual(["K1:stuck-open-30-87", "K2:stuck-open-30-87a"]);
    for (const cleared of ["S4:stuck-open-1-2", "X1-2:backed-out", "W10:open", "F2:blown", "M1:open"])
      expect(ids).not.toContain(cleared);
  });
});

describe("the gate warner", () => {
  it("joins its supply to the buzzer while up or down is fed, and is never undecided", () => {
    for (const [condition, isOn] of [
      ["", false],
      ["S1=on", false],
      [UP, true],
      [DOWN, true],
      [BOTH, true],
    ] as const) {
      const live = stand(VAN, condition);
      expect(live.parts.get("U1")!.closed.size > 0, condition).toBe(isOn);
      expect(live.points.get("X2-5")!.state, condition).not.toBe("undecided");
    }
  });

  it("sleeps with the gate switch off, and nothing leaks from one coil into the other through it", () => {
    expect(stand(VAN, "S2.up=pressed").parts.get("U1")!.state).toBe("asleep");
    expect(volts(stand(VAN, UP), "K2.86")).toBeLessThan(0.1);
  });
});

describe("a jammed gate", () => {
  it("draws over 135 % of F2, which may melt while the button is held", () => {
    const live = stand(VAN, UP, "M1:jammed");
    expect(live.parts.get("M1")!.amps).toBeGreaterThan(1.35 * 30);
    expect(live.happenings).toMatchObject([{ what: "may-melt", part: "F2" }]);
  });
});
