import { describe, expect, it } from "vitest";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { clippedCautions } from "../../core/diagnose/clippedCautions.ts";
import type { Fault } from "../../core/live/fault.ts";
import { attachmentsOf, type Clipped, freshInstrument, INSTRUMENTS } from "../../core/live/instruments/clipped.ts";
import { type Showing, showings } from "../../core/live/instruments/showing.ts";
import { liveOf } from "../../core/live/live.ts";
import { sample } from "../samples/onTheBench.ts";
import { G1, makeSwitch, ROW, vehicle } from "./vehicle.ts";

/** What one instrument shows in a circuit brought to a condition from rest. */
function shown(
  circuit: Circuit,
  each: Clipped,
  condition: Condition = {},
  faults: readonly Fault[] = [],
  others: readonly Clipped[] = [],
): Showing {
  const all = [each, ...others];
  const attached = attachmentsOf(all, circuit.nominalVolts).map(({ attachment }) => attachment);
  const live = liveOf(circuit, condition, faults, attached);
  return showings(all, { circuit, live, now: { condition, states: {} }, faults }).get(each.id)!;
}

const clip = (
  instrument: Exclude<Clipped["instrument"], "clamp">,
  red: string,
  black: string,
  amps?: number,
): Clipped => ({
  id: "1",
  instrument,
  red,
  black,
  ...(amps !== undefined && { amps }),
});
const ON: Condition = { set: { S1: "on" } };
const OFF: Condition = { batteryOff: true };

describe("every instrument", () => {
  it.each(INSTRUMENTS)("%s shows nothing while it hangs free, and changes nothing", (instrument) => {
    const each = freshInstrument("1", instrument);
    expect(attachmentsOf([each], 12)).toEqual([]);
    expect(shown(ROW, each, ON)).toEqual({ shows: "free" });
  });
});

describe("voltmeter", () => {
  // Alliance/PSU note on loading in trade-facts 10.6, rows 39, 41 and 42: the divider with a 10 Mohm meter.
  it("reads 0.8889 V of 24 V across two 250 Mohm", () => {
    const resistor = (id: string) => ({ id, kind: "resistor", settings: { ohms: 250e6 } });
    const battery = { id: "G1", kind: "battery", settings: { volts: 24 } };
    const divided = vehicle(
      [battery, resistor("R1"), resistor("R2")],
      ["W1 G1.+ R1.1", "W2 R1.2 R2.1", "W3 R2.2 G1.-"],
      { nominalVolts: 24 },
    );
    const showing = shown(divided, clip("voltmeter", "R2.1", "battery -"));
    expect(showing).toMatchObject({ shows: "volts" });
    const atRest = liveOf(divided).points.get("G1.+")!.volts!;
    expect("volts" in showing ? (showing.volts / atRest) * 24 : 0).toBeCloseTo(0.8889, 3);
  });

  it("reads battery volts the other way round as minus", () => {
    expect(shown(ROW, clip("voltmeter", "battery -", "battery +"))).toMatchObject({ shows: "volts", drifts: false });
    const [plus, minus] = [clip("voltmeter", "battery +", "battery -"), clip("voltmeter", "battery -", "battery +")];
    const volts = [plus, minus].map((each) => (shown(ROW, each) as { volts: number }).volts);
    expect(volts[0]).toBeGreaterThan(12);
    expect(volts[1]).toBeCloseTo(-volts[0]!, 9);
  });

  it("drifts on a wire that floats, and reads 0 V on one that is grounded", () => {
    const cut: readonly Fault[] = [{ target: "W4", mode: "open" }];
    expect(shown(ROW, clip("voltmeter", "M1.1", "battery -"), {}, cut)).toMatchObject({ shows: "volts", drifts: true });
    expect(shown(ROW, clip("voltmeter", "M1.1", "battery -"))).toMatchObject({ shows: "volts", drifts: false });
  });

  it("sees a ghost that the test lamp shows to be none", () => {
    const ghost = vehicle([G1, { id: "R1", kind: "resistor", settings: { ohms: 1e6 } }], ["W1 G1.+ R1.1"]);
    const volts = shown(ghost, clip("voltmeter", "R1.2", "battery -"));
    expect(volts).toMatchObject({ shows: "volts", drifts: false });
    expect((volts as { volts: number }).volts).toBeGreaterThan(11);
    expect(shown(ghost, clip("small-lamp", "R1.2", "battery -"))).toMatchObject({ shows: "lamp", light: "dark" });
  });
});

