import { describe, expect, it } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import type { Observed } from "../../core/live/judge.ts";
import { liveOf } from "../../core/live/live.ts";
import { living } from "../diagnose/living.ts";
import { failing, lossyPlaces, restless, sample, stand, volts } from "./onTheBench.ts";

const HATCHBACK = sample("4-horn");
const PRESSED = "S1=pressed";

function observed(id: string, word: Observed) {
  return { check: HATCHBACK.checks.find((check) => check.id === id)!, word };
}

describe("the healthy hatchback", () => {
  it("passes every check", () => {
    expect(failing(HATCHBACK)).toEqual([]);
  });

  it("neither chatters nor melts a fuse in any check or scene", () => {
    expect(restless(HATCHBACK)).toEqual([]);
  });

  it("loses no more volts than the trade allows (core/trade/limits.ts)", () => {
    expect(lossyPlaces(HATCHBACK)).toEqual([]);
  });

  it("draws nothing at rest", () => {
    expect(Math.abs(stand(HATCHBACK, "").parts.get("G1")!.amps)).toBeLessThan(0.001);
  });
});

describe("a coil switched on its ground side (common practice, no source)", () => {
  it("shows battery volts at 85 at rest, through the coil only, and next to none when pressed", () => {
    const rest = stand(HATCHBACK, "");
    expect(rest.points.get("K1.85")!.state).toBe("powered-through-load");
    expect(volts(rest, "K1.85")).toBeGreaterThan(12.4);
    const pressed = stand(HATCHBACK, PRESSED);
    expect(pressed.points.get("K1.85")!.state).toBe("grounded");
    expect(volts(pressed, "K1.85")).toBeLessThan(0.1);
  });

  it("is always fed at 30 and 86, whatever stands where", () => {
    for (const pin of ["K1.30", "K1.86"])
      expect(stand(HATCHBACK, "").points.get(pin)).toMatchObject({ state: "powered", alwaysFed: true });
  });

  it("has four telling sockets with the relay out and the button pressed", () => {
    const live = stand(HATCHBACK, `${PRESSED},out:K1`);
    const states = ["K1.30", "K1.86", "K1.85", "K1.87"].map((pin) => live.points.get(pin)!.state);
    expect(states).toEqual(["powered", "powered", "grounded", "grounded-through-load"]);
  });

  it("sounds without end when the wire to the button touches ground, and blows no fuse", () => {
    expect(failing(HATCHBACK, "W10:short-to-ground")).toEqual(["horns-silent"]);
    expect(stand(HATCHBACK, "", "W10:short-to-ground").happenings).toEqual([]);
  });

  it("blows F2 when the wire to the horns touches ground and the button is pressed", () => {
    const melted = (condition: string) =>
      stand(HATCHBACK, condition, "W14:short-to-ground").happenings.filter(({ what }) => what === "melted");
    expect(melted(PRESSED)).toMatchObject([{ part: "F2" }]);
    expect(melted("")).toEqual([]);
  });

  it("sounds when place 1 of the unplugged clock spring is grounded by a jumper", () => {
    const jumper = { red: "X20-1a", black: "battery -", law: { law: "resistor", ohms: 0.05 }, isMeter: false } as const;
    const apart = { set: { S1: "pressed" }, apart: ["X20"] };
    expect(liveOf(HATCHBACK, apart).parts.get("H1")!.doing).toBe("off");
    const live = liveOf(HATCHBACK, apart, [], [jumper]);
    expect([live.parts.get("H1")!.doing, live.parts.get("H2")!.doing]).toEqual(["on", "on"]);
  });
});

describe("which fault gives which signs", () => {
  it.each([
    ["F2:blown", ["low-horn", "high-horn", "relay-clicks", "courtesy-lamp"]],
    ["X20-1:backed-out", ["low-horn", "high-horn", "relay-clicks"]],
    ["GP3:off", ["low-horn", "high-horn", "relay-clicks"]],
    ["K1:stuck-open-30-87", ["low-horn", "high-horn"]],
    ["X10-1:backed-out", ["low-horn", "high-horn"]],
    ["GP2:off", ["low-horn", "high-horn"]],
    ["X12-1:backed-out", ["high-horn"]],
    ["H1:open", ["low-horn"]],
    ["K1:welded", ["horns-silent"]],
    ["GP4:off", ["courtesy-lamp"]],
  ])("%s fails %j", (fault, fails) => {
    expect(failing(HATCHBACK, fault)).toEqual(fails);
  });

  it("reads battery volts on the ground side of both horns when their ground is off", () => {
    const live = stand(HATCHBACK, PRESSED, "GP2:off");
    expect(live.points.get("X11-2")!.state).toBe("powered-through-load");
    expect(volts(live, "X11-2")).toBeGreaterThan(12);
  });
});

describe("the order of probing", () => {
  it("leaves only the low horn's own branch when the high horn works", () => {
    const suspects = living(HATCHBACK, observed("low-horn", "dead"), [observed("high-horn", "works")]);
    const targets = new Set(suspects.map(({ faults }) => faults[0]!.target));
    expect([...targets].sort()).toEqual(["H1", "SP2", "W16", "W18", "X11-1", "X11-2"]);
  });

  it("never sends a probe behind the airbag", () => {
    const { steps } = probeOrder(HATCHBACK, observed("low-horn", "dead"), {
      others: [observed("relay-clicks", "dead")],
    });
    expect(steps.length).toBeGreaterThan(3);
    expect(
      steps.map(({ point }) => point).filter((point) => ["X20-1b", "X20-2b", "S1.1", "S1.2"].includes(point)),
    ).toEqual([]);
  });
});
