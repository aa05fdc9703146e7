import { describe, expect, it } from "vitest";
import type { Condition } from "../../core/circuit/circuit.ts";
import { burns, lampOn } from "../../core/live/instruments/testLamp.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { failing, lossyPlaces, restless, sample, stand, volts } from "./onTheBench.ts";

const GROUND = sample("10-power-and-ground");
const UNLOADED = sample("11-unloaded-tests");
const MOTOR = sample("12-reversing-motor");
const LAMPS = sample("13-unlike-lamps");
const BOARDS = [GROUND, UNLOADED, MOTOR, LAMPS].map((circuit) => [circuit.title, circuit] as const);

describe.each(BOARDS)("%s", (_, board) => {
  it("works, and neither chatters nor melts a fuse in any check or scene", () => {
    expect(failing(board)).toEqual([]);
    expect(restless(board)).toEqual([]);
  });

  it("loses no more volts than the trade allows, but where a lesson is made of it", () => {
    expect(lossyPlaces(board)).toEqual([]);
  });

  it("tells something in every scene, and leads from one to the next", () => {
    for (const { label, caption = "" } of board.scenes) expect(caption.length, label).toBeGreaterThan(60);
    expect(board.scenes.length).toBeGreaterThanOrEqual(4);
  });
});

// What the captions say, held against the solver.
describe("power, ground and floating", () => {
  it("reads 0 V beside a lamp at rest and 0 V on an open wire, and they are not the same", () => {
    const rest = stand(GROUND, "");
    expect(rest.wires.get("W5")!.state[0]).toBe("grounded-through-load");
    expect(rest.wires.get("W9")!.state[0]).toBe("powered-through-load");
    expect(volts(rest, "E2.2")).toBeGreaterThan(12.4);
    expect(stand(GROUND, "apart:X1").wires.get("W5")).toMatchObject({
      state: ["floating", "floating"],
      volts: [null, null],
    });
  });
});

describe("why unloaded tests mislead", () => {
  const lampAtPump = ({ set = {}, apart = [], out = [] }: Condition): string => {
    const rig = new Rig(UNLOADED, [], [lampOn("heavy", "X1-1", "battery -", 12)]);
    reach(rig, { set, apart, out });
    return burns(rig);
  };

  it("shows battery volts at the plug without its fuse, which a 4 A lamp does not believe", () => {
    const without = { set: { S1: "on" }, apart: ["X1"], out: ["F1"] };
    expect(volts(stand(UNLOADED, "S1=on,apart:X1,out:F1"), "X1-1")).toBeGreaterThan(12.5);
    expect(lampAtPump(without)).toBe("dark");
    expect(lampAtPump({ ...without, out: [] })).toBe("bright");
  });

  it("lights the tell-tale through the pump while it stands, and not while it runs", () => {
    const [off, on] = [stand(UNLOADED, ""), stand(UNLOADED, "S1=on")];
    expect([off, on].map((live) => live.parts.get("E1")!.doing)).toEqual(["on", "off"]);
    expect([off, on].map((live) => live.parts.get("M1")!.doing)).toEqual(["off", "forward"]);
  });
});

describe("a reversing motor and its switch", () => {
  it("has the same volts on both sides when it stands: 0 at rest, the battery's without its ground", () => {
    const both = (condition: string) =>
      ["M1.1", "M1.2"].map((point) => Math.round(volts(stand(MOTOR, condition), point)));
    expect(both("")).toEqual([0, 0]);
    expect(both("S1=up")).toEqual([12, 0]);
    expect(both("S1=down")).toEqual([0, 12]);
    expect(both("S1=up,apart:X7")).toEqual([13, 13]);
  });
});

describe("two unlike lamps in a row", () => {
  it("have one current; the small one takes nearly all of the volts and looks whole, the large one looks dead", () => {
    const on = stand(LAMPS, "S1=on");
    const [large, small] = ["E1", "E2"].map((lamp) => on.parts.get(lamp)!);
    expect(large!.amps).toBeCloseTo(small!.amps, 6);
    expect([large!.doing, small!.doing]).toEqual(["off", "on"]);
    expect(volts(on, "SP1.2") - volts(on, "SP2.3")).toBeLessThan(1);
    const bridged = stand(LAMPS, "S1=on,S2=closed").parts.get("E2")!;
    expect(bridged.amps / small!.amps).toBeLessThan(1.06);
  });
});