describe("lamps and loads", () => {
  it("burn either way round, and draw what is written on them", () => {
    const fed = vehicle([{ ...G1, settings: { volts: 12, ohms: 0.001 } }, makeSwitch("S1")], ["W1 G1.+ S1.1"]);
    for (const [red, black] of [
      ["S1.1", "battery -"],
      ["battery -", "S1.1"],
    ] as const) {
      const small = shown(fed, clip("small-lamp", red, black));
      expect(small).toMatchObject({ shows: "lamp", light: "bright" });
      const heavy = shown(fed, clip("heavy-lamp", red, black));
      expect(Math.abs((heavy as { amps: number }).amps) / Math.abs((small as { amps: number }).amps)).toBeCloseTo(
        16,
        0,
      );
    }
    const stand = shown(fed, clip("stand-in", "S1.1", "battery -", 8)) as { amps: number; volts: number };
    // At a little off 12 V a filament's amps follow the power 0.55 of the volts (Wikipedia, "Lamp rerating").
    expect(stand.amps).toBeCloseTo(8 * (stand.volts / 12) ** 0.55, 2);
  });
});

describe("jumper lead", () => {
  it("runs a motor past an open switch, and its 5 A fuse melts on a dead short", () => {
    const past = shown(ROW, clip("jumper", "S1.1", "S1.2", 10));
    const direct = liveOf(ROW, ON).parts.get("M1")!.amps;
    expect(past).toMatchObject({ shows: "jumper", melted: false });
    expect((past as { amps: number }).amps).toBeCloseTo(direct, 1);
    expect(shown(ROW, clip("jumper", "battery +", "battery -", 5))).toEqual({ shows: "jumper", amps: 0, melted: true });
  });
});

describe("clamp ammeter", () => {
  it("reads the amps of the wire from its from end to its to end, and adds none", () => {
    const clamp: Clipped = { id: "1", instrument: "clamp", around: "W2" };
    expect(shown(ROW, clamp, ON)).toEqual({ shows: "amps", amps: liveOf(ROW, ON).wires.get("W2")!.amps });
  });
});

describe("ohmmeter", () => {
  const heated = vehicle(
    [
      G1,
      makeSwitch("S1"),
      { id: "R1", kind: "resistor", settings: { ohms: 47 } },
      { id: "R2", kind: "resistor", settings: { ohms: 220 } },
    ],
    ["W1 G1.+ S1.1", "W2 S1.2 R1.1", "W3 R1.2 G1.-", "W4 S1.2 R2.1"],
  );

  it("reads the ohms written on a resistor, whichever way its leads are", () => {
    expect(shown(heated, clip("ohmmeter", "R1.1", "R1.2"))).toMatchObject({ shows: "ohms" });
    for (const leads of [
      ["R1.1", "R1.2"],
      ["R1.2", "R1.1"],
    ] as const) {
      const read = shown(heated, clip("ohmmeter", leads[0], leads[1])) as { ohms: number };
      expect(read.ohms).toBeCloseTo(47, 6);
    }
  });

  it("shows an open line across an open switch and behind an open wire", () => {
    expect(shown(heated, clip("ohmmeter", "S1.1", "S1.2"), OFF)).toEqual({ shows: "ohms", ohms: null });
    const cut: readonly Fault[] = [{ target: "W3", mode: "open" }];
    expect(shown(heated, clip("ohmmeter", "R1.1", "battery -"), {}, cut)).toEqual({ shows: "ohms", ohms: null });
  });

  it("is refused where a feed still reaches a lead", () => {
    const refused = { shows: "nothing", refusal: { code: "ohms-live", about: { point: "R1.1" } } };
    expect(shown(heated, clip("ohmmeter", "R1.1", "R1.2"), ON)).toEqual(refused);
    expect(shown(heated, clip("ohmmeter", "R1.1", "R1.2"), { ...ON, ...OFF })).toMatchObject({ shows: "ohms" });
  });

  it("is refused where a jumper feeds what it reads, and reads past a switch that one bridges", () => {
    const feeding = { id: "2", instrument: "jumper", red: "battery +", black: "S1.2", amps: 10 } as const;
    expect(shown(heated, clip("ohmmeter", "R1.1", "battery -"), {}, [], [feeding])).toMatchObject({
      shows: "nothing",
      refusal: { code: "ohms-live" },
    });
    const bridging = { ...feeding, red: "S1.1" };
    const past = shown(heated, clip("ohmmeter", "S1.1", "S1.2"), OFF, [], [bridging]) as { ohms: number };
    expect(past.ohms).toBeLessThan(0.2);
  });

  it("is refused across a ground wire that current flows through, however firm it is", () => {
    const poor: readonly Fault[] = [{ target: "W4", mode: "ohms", value: 0.3 }];
    expect(shown(ROW, clip("ohmmeter", "M1.2", "battery -"), ON, poor)).toMatchObject({
      shows: "nothing",
      refusal: { code: "ohms-live" },
    });
  });

  it("names two ways that lie side by side, not two things of one", () => {
    const beside = {
      ...heated,
      parts: [...heated.parts, { id: "R3", kind: "resistor", settings: { ohms: 33 } }],
      wires: [
        ...heated.wires,
        { id: "W5", from: "R2.2", to: "R3.1", ohms: 0.01 },
        { id: "W6", from: "R3.2", to: "G1.-", ohms: 0.01 },
      ],
    };
    const showing = shown(beside, clip("ohmmeter", "R2.1", "battery -"));
    const { refusal } = showing as unknown as { refusal: { about: { one: string; other: string } } };
    expect([refusal.about.one, refusal.about.other]).toContain("R1");
  });

  it("is refused where two things lie side by side between the leads", () => {
    const beside = { ...heated, wires: [...heated.wires, { id: "W5", from: "R2.2", to: "G1.-", ohms: 0.01 }] };
    const showing = shown(beside, clip("ohmmeter", "R1.1", "R1.2"));
    expect(showing).toEqual({ shows: "nothing", refusal: { code: "ohms-shared", about: { one: "R1", other: "R2" } } });
  });

  it("reads a motor of a real circuit once its plug is apart, and as good as nothing added by the wire", () => {
    const vents = sample("1-roof-vents");
    const read = shown(vents, clip("ohmmeter", "M3.1", "M3.2"), { apart: ["X32"] });
    expect(read).toMatchObject({ shows: "ohms" });
    const { ohms } = read as { ohms: number };
    expect(ohms).toBeGreaterThan(0.1);
    expect(ohms).toBeLessThan(10);
  });
});

