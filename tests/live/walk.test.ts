import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { pointsOf } from "../../core/circuit/points.ts";
import { liveOf } from "../../core/live/live.ts";
import { stepsFrom } from "../../core/live/walk.ts";
import { G1, makeSwitch, ROW, vehicle } from "./vehicle.ts";

const VENTS: Circuit = JSON.parse(
  readFileSync(new URL("../../samples/1-roof-vents.circuit.json", import.meta.url), "utf8"),
);
const RUNNING = liveOf(ROW, { set: { S1: "on" } });
const AT_REST = liveOf(ROW);

/** The points passed by always taking the first step on, from a point to where it ends. */
function walkOn(circuit: Circuit, live: ReturnType<typeof liveOf>, from: string, way: "onward" | "back"): string[] {
  const passed = [from];
  for (let at = stepsFrom(circuit, live, from)[way][0]; at !== undefined && !passed.includes(at); ) {
    passed.push(at);
    at = stepsFrom(circuit, live, at)[way][0];
  }
  return passed;
}

describe("Walking a circuit", () => {
  it("follows the current from the battery's plus through switch, motor and body to its minus", () => {
    expect(walkOn(ROW, RUNNING, "G1.+", "onward")).toEqual([
      "G1.+",
      "F1.1",
      "F1.2",
      "S1.1",
      "S1.2",
      "M1.1",
      "M1.2",
      "GP1.stud",
      "GP2.stud",
      "G1.-",
    ]);
  });

  it("comes back the same way", () => {
    const there = walkOn(ROW, RUNNING, "G1.+", "onward");
    expect(walkOn(ROW, RUNNING, "G1.-", "back")).toEqual([...there].reverse());
  });

  it("goes the same way where an open switch lets nothing flow", () => {
    expect(walkOn(ROW, AT_REST, "G1.+", "onward")).toEqual(walkOn(ROW, RUNNING, "G1.+", "onward"));
    expect(walkOn(ROW, AT_REST, "G1.-", "back")).toEqual(walkOn(ROW, RUNNING, "G1.-", "back"));
  });

  it("names the legs of a splice as beside each other, and takes the one that carries most first", () => {
    const two = vehicle(
      [
        G1,
        { id: "SP1", kind: "splice", terminals: ["1", "2", "3"] },
        { id: "E1", kind: "lamp", settings: { watts: 5 } },
        { id: "E2", kind: "lamp", settings: { watts: 50 } },
      ],
      ["W1 G1.+ SP1.1", "W2 SP1.2 E1.1", "W3 SP1.3 E2.1", "W4 E1.2 G1.-", "W5 E2.2 G1.-"],
    );
    const live = liveOf(two);
    expect(stepsFrom(two, live, "SP1.1").onward).toEqual(["SP1.3", "SP1.2"]);
    expect(stepsFrom(two, live, "SP1.2").beside).toEqual(["SP1.2", "SP1.3"]);
    expect(stepsFrom(two, live, "E1.2").beside).toEqual(["E1.2", "E2.2"]);
  });

  it("offers what an open contact parts after what is joined", () => {
    const two = vehicle(
      [G1, makeSwitch("S1"), { id: "E1", kind: "lamp" }, { id: "E2", kind: "lamp" }],
      ["W1 G1.+ S1.1", "W2 S1.1 E1.1", "W3 S1.2 E2.1", "W4 E1.2 G1.-", "W5 E2.2 G1.-"],
    );
    expect(stepsFrom(two, liveOf(two), "S1.1").onward).toEqual(["E1.1", "S1.2"]);
  });

  it("takes a plugged terminal and its cavity as one step, and as two while the plug is apart", () => {
    const home = liveOf(VENTS, { set: { S1: "on", S5: "open" } });
    expect(stepsFrom(VENTS, home, "S5.6")).toEqual(stepsFrom(VENTS, home, "X5-6"));
    expect(stepsFrom(VENTS, home, "X5-6").onward).toEqual(["X5-4", "X5-5"]);
    const apart = liveOf(VENTS, { set: { S1: "on", S5: "open" }, apart: ["X5"] });
    expect(stepsFrom(VENTS, apart, "X5-6").onward).toEqual(["S5.6"]);
    expect(stepsFrom(VENTS, apart, "S5.6").back).toContain("X5-6");
  });

  it("reaches the battery's plus from every point of the vent circuit that is fed, and its minus from every grounded one", () => {
    const live = liveOf(VENTS, { set: { S1: "on", S5: "open" } });
    for (const { id } of pointsOf(VENTS)) {
      const state = live.points.get(id)?.state;
      if (state === "powered") expect(walkOn(VENTS, live, id, "back").at(-1)).toBe("G1.+");
      if (state === "grounded") expect(walkOn(VENTS, live, id, "onward").at(-1)).toBe("G1.-");
    }
  });

  it("has no step from a point that the circuit does not have", () => {
    expect(stepsFrom(ROW, RUNNING, "S9.1")).toEqual({ onward: [], back: [], beside: [] });
  });
});
