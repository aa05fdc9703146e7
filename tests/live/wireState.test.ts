import { describe, expect, it } from "vitest";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import type { Fault } from "../../core/live/fault.ts";
import { liveOf } from "../../core/live/live.ts";
import { G1, makeSwitch, ROW, vehicle } from "./vehicle.ts";

const on: Condition = { set: { S1: "on" } };
const states = (circuit: Circuit, condition: Condition = {}, faults: readonly Fault[] = []) =>
  Object.fromEntries(
    [...liveOf(circuit, condition, faults).wires].map(([id, wire]) => [
      id,
      wire.state[0] === wire.state[1] ? wire.state[0] : wire.state.join("/"),
    ]),
  );

const LAMP = (id: string) => ({ id, kind: "lamp" });

describe("the one rule of wire states", () => {
  it("gives feed side, return side and what hangs on a load, at rest", () => {
    expect(states(ROW)).toEqual({
      W1: "powered",
      W2: "powered",
      W3: "grounded-through-load",
      W4: "grounded",
      W5: "grounded",
    });
  });

  it("cuts an open wire in its middle", () => {
    expect(states(ROW, on, [{ target: "W3", mode: "open" }]).W3).toBe("powered/grounded-through-load");
  });

  it("calls a wire fed only through a load powered through a load when its ground is gone", () => {
    expect(states(ROW, on, [{ target: "W4", mode: "open" }]).W4).toBe("powered-through-load/grounded");
  });

  it("tells floating from fed through a load and from grounded", () => {
    const both = states(ROW, {}, [{ target: "W4", mode: "open" }]);
    expect(both.W3).toBe("floating");
    expect(both.W4).toBe("floating/grounded");
  });

  it("keeps a wire floating behind a 10 Mohm meter, whose volts still show", () => {
    const meter = { red: "M1.1", black: "battery +", law: { law: "resistor", ohms: 1e7 }, isMeter: true } as const;
    const live = liveOf(ROW, {}, [{ target: "W4", mode: "open" }], [meter]);
    expect(live.points.get("M1.1")?.state).toBe("floating");
    const lamp = { ...meter, law: { law: "lamp", ratedVolts: 12, ratedAmps: 4 }, isMeter: false } as const;
    expect(liveOf(ROW, {}, [{ target: "W4", mode: "open" }], [lamp]).points.get("M1.1")?.state).toBe(
      "powered-through-load",
    );
  });

  it("calls the middle of two lamps in series between", () => {
    const series = vehicle([G1, LAMP("E1"), LAMP("E2")], ["W1 G1.+ E1.1", "W2 E1.2 E2.1", "W3 E2.2 G1.-"]);
    expect(states(series)).toEqual({ W1: "powered", W2: "between", W3: "grounded" });
  });

  it("takes a path through more than one ohm added by a fault as no longer firm", () => {
    expect(states(ROW, on, [{ target: "W3", mode: "ohms", value: 0.9 }]).W3).toBe("powered");
    expect(states(ROW, on, [{ target: "W3", mode: "ohms", value: 1.1 }]).W3).toBe("powered/between");
  });

  it("keeps a firm wire of any healthy length firm", () => {
    const long = { ...ROW, wires: ROW.wires.map((wire) => (wire.id === "W2" ? { ...wire, ohms: 3 } : wire)) };
    expect(states(long, on).W3).toBe("powered");
    expect(liveOf(long, on).wires.get("W3")?.weak).toBe(true);
  });

  it("counts a path of more than 100 kohm as none, with the note ghost", () => {
    const leak = (ohms: number) =>
      vehicle(
        [G1, { id: "R1", kind: "resistor", settings: { ohms } }, makeSwitch("S1")],
        ["W1 G1.+ R1.1", "W2 R1.2 S1.1", "W3 S1.2 G1.-"],
      );
    expect(liveOf(leak(90_000)).points.get("S1.1")).toMatchObject({ state: "powered-through-load", ghost: false });
    expect(liveOf(leak(110_000)).points.get("S1.1")).toMatchObject({ state: "floating", ghost: true, volts: null });
  });

  it("lets a diode pass forward only, and firmly", () => {
    const diode = (anode: string, cathode: string) =>
      vehicle(
        [G1, { id: "V1", kind: "diode" }, makeSwitch("S1")],
        [`W1 G1.+ V1.${anode}`, `W2 V1.${cathode} S1.1`, "W3 S1.2 G1.-"],
      );
    expect(states(diode("A", "K")).W2).toBe("powered");
    expect(states(diode("K", "A")).W2).toBe("floating");
  });

  it("takes the middle of a 24 V pair as a feed of its own, not a clash", () => {
    const pair = vehicle(
      [{ ...G1, settings: { reference: true } }, { id: "G2", kind: "battery" }, LAMP("E1"), LAMP("E2")],
      ["W1 G1.+ G2.-", "W2 G2.+ E1.1", "W3 E1.2 G1.-", "W4 G1.+ E2.1", "W5 E2.2 G1.-"],
    );
    expect(states(pair)).toEqual({ W1: "powered", W2: "powered", W3: "grounded", W4: "powered", W5: "grounded" });
  });

  it("calls a wire between two feeds more than 4 V apart a clash", () => {
    const joined = vehicle(
      [{ ...G1, settings: { reference: true } }, { id: "G2", kind: "battery" }, makeSwitch("S1")],
      ["W1 G1.+ G2.-", "W2 G2.+ S1.1", "W3 S1.2 G1.+"],
    );
    expect(states(joined).W2).toBe("powered");
    expect(states(joined, on).W2).toBe("clash");
  });

  it("calls feed firmly on ground a clash before the fuse melts, and gives what is after", () => {
    const live = liveOf(ROW, on, [{ target: "W3", mode: "short-to-ground" }]);
    expect(live.before?.wires.get("W2")?.state).toEqual(["clash", "clash"]);
    expect(live.before?.wires.get("W4")?.state).toEqual(["grounded", "grounded"]);
    expect(live.wires.get("W2")?.state).toEqual(["grounded", "grounded"]);
    expect(live.happenings).toMatchObject([{ what: "melted", part: "F1" }]);
  });

  it("marks as always fed only what no control can switch off", () => {
    const live = liveOf(ROW, on);
    const fed = [...live.wires].filter(([, wire]) => wire.alwaysFed).map(([id]) => id);
    expect(fed).toEqual(["W1", "W2"]);
  });

  it("has no feed with the battery off, and grounds stay grounds", () => {
    expect(Object.values(states(ROW, { ...on, batteryOff: true })).filter((state) => state === "powered")).toEqual([]);
    expect(states(ROW, { ...on, batteryOff: true }).W5).toBe("grounded");
  });
});
