import { describe, expect, it } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import type { Observed } from "../../core/live/judge.ts";
import { living } from "../diagnose/living.ts";
import { failing, lossyPlaces, lost, restless, sample, stand, verdicts, volts } from "./onTheBench.ts";

const VAN = sample("7-charging");
const KEY_ON = "S1=on";
const RUNNING = "S1=on,engine:running";

function observed(id: string, word: Observed) {
  return { check: VAN.checks.find((check) => check.id === id)!, word };
}

/** Whether the charge lamp gives any light. */
function isLit(condition: string, ...faults: readonly string[]): boolean {
  return stand(VAN, condition, ...faults).parts.get("E1")!.doing !== "off";
}

describe("the healthy van", () => {
  it("passes every check", () => {
    expect(failing(VAN)).toEqual([]);
  });

  it("neither chatters nor melts a fuse in any check or scene", () => {
    expect(restless(VAN)).toEqual([]);
  });

  it("loses no more volts than the trade allows (core/trade/limits.ts)", () => {
    expect(lossyPlaces(VAN)).toEqual([]);
  });

  it("draws nothing at rest", () => {
    expect(Math.abs(stand(VAN, "").parts.get("G1")!.amps)).toBeLessThan(0.001);
  });

  it("charges at the battery with 13.5 to 14.5 V (a vehicle maker's regulator description MCH0899FB1231)", () => {
    for (const condition of [RUNNING, "S1=on,S2=on,engine:running"]) {
      const live = stand(VAN, condition);
      expect(lost(live, "G1.+", "G1.-")).toBeGreaterThan(13.5);
      expect(lost(live, "G1.+", "G1.-")).toBeLessThan(14.5);
      expect(live.parts.get("G1")!.amps).toBeLessThan(0);
    }
  });

  it("carries all of the alternator's current home through the engine strap", () => {
    const live = stand(VAN, "S1=on,S2=on,engine:running");
    expect(-live.wires.get("W5")!.amps).toBeCloseTo(live.parts.get("G2")!.amps, 1);
  });
});

// US Army TM 10-3930-671-24, charge lamp and its symptoms. Its alternator's terminal 1, the lamp's, is D+ here; its
// terminal 2, always fed, is B+.
describe("the charge lamp's symptoms (US Army TM 10-3930-671-24)", () => {
  it("is off with the key off, on with the key on, off with the engine running", () => {
    expect(isLit("")).toBe(false);
    expect(stand(VAN, KEY_ON).parts.get("E1")!.doing).toBe("on");
    expect(isLit(RUNNING)).toBe(false);
  });

  it.each([1, 2, 3])("lit with the key off and out with the plug off: bridge diode, positive %i", (diode) => {
    const fault = `G2:shorted-positive-${diode}`;
    expect(isLit("", fault)).toBe(true);
    expect(isLit("apart:X2", fault)).toBe(false);
  });

  it("lit with the key off and still with the plug off: the two leads touch", () => {
    expect(isLit("", "W12:crossed=W2")).toBe(true);
    expect(isLit("apart:X2", "W12:crossed=W2")).toBe(true);
  });

  it.each([
    ["the bridge", "G2:shorted-positive-1"],
    ["leads that touch", "W12:crossed=W2"],
    ["the fuse", "F4:blown"],
    ["the bulb", "E1:burnt-out"],
    ["the bulb's holder, feed", "X1-1:backed-out"],
    ["the bulb's holder, lead", "X1-2:backed-out"],
    ["the lead of terminal 1", "W11:open"],
    ["the lead of terminal 1, at the engine", "W12:open"],
  ])("dark with the key on, engine stopped: %s", (_cause, fault) => {
    expect(verdicts(VAN, fault)["lamp-key-on"]).toBe("dead");
  });

  it("lit with the engine running: the fuse between lamp and key", () => {
    expect(stand(VAN, RUNNING, "F4:blown").parts.get("E1")!.doing).toBe("on");
  });

  it("lit with the engine running and dark with the key on: probing starts at that fuse", () => {
    const order = probeOrder(VAN, observed("lamp-running", "stays-on"), { others: [observed("lamp-key-on", "dead")] });
    expect(order.steps[0]!.point).toMatch(/^F4\./);
  });
});

describe("what else the lamp tells (common practice, no source)", () => {
  it("is lit through the rotor alone: dark with brushes, engine strap or D+ open, and lit with a fault in the bridge's negative side", () => {
    for (const fault of ["G2:field-open", "W5:open", "GP3:off", "GP4:off", "X2-1:backed-out"])
      expect(isLit(KEY_ON, fault), fault).toBe(false);
    expect(isLit(KEY_ON, "G2:shorted-negative-1")).toBe(true);
  });

  it("stays lit at full light when the alternator gives nothing", () => {
    expect(stand(VAN, RUNNING, "G2:no-output").parts.get("E1")!.doing).toBe("on");
    expect(verdicts(VAN, "G2:no-output")).toMatchObject({ charges: "dead", "lamp-running": "wrong" });
  });

  it("stays dark with the alternator link blown: the battery runs down unseen", () => {
    const live = stand(VAN, "S1=on,S2=on,engine:running", "F1:blown");
    expect(live.parts.get("E1")!.doing).toBe("off");
    expect(live.parts.get("G1")!.doing).toBe("supplying");
    expect(volts(live, "G2.B+")).toBeGreaterThan(14);
    expect(volts(live, "G1.+")).toBeLessThan(12.6);
    expect(verdicts(VAN, "F1:blown")["headlamp-running"]).toBe("weak");
  });

  it("has battery volts on the harness half of X2 through lamp and fuse, which a meter reads and a 4 A lamp does not load", () => {
    const point = stand(VAN, "S1=on,apart:X2").points.get("X2-1")!;
    expect(point.state).toBe("powered-through-load");
    expect(point.volts).toBeGreaterThan(12);
    expect(point.sourceOhms).toBeGreaterThan(4);
  });

  it("drops volts across a corroded engine strap only while current flows", () => {
    const fault = "GP3:corroded=0.3";
    expect(Math.abs(volts(stand(VAN, "", fault), "GP4.stud"))).toBeLessThan(0.01);
    expect(volts(stand(VAN, "S1=on,S2=on,engine:running", fault), "GP4.stud")).toBeLessThan(-1);
    expect(stand(VAN, "S1=on,S2=on,engine:running", fault).parts.get("G1")!.doing).toBe("supplying");
  });
});

describe("suspects", () => {
  it("for headlamps that do not brighten with the engine running are the link and the straps", () => {
    const suspects = living(VAN, observed("headlamp-running", "weak"), [
      observed("charges", "works"),
      observed("left-headlamp", "works"),
    ]);
    const ids = suspects.map(({ id }) => id);
    expect(ids[0]).toBe("F1:blown");
    expect(ids).toEqual(expect.arrayContaining(["GP2:off", "GP3:off", "GP4:off", "W5:open", "W1:open"]));
    expect(ids).not.toContain("E3:burnt-out");
  });
});
