import { describe, expect, it } from "vitest";
import type { Observed } from "../../core/live/judge.ts";
import { living } from "../diagnose/living.ts";
import { failing, lossyPlaces, restless, sample, stand, volts } from "./onTheBench.ts";

const CAR = sample("8-wiper");

function observed(id: string, word: Observed) {
  return { check: CAR.checks.find((check) => check.id === id)!, word };
}

function motor(condition: string, ...faults: readonly string[]) {
  return stand(CAR, condition, ...faults).parts.get("M1")!;
}

describe("the healthy hatchback", () => {
  it("passes every check", () => {
    expect(failing(CAR)).toEqual([]);
  });

  it("neither chatters nor melts a fuse in any check or scene", () => {
    expect(restless(CAR)).toEqual([]);
  });

  it("loses no more volts than the trade allows (core/trade/limits.ts)", () => {
    expect(lossyPlaces(CAR)).toEqual([]);
  });

  it("takes about 5 A while it wipes (a wiper maker's answers on circuit protection)", () => {
    for (const speed of ["low", "high"]) {
      const { amps } = motor(`S1=on,S2.wipe=${speed}`);
      expect(amps, speed).toBeGreaterThan(3);
      expect(amps, speed).toBeLessThan(6);
    }
  });
});

describe("what the motor's plug reads (common practice, no source)", () => {
  it.each([
    ["off, parked", "S1=on", ["powered", "grounded", "grounded-through-load", "grounded"]],
    ["off, in mid sweep", "S1=on,M1=turning", ["powered", "powered", "grounded-through-load", "powered"]],
    ["low, parked", "S1=on,S2.wipe=low", ["powered", "powered", "grounded-through-load", "grounded"]],
    ["low, in mid sweep", "S1=on,S2.wipe=low,M1=turning", ["powered", "powered", "grounded-through-load", "powered"]],
    ["high, parked", "S1=on,S2.wipe=high", ["powered", "grounded-through-load", "powered", "grounded"]],
  ])("%s: 53a, 53, 53b, 31b", (_title, condition, states) => {
    const live = stand(CAR, condition);
    expect(["X2-1", "X2-2", "X2-3", "X2-4"].map((pin) => live.points.get(pin)!.state)).toEqual(states);
  });

  it("has feed at 53a with the key on alone, and nothing anywhere with the key off", () => {
    expect(volts(stand(CAR, "S1=on"), "X2-1")).toBeGreaterThan(12.4);
    expect(stand(CAR, "M1=turning").points.get("X2-1")!.state).toBe("grounded-through-load");
  });
});

describe("parking (common practice, no source)", () => {
  it("runs home over 53a, 31b and the stalk, stops when parked, and not at all with the key off", () => {
    const home = stand(CAR, "S1=on,M1=turning");
    expect(home.parts.get("M1")!.doing).toBe("forward");
    for (const wire of ["W14", "W9", "W7", "W12"])
      expect(Math.abs(home.wires.get(wire)!.amps), wire).toBeGreaterThan(3);
    expect(motor("S1=on").doing).toBe("off");
    expect(motor("M1=turning").doing).toBe("off");
  });

  it("joins both ends of the low-speed brush to ground when parked, which brakes it", () => {
    const parked = stand(CAR, "S1=on");
    expect(parked.points.get("M1.53")!.state).toBe("grounded");
    expect(parked.points.get("M1.31")!.state).toBe("grounded");
    expect(stand(CAR, "S1=on", "M1:stuck-open-31b-31").points.get("M1.53")!.state).toBe("grounded-through-load");
  });

  it.each([
    ["motor's 53a has no feed", "X2-1:backed-out"],
    ["park switch does not change over", "M1:stuck-open-31b-53a"],
    ["31b broken", "W9:open"],
    ["stalk does not join 53 to 31b", "S2:stuck-open-53-31b"],
  ])("is all that fails where %s: the arms stay where they are switched off", (_name, fault) => {
    expect(failing(CAR, fault)).toEqual(["run-home"]);
  });

  it("shorts feed to ground and melts F2 where the park switch has burnt to both its contacts", () => {
    const live = stand(CAR, "S1=on", "M1:stuck-closed-31b-53a");
    expect(live.before!.points.get("X2-4")!.state).toBe("clash");
    expect(live.parts.get("F2")!.state).toBe("melted");
  });
});

describe("one speed dead, the other not (common practice, no source)", () => {
  it.each([
    ["low brush", "M1:open-low", ["wipe-low", "run-home"]],
    ["53 broken", "W7:open", ["wipe-low", "run-home"]],
    ["stalk contact of low", "S2:stuck-open-53-53a", ["wipe-low"]],
    ["high brush", "M1:open-high", ["wipe-high"]],
    ["53b broken", "W13:open", ["wipe-high"]],
    ["stalk's feed", "X1-1:backed-out", ["wipe-low", "wipe-high", "wash"]],
    ["fuse", "F2:blown", ["wipe-low", "wipe-high", "run-home", "wash"]],
    ["motor's ground", "X2-5:backed-out", ["wipe-low", "wipe-high", "run-home"]],
    ["common ground", "GP2:off", ["wipe-low", "wipe-high", "run-home", "wash"]],
    ["pump", "M2:open", ["wash"]],
  ])("parts at the right place: %s", (_name, fault, fails) => {
    expect(failing(CAR, fault)).toEqual(fails);
  });

  it("tells the stalk from the brush by whether the arms still run home", () => {
    const seen = [observed("wipe-high", "works"), observed("run-home", "works")];
    const ids = living(CAR, observed("wipe-low", "dead"), seen).map(({ id }) => id);
    expect(ids[0]).toBe("S2:stuck-open-53-53a");
    expect(ids).not.toContain("M1:open-low");
  });
});

describe("a seized motor", () => {
  it("melts F2, which takes the washer with it (common practice, no source)", () => {
    const live = stand(CAR, "S1=on,S2.wipe=low", "M1:seized");
    expect(live.happenings.map(({ what }) => what)).toEqual(["melted"]);
    expect(live.parts.get("F2")!.state).toBe("melted");
    expect(live.before!.parts.get("M1")!.amps).toBeGreaterThan(20);
  });
});
