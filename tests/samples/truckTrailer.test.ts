import { describe, expect, it } from "vitest";
import type { Observed } from "../../core/live/judge.ts";
import { living } from "../diagnose/living.ts";
import { failing, lossyPlaces, lost, restless, sample, stand, verdicts, volts } from "./onTheBench.ts";

const TRUCK = sample("6-truck-trailer");
const LEFT = "S1=on,S2=left";
const ALL = "S1=on,S2=left,S4=pressure,S5=on,S6=in-reverse";
const TRAILER_LAMPS = ["E11", "E12", "E13", "E14", "E15", "E16", "E17"];

function observed(id: string, word: Observed) {
  return { check: TRUCK.checks.find((check) => check.id === id)!, word };
}

function doing(condition: string, ids: readonly string[], ...faults: readonly string[]) {
  const live = stand(TRUCK, condition, ...faults);
  return ids.map((id) => live.parts.get(id)!.doing);
}

describe("the healthy truck and trailer", () => {
  it("pass every check", () => {
    expect(failing(TRUCK)).toEqual([]);
  });

  it("neither chatter nor melt a fuse in any check or scene", () => {
    expect(restless(TRUCK)).toEqual([]);
  });

  it("lose no more volts than the trade allows (core/trade/limits.ts)", () => {
    expect(lossyPlaces(TRUCK)).toEqual([]);
  });

  it("feed every trailer lamp with at most 0.5 V lost (common practice, no source), even with all of them on", () => {
    const live = stand(TRUCK, "S3=on,S1=on,S4=pressure,S5=on,S6=in-reverse");
    for (const lamp of TRAILER_LAMPS) expect(lost(live, "G2.+", `${lamp}.1`), lamp).toBeLessThan(0.5);
  });

  it("draw no more at rest than the hand lamp takes, and from the lower battery alone", () => {
    const live = stand(TRUCK, "");
    expect(live.parts.get("G1")!.amps).toBeCloseTo(live.parts.get("E20")!.amps, 3);
    expect(Math.abs(live.parts.get("G2")!.amps)).toBeLessThan(0.001);
  });
});

describe("two batteries in series", () => {
  it("have 25.2 V above and 12.6 V between (US Army TM 5-3805-262-20: 12.6 V or more is a full battery)", () => {
    const live = stand(TRUCK, "apart:X9");
    expect(volts(live, "G2.+")).toBeCloseTo(25.2, 1);
    expect(volts(live, "G1.+")).toBeCloseTo(12.6, 1);
  });

  it("make the post between them a feed: no clash with the 24 V side, and the 12 V lamp at its rated volts", () => {
    const live = stand(TRUCK, LEFT);
    for (const point of ["G1.+", "G2.-", "X9-1a", "G2.+"]) expect(live.points.get(point)!.state, point).toBe("powered");
    expect(lost(live, "E20.1", "E20.2")).toBeGreaterThan(11.9);
    expect(lost(live, "E20.1", "E20.2")).toBeLessThan(12.6);
  });

  it("tell a poor lower battery from a poor upper one: only the lower one takes the 12 V lamp with it", () => {
    const poor = stand(TRUCK, "S5=on", "G1:ohms=5");
    const healthy = stand(TRUCK, "S5=on");
    expect(volts(poor, "X9-1a")).toBeLessThan(volts(healthy, "X9-1a") - 4);
    expect(verdicts(TRUCK, "G1:ohms=5")["hand-lamp"]).not.toBe("works");
    expect(verdicts(TRUCK, "G2:ohms=5")["hand-lamp"]).toBe("works");
  });
});

// US Army TM 9-2320-273-20, between paragraphs 2-46 and 2-47: coils in the turn circuit, contacts pass 24 V from a
// breaker of their own to the trailer's receptacle, left and right.
describe("turn signals with trailer relays (US Army TM 9-2320-273-20)", () => {
  it("left: the left relay alone, and 24 V at the left pin of the socket only", () => {
    const live = stand(TRUCK, LEFT);
    expect(doing(LEFT, ["K2", "K4"])).toEqual(["pulled-in", "released"]);
    expect(volts(live, "X1-3a")).toBeGreaterThan(24);
    expect(live.points.get("X1-5a")!.state).toBe("grounded-through-load");
  });

  it("hazard: both relays and every lamp of the turn system", () => {
    expect(doing("S3=on", ["K2", "K4"])).toEqual(["pulled-in", "pulled-in"]);
    expect(doing("S3=on", ["E1", "E2", "E3", "E4", "E12", "E15"])).toEqual(Array(6).fill("on"));
  });

  it("trailer's fuse out: the truck flashes, the trailer is dead", () => {
    expect(failing(TRUCK, "F8:blown")).toEqual([
      "left-trailer",
      "right-trailer",
      "hazard-left-trailer",
      "hazard-right-trailer",
      "stop-trailer-left",
      "stop-trailer-right",
    ]);
  });

  it("turn fuse out: truck and trailer are dead", () => {
    const dead = [
      "flasher-left",
      "flasher-right",
      "left-front",
      "left-rear",
      "left-trailer",
      "right-front",
      "right-rear",
      "right-trailer",
    ];
    expect(failing(TRUCK, "F2:blown")).toEqual(dead);
  });
});

