import { describe, expect, it } from "vitest";
import { liveAfter, liveOf } from "../../core/live/live.ts";
import { Rig } from "../../core/live/rig.ts";
import { G1, makeSwitch, ROW, vehicle } from "./vehicle.ts";

const K1 = { id: "K1", kind: "relay", settings: { form: "change-over" } };
const push = (id: string) => ({
  ...makeSwitch(id),
  positions: [
    { name: "out", joins: [] },
    { name: "in", joins: [["1", "2"] as const], springsBackTo: "out" },
  ],
});

describe("settling", () => {
  it("holds a latched relay through its own contact once the button is let go", () => {
    const latch = vehicle(
      [G1, push("S1"), K1],
      ["W1 G1.+ S1.1", "W2 S1.2 K1.86", "W3 K1.85 G1.-", "W4 G1.+ K1.30", "W5 K1.87 K1.86"],
    );
    const rig = new Rig(latch);
    expect(liveAfter(rig, {}).parts.get("K1")?.state).toBe("released");
    expect(liveAfter(rig, { set: { S1: "in" } }).parts.get("K1")?.state).toBe("pulled-in");
    expect(liveAfter(rig, {}).parts.get("K1")?.state).toBe("pulled-in");
    expect(liveOf(latch, {}).parts.get("K1")?.state).toBe("released");
  });

  it("reports a relay that cuts its own coil as chattering, with its wires undecided", () => {
    const buzzer = vehicle([G1, K1], ["W1 G1.+ K1.30", "W2 K1.87a K1.86", "W3 K1.85 G1.-"]);
    const live = liveOf(buzzer);
    expect(live.settled).toBe(false);
    expect(live.happenings).toMatchObject([{ what: "chatters", parts: ["K1"] }]);
    expect(live.wires.get("W2")?.state).toEqual(["undecided", "undecided"]);
    expect(live.points.get("K1.86")?.range?.[1]).toBeGreaterThan(11);
  });

  it("melts the fuse with the smallest gate time first", () => {
    const two = vehicle(
      [
        G1,
        { id: "F1", kind: "fuse", settings: { amps: 30 } },
        { id: "F2", kind: "fuse", settings: { amps: 10 } },
        makeSwitch("S1"),
        { id: "R1", kind: "resistor", settings: { ohms: 0.2 } },
      ],
      ["W1 G1.+ F1.1", "W2 F1.2 F2.1", "W3 F2.2 S1.1", "W4 S1.2 R1.1", "W5 R1.2 G1.-"],
    );
    expect(liveOf(two, { set: { S1: "on" } }).happenings).toMatchObject([{ what: "melted", part: "F2" }]);
  });

  it("only notes an overload between 135 and 200 % in a position that springs back", () => {
    const held = vehicle(
      [
        G1,
        { id: "F1", kind: "fuse", settings: { amps: 10 } },
        push("S1"),
        { id: "R1", kind: "resistor", settings: { ohms: 0.75 } },
      ],
      ["W1 G1.+ F1.1", "W2 F1.2 S1.1", "W3 S1.2 R1.1", "W4 R1.2 G1.-"],
    );
    expect(liveOf(held, { set: { S1: "in" } }).happenings).toMatchObject([{ what: "may-melt", part: "F1" }]);
    const latching = {
      ...held,
      parts: held.parts.map((part) =>
        part.id === "S1"
          ? {
              ...makeSwitch("S1"),
              positions: [
                { name: "out", joins: [] },
                { name: "in", joins: [["1", "2"] as const] },
              ],
            }
          : part,
      ),
    };
    expect(liveOf(latching, { set: { S1: "in" } }).happenings).toMatchObject([{ what: "melted", part: "F1" }]);
  });

  it("keeps a melted fuse out until it is replaced", () => {
    const rig = new Rig(ROW, [{ target: "W3", mode: "short-to-ground" }]);
    liveAfter(rig, { set: { S1: "on" } });
    expect(liveAfter(rig, {}).wires.get("W2")?.state).toEqual(["floating", "floating"]);
  });

  it("says that two relays race where the order decides", () => {
    const race = vehicle(
      [G1, makeSwitch("S1"), K1, { ...K1, id: "K2" }],
      [
        "W1 G1.+ S1.1",
        "W2 S1.2 K1.30",
        "W3 S1.2 K2.30",
        "W4 K1.87a K2.86",
        "W5 K2.87a K1.86",
        "W6 K1.85 G1.-",
        "W7 K2.85 G1.-",
      ],
    );
    const live = liveOf(race, { set: { S1: "on" } });
    expect(live.settled).toBe(true);
    expect(live.happenings).toMatchObject([{ what: "order-dependent", parts: ["K1", "K2"] }]);
  });

  it("takes everything back at rest: the same state as a fresh circuit", () => {
    const rig = new Rig(ROW);
    liveAfter(rig, { set: { S1: "on" }, out: ["F1"], ambientC: 80 });
    const back = liveAfter(rig, {});
    const fresh = liveOf(ROW);
    expect([...back.points].map(([id, point]) => [id, point.state, point.volts?.toFixed(9)])).toEqual(
      [...fresh.points].map(([id, point]) => [id, point.state, point.volts?.toFixed(9)]),
    );
  });

  it("parts a plug and opens what is taken out", () => {
    const plugged = {
      ...ROW,
      connectors: [{ id: "X1", rows: [["1", "2"]], cavities: { "1": "M1.1", "2": "M1.2" } }],
      wires: ROW.wires.map((wire) => ({
        ...wire,
        to: wire.to.replace("M1.1", "X1-1"),
        from: wire.from.replace("M1.2", "X1-2"),
      })),
    };
    const apart = liveOf(plugged, { set: { S1: "on" }, apart: ["X1"] });
    expect(apart.points.get("X1-1")?.state).toBe("powered");
    expect(apart.points.get("M1.1")?.state).toBe("floating");
    expect(liveOf(plugged, { set: { S1: "on" }, out: ["F1"] }).points.get("X1-1")?.state).toBe("grounded-through-load");
  });
});
