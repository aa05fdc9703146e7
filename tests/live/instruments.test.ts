import { describe, expect, it } from "vitest";
import { testPointsOf } from "../../core/diagnose/testPoint.ts";
import type { Attachment } from "../../core/live/attachment.ts";
import { meterOn, meterShows } from "../../core/live/instruments/meter.ts";
import { burns, lampOn } from "../../core/live/instruments/testLamp.ts";
import { liveOf } from "../../core/live/live.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { sample } from "../samples/onTheBench.ts";
import { G1, vehicle } from "./vehicle.ts";

/** A wire behind this many ohms, fed at 12.6 V. */
const behind = (ohms: number) => vehicle([G1, { id: "R1", kind: "resistor", settings: { ohms } }], ["W1 G1.+ R1.1"]);

function clipped(ohms: number, attachment: Attachment): Rig {
  const rig = new Rig(behind(ohms), [], [attachment]);
  reach(rig, {});
  return rig;
}

describe("instruments as the real loads they are", () => {
  // Worked from I = I0 (V / V0)^0.55 (Wikipedia, "Lamp rerating") and a 0.25 A lamp at 12 V
  it.each([
    [1, 12.35, "bright"],
    [20, 8.47, "dim"],
    [30, 7.02, "dim"],
    [200, 0.86, "dark"],
    [1000, 0.06, "dark"],
  ] as const)("a small lamp behind %i ohm has %d V across it and is %s", (ohms, volts, looks) => {
    const rig = clipped(ohms, lampOn("small", "R1.2", "battery -", 12));
    expect(rig.solver.voltsAcross(rig.network.attached[0]!)).toBeCloseTo(volts, 1);
    expect(burns(rig)).toBe(looks);
  });

  // Worked by the divider with a 10 Mohm meter (Lessons In Electric Circuits, voltmeter impact on measured circuit)
  it.each([
    [1, 12.6],
    [1000, 12.599],
    [1e6, 11.4545],
  ])("a meter behind %d ohm shows %d V", (ohms, volts) => {
    expect(meterShows(clipped(ohms, meterOn("R1.2", "battery -")))).toBeCloseTo(volts, 3);
  });

  it("shows a ghost of near battery volts that dies under a lamp", () => {
    expect(liveOf(behind(1e6)).points.get("R1.2")).toMatchObject({ state: "floating", ghost: true });
    expect(meterShows(clipped(1e6, meterOn("R1.2", "battery -")))).toBeGreaterThan(11);
    expect(burns(clipped(1e6, lampOn("small", "R1.2", "battery -", 12)))).toBe("dark");
  });
});

describe("the lamp that a point can carry", () => {
  it("is none where a module's pin hangs on the wire, and small on a thin wire", () => {
    const vents = testPointsOf(sample("1-roof-vents"));
    const lampAt = (point: string) => vents.find((at) => at.point === point)?.lamp;
    expect(lampAt("X8-4")).toBeNull();
    expect(lampAt("X8-1")).toBe("4 A lamp");
    const thin = { ...behind(1), wires: [{ id: "W1", from: "G1.+", to: "R1.1", mm2: 0.5 }] };
    expect(testPointsOf(thin).map((at) => at.lamp)).toEqual(["0.25 A lamp", "0.25 A lamp"]);
  });
});