describe("the flasher (common practice, no source)", () => {
  it("notices a truck lamp that is out, and not one of the trailer", () => {
    expect(failing(TRUCK, "E2:burnt-out")).toEqual(["flasher-left", "left-rear"]);
    expect(failing(TRUCK, "E12:burnt-out")).toEqual(["left-trailer", "hazard-left-trailer"]);
  });

  it("flashes the truck alike with the trailer unplugged", () => {
    const plugged = stand(TRUCK, LEFT).parts.get("K1")!;
    const apart = stand(TRUCK, `${LEFT},apart:X1`).parts.get("K1")!;
    expect(apart.doing).toBe("flashing");
    expect(apart.amps).toBeCloseTo(plugged.amps, 1);
  });
});

describe("the trailer's one ground pin (common practice, no source)", () => {
  it("carries all that the trailer's lamps take", () => {
    const live = stand(TRUCK, ALL);
    const lamps = TRAILER_LAMPS.reduce((sum, lamp) => sum + live.parts.get(lamp)!.amps, 0);
    expect(lamps).toBeGreaterThan(3.5);
    expect(Math.abs(live.wires.get("W97")!.amps)).toBeCloseTo(lamps, 1);
  });

  it("open, sends the turn lamp's current home backwards through lamps of trailer and truck", () => {
    const live = stand(TRUCK, LEFT, "X1-1:backed-out");
    expect(live.points.get("GP10.stud")!.state).toBe("between");
    expect(volts(live, "GP10.stud")).toBeGreaterThan(5);
    expect(live.parts.get("E12")!.doing).toBe("dim");
    for (const lamp of ["E11", "E16", "E17"]) expect(live.parts.get(lamp)!.amps, lamp).toBeLessThan(-0.05);
    for (const lamp of ["E7", "E8", "E9"]) expect(live.parts.get(lamp)!.amps, lamp).toBeGreaterThan(0.05);
  });

  it("open, leaves every trailer lamp weak or dead and no truck lamp", () => {
    const fails = failing(TRUCK, "X1-1:backed-out");
    expect(fails).toEqual(
      expect.arrayContaining([
        "left-trailer",
        "right-trailer",
        "stop-trailer-left",
        "tail-trailer-left",
        "reversing-trailer",
      ]),
    );
    for (const truck of ["left-rear", "stop-left", "tail-left", "reversing", "flasher-left"])
      expect(fails).not.toContain(truck);
  });

  it("is told from a bad ground of one cluster by the other cluster", () => {
    const fails = failing(TRUCK, "GP11:off");
    expect(fails).toEqual(expect.arrayContaining(["left-trailer", "stop-trailer-left", "tail-trailer-left"]));
    for (const right of ["right-trailer", "stop-trailer-right", "tail-trailer-right", "reversing-trailer"])
      expect(fails).not.toContain(right);
  });
});

describe("suspects", () => {
  it("for one dark trailer lamp are that lamp's own, once the relay's coil, fuse and ground are cleared by others", () => {
    const seen = [
      observed("left-rear", "works"),
      observed("stop-trailer-left", "works"),
      observed("tail-trailer-left", "works"),
    ];
    const ids = living(TRUCK, observed("left-trailer", "dead"), seen).map(({ id }) => id);
    expect(ids[0]).toBe("E12:burnt-out");
    expect(ids).toEqual(
      expect.arrayContaining(["K2:stuck-open-30-87", "X1-3:backed-out", "X12-2:backed-out", "W99:open"]),
    );
    for (const cleared of ["F8:blown", "F2:blown", "GP11:off", "X1-1:backed-out"]) expect(ids).not.toContain(cleared);
  });
});