describe("instruments together", () => {
  it("read what the solver gives with the same elements in the circuit", () => {
    const meter = clip("voltmeter", "M1.1", "battery -");
    const lamp: Clipped = { id: "2", instrument: "heavy-lamp", red: "S1.2", black: "battery -" };
    const both = attachmentsOf([meter, lamp], 12).map(({ attachment }) => attachment);
    const live = liveOf(ROW, ON, [], both);
    const drawn: Circuit = {
      ...ROW,
      parts: [
        ...ROW.parts,
        { id: "P1", kind: "meter-leads" },
        { id: "E1", kind: "stand-in-load", settings: { type: "lamp", volts: 12, amps: 4 } },
      ],
      wires: [
        ...ROW.wires,
        { id: "L1", from: "P1.red", to: "M1.1", ohms: 1e-5 },
        { id: "L2", from: "P1.black", to: "G1.-", ohms: 1e-5 },
        { id: "L3", from: "S1.2", to: "E1.1", ohms: 1e-5 },
        { id: "L4", from: "E1.2", to: "G1.-", ohms: 1e-5 },
      ],
    };
    const other = liveOf(drawn, ON);
    expect(live.clipped[0]!.volts).toBeCloseTo(other.points.get("P1.red")!.volts!, 3);
    expect(live.clipped[1]!.amps).toBeCloseTo(other.wires.get("L3")!.amps, 3);
    expect(live.points.get("M1.1")!.state).toBe(other.points.get("M1.1")!.state);
  });
});

describe("what to mind with an instrument", () => {
  it("is a dead short, a load that is bridged, what may move, and what gets hot", () => {
    const words = (each: Clipped): string => clippedCautions(ROW, each).join(" ");
    expect(words(clip("jumper", "battery +", "battery -", 5))).toContain("dead short");
    expect(words(clip("jumper", "F1.1", "GP2.stud", 5))).toContain("dead short");
    expect(words(clip("jumper", "M1.1", "M1.2", 5))).toContain("M1");
    expect(words(clip("jumper", "S1.1", "S1.2", 10))).toMatch(/5 A.*move/);
    expect(words(clip("heavy-lamp", "battery +", "M1.1"))).toMatch(/move.*hot/);
    expect(clippedCautions(ROW, clip("voltmeter", "M1.1", "battery -"))).toEqual([]);
  });
});
