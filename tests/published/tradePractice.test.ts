import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { parseCondition } from "../../core/live/condition.ts";
import { parseFault } from "../../core/live/fault.ts";
import { burns, lampOn } from "../../core/live/instruments/testLamp.ts";
import type { Observed } from "../../core/live/judge.ts";
import { liveOf } from "../../core/live/live.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { living } from "../diagnose/living.ts";

/**
 * Facts of the trade on the roof vents of sample 1, leads to battery -. Common practice, no source, all of them.
 */
const vents = value(readCircuit(readFileSync(new URL("../../samples/1-roof-vents.circuit.json", import.meta.url))));
const BATTERY = 12.6;

function value<T>(outcome: { ok: true; value: T } | { ok: false; refusal: object }): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

const condition = (text: string): Condition => value(parseCondition(vents, text));
const live = (text: string, ...faults: string[]) =>
  liveOf(
    vents,
    condition(text),
    faults.map((fault) => value(parseFault(vents, fault))),
  );
const volts = (text: string, point: string, ...faults: string[]): number =>
  live(text, ...faults).points.get(point)!.volts!;

/** Brightness of a 4 A lamp from a point to a post. */
function lamp(text: string, point: string, to: "battery +" | "battery -") {
  const rig = new Rig(vents, [], [lampOn("heavy", point, to, 12)]);
  reach(rig, condition(text));
  return burns(rig);
}

describe("an own switch at rest, key on", () => {
  it("reads feed on exactly one pin and ground on all others, the two motor leads among them", () => {
    const states = ["1", "2", "4", "5", "6"].map((pin) => live("S1=on").points.get(`X5-${pin}`)!.state);
    expect(states).toEqual(["grounded", "grounded", "grounded", "grounded", "powered"]);
  });
});

describe("an own switch thrown, plug home", () => {
  it("puts one motor lead near battery and keeps the other under 0.5 V, the other way round when closing", () => {
    for (const [position, fed, back] of [
      ["open", "X5-4", "X5-5"],
      ["close", "X5-5", "X5-4"],
    ]) {
      expect(volts(`S1=on,S5=${position}`, fed!)).toBeGreaterThan(BATTERY - 0.8);
      expect(volts(`S1=on,S5=${position}`, back!)).toBeLessThan(0.5);
      expect(volts(`S1=on,S5=${position}`, back!)).toBeGreaterThan(0.1);
    }
  });

  it("sags the fed lead and lifts the other alike both ways when the motor is seized: current flows", () => {
    const open = [volts("S1=on,S5=open", "X5-4", "M3:seized"), volts("S1=on,S5=open", "X5-5", "M3:seized")];
    const close = [volts("S1=on,S5=close", "X5-5", "M3:seized"), volts("S1=on,S5=close", "X5-4", "M3:seized")];
    for (const [fed, back] of [open, close]) {
      expect(fed).toBeGreaterThan(9);
      expect(fed).toBeLessThan(volts("S1=on,S5=open", "X5-4") - 0.2);
      expect(back).toBeGreaterThan(0.7);
      expect(back).toBeLessThan(2);
    }
    expect(open[0]! - close[0]!).toBeCloseTo(0, 1);
    expect(open[1]! - close[1]!).toBeCloseTo(0, 1);
  });

  it.each(["M3:open", "W18:open"])("shows no sag and 0.0 on the other lead with %s", (fault) => {
    expect(volts("S1=on,S5=open", "X5-4", fault)).toBeCloseTo(volts("S1=on,S5=open", "X5-6", fault), 2);
    expect(volts("S1=on,S5=open", "X5-4", fault)).toBeCloseTo(BATTERY, 1);
    expect(volts("S1=on,S5=open", "X5-5", fault)).toBeCloseTo(0, 2);
  });

  it("leaves the fed lead where it was with the feed contact burnt open", () => {
    const at = (position: string): number => volts(`S1=on,S5=${position}`, "X5-4", "S5:stuck-open-4-6");
    expect(at("open")).toBeCloseTo(0, 2);
    expect(at("open")).toBeCloseTo(at("rest"), 2);
  });

  it("puts both leads at battery with the rest contact of the other lead burnt open", () => {
    for (const pin of ["X5-4", "X5-5"])
      expect(volts("S1=on,S5=open", pin, "S5:stuck-open-5-2")).toBeCloseTo(BATTERY, 1);
  });
});

