import { describe, expect, it } from "vitest";
import { liveOf } from "../../core/live/live.ts";
import { whyOf } from "../../core/live/why.ts";
import { flowAlong, whyBesides, whyLines, whyPath } from "../../core/live/whyWords.ts";
import { sample } from "../samples/onTheBench.ts";
import { ROW } from "./vehicle.ts";

const on = { set: { S1: "on" } };

describe("why a point is as it is", () => {
  it("names the parts on the way from the feed, in order", () => {
    const why = whyOf(ROW, "M1.1", on);
    expect(why.state).toBe("powered");
    expect(why.feed?.map(({ part }) => part)).toEqual(["G1", "F1", "S1"]);
    expect(why.back).toBeNull();
    expect(why.changes).toEqual([{ control: "S1", position: "off", state: "grounded-through-load" }]);
  });

  it("names the way to ground", () => {
    expect(whyOf(ROW, "M1.2", on).back?.map(({ part }) => part)).toEqual(["GP1", "GP2"]);
  });

  it("says where a floating point stops, and what lies beyond", () => {
    const why = whyOf(ROW, "S1.2", {}, [{ target: "W3", mode: "open" }]);
    expect(why).toMatchObject({ state: "floating", volts: null, feed: null, back: null });
    expect(why.stops.map(({ part, beyond }) => [part, beyond])).toEqual([
      ["S1", "powered"],
      ["W3", "grounded-through-load"],
    ]);
  });

  it("takes the way to ground round what is firmly fed", () => {
    const why = whyOf(sample("2-exterior-lights"), "SP7.2", { set: { S3: "pressed" }, apart: ["X9"] });
    expect(why.state).toBe("between");
    expect(why.back?.map(({ part }) => part)).not.toContain("S3");
    expect(why.back?.map(({ part }) => part)).not.toContain("F9");
  });

  it("says what the coil of a released relay lacks", () => {
    const because = (name: string) => whyOf(sample(name), "K1.87", {}).stops.find(({ part }) => part === "K1")?.because;
    expect(because("4-horn")).toBe("released: its coil has no return");
    expect(because("1-roof-vents")).toBe("released: its coil has no feed");
  });

  it("says of a wire its own current and which way it goes, not what its end takes in all", () => {
    const vents = sample("1-roof-vents");
    const condition = { set: { S1: "on", S3: "open", S5: "open" } };
    const live = liveOf(vents, condition);
    const feed = vents.wires.find(({ id }) => id === "W6")!;
    const leg = vents.wires.find(({ id }) => id === "W13")!;
    const amps = live.wires.get("W13")!.amps;
    expect(live.wires.get("W6")!.amps).toBeCloseTo(amps + live.wires.get("W23")!.amps, 6);
    expect(amps).toBeGreaterThan(2);
    expect(flowAlong(leg, amps)).toBe(`${amps.toFixed(2)} A flow along it from SP1.3 to X5-6.`);
    expect(flowAlong(leg, -amps)).toBe(`${amps.toFixed(2)} A flow along it from X5-6 to SP1.3.`);
    expect(flowAlong(feed, 0.001)).toBe("");
    const [first] = whyBesides(vents, whyOf(vents, leg.from, condition), flowAlong(leg, amps));
    expect(first).toBe(flowAlong(leg, amps));
  });

  it("calls a control as it is labelled, and a part once", () => {
    const vents = sample("1-roof-vents");
    const why = whyOf(vents, "S2.C1", on);
    expect(whyPath(vents, why).join(" ")).toContain("S2 (C1-31, Middle rest)");
    expect(whyBesides(vents, why).join(" ")).toContain("with S2 Middle open.");
  });

  it("puts it in sentences that end", () => {
    for (const point of ["M1.1", "M1.2", "S1.2"]) {
      for (const line of whyLines(ROW, whyOf(ROW, point, on))) expect(line).toMatch(/^[A-Z0-9].*\.$/);
    }
  });
});