describe("an own switch with its plug off", () => {
  it("leaves the motor leads floating, dark to both posts", () => {
    for (const pin of ["X5-4", "X5-5"]) {
      expect(live("S1=on,apart:X5").points.get(pin)).toMatchObject({
        state: "floating",
        volts: null,
        sourceOhms: null,
      });
      expect([lamp("S1=on,apart:X5", pin, "battery +"), lamp("S1=on,apart:X5", pin, "battery -")]).toEqual([
        "dark",
        "dark",
      ]);
    }
  });

  it.each(["S1=on", "S1=on,apart:X5"])(
    "lights a lamp from battery + on 1 and 2 and from 6 to battery -, %s",
    (text) => {
      expect(["X5-1", "X5-2"].map((pin) => lamp(text, pin, "battery +"))).toEqual(["bright", "bright"]);
      expect(lamp(text, "X5-6", "battery -")).toBe("bright");
      expect(lamp(text, "X5-6", "battery +")).toBe("dark");
    },
  );
});

describe("feeds", () => {
  it("are dead behind the relay with the key off, and live at the always-fed fuse", () => {
    const off = live("");
    expect(["F3.1", "F4.1"].map((point) => off.points.get(point)!.state)).not.toContain("powered");
    expect(off.points.get("F5.2")).toMatchObject({ state: "powered", alwaysFed: true });
    expect(["F3.1", "F4.1"].map((point) => live("S1=on").points.get(point)!.state)).toEqual(["powered", "powered"]);
  });

  it("with the lock-out on: own switches dead, master works", () => {
    const doing = (text: string) => live(text).parts.get("M3")!.doing;
    expect(doing("S1=on,S2.lock-out=on,S5=open")).toBe("off");
    expect(doing("S1=on,S2.lock-out=on,S2.middle=open")).toBe("forward");
  });
});

describe("what works clears what it shares", () => {
  const observation = (id: string, word: Observed) => ({ check: vents.checks.find((check) => check.id === id)!, word });
  const suspects = (complaint: string, others: Record<string, Observed>) =>
    living(
      vents as Circuit,
      observation(complaint, "dead"),
      Object.entries(others).map(([id, word]) => observation(id, word)),
    ).map(({ faults }) => faults[0]!);

  it("puts lock-out and relay first where several loads that share them are dead and one fed apart works", () => {
    const dead = {
      "front-left-open-own": "dead",
      "front-right-open-own": "dead",
      "rear-open-own": "dead",
      "rain-closes-rear": "works",
    } as const;
    const targets = suspects("middle-open-own", dead).map((suspect) => suspect.target);
    for (const own of ["M3", "X5-6", "W16", "F5"]) expect(targets).not.toContain(own);
    // An own switch shorted inside melts F4 and so stays a suspect, but behind all that the four share.
    const firstOf = (id: string): number => targets.indexOf(id);
    for (const shared of ["K1", "S2"]) {
      expect(firstOf(shared)).toBeGreaterThanOrEqual(0);
      for (const own of ["S3", "S4", "S5", "S6"]) expect(firstOf(shared)).toBeLessThan(firstOf(own));
    }
  });

  it("clears what the vents share where one is dead at both its switches and the others work", () => {
    const seen = {
      "middle-open-master": "dead",
      "middle-close-own": "dead",
      "middle-close-master": "dead",
      "rear-open-own": "works",
      "front-left-open-master": "works",
    } as const;
    const targets = suspects("middle-open-own", seen).map((suspect) => suspect.target);
    expect(targets).toContain("M3");
    for (const shared of ["G1", "F1", "F2", "K1", "F3", "F4", "S1", "S2", "W6", "W20", "GP2", "W13"])
      expect(targets).not.toContain(shared);
  });

  it("clears motor, feed and ground and leaves one contact where the vent opens but does not close", () => {
    const seen = { "middle-open-own": "works", "middle-open-master": "works", "middle-close-master": "works" } as const;
    const left = suspects("middle-close-own", seen);
    expect(new Set(left.map((suspect) => suspect.target))).toEqual(new Set(["S5"]));
    const contacts = left.filter((suspect) => !suspect.mode.startsWith("left-in"));
    expect(contacts.length).toBeGreaterThan(0);
    for (const suspect of contacts) expect(suspect.mode).toMatch(/5-6$/);
  });
});
