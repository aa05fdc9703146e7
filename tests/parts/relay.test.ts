import { describe, expect, test } from "vitest";
import type { Around, PartView, Sees, Settings } from "../../core/parts/kind.ts";
import { relay } from "../../core/parts/relay.ts";
import { viewOf } from "../../core/parts/view.ts";
import { copperRatio } from "../../core/trade/wire.ts";

const AROUND: Around = { positions: {}, drive: {}, engineRunning: false, ambientC: 20, nominalVolts: 12 };

function view(settings: Settings = {}, nominalVolts = 12, terminals?: readonly string[]): PartView {
  return viewOf(relay, { id: "K1", kind: "relay", settings, ...(terminals && { terminals }) }, nominalVolts);
}

function coilAt(volts: number, ambientC: number): Sees {
  const amps = volts / (90 * copperRatio(ambientC));
  return { volts: (key) => (key === "coil" ? volts : 0), amps: () => amps, terminalVolts: () => null };
}

function next(state: string, volts: number, at: PartView = view(), ambientC = 20): string {
  return relay.next(at, state, coilAt(volts, ambientC), { ...AROUND, ambientC });
}

describe("a relay of the 12 V class", () => {
  // Data sheet V23134X0000A002 (70 A power relay), as a design note quotes it: 90 ohm, operates at 7.2 V, releases at 1.6 V.
  test("pulls in at 7.2 V, drops out at 1.6 V, and at 4.0 V keeps the state it has", () => {
    expect([next("released", 7.2), next("released", 7.1)]).toEqual(["pulled-in", "released"]);
    expect([next("pulled-in", 1.6), next("pulled-in", 1.7)]).toEqual(["released", "pulled-in"]);
    expect([next("released", 4), next("pulled-in", 4)]).toEqual(["released", "pulled-in"]);
  });

  test("has a coil of 90 ohm, copper, and pulls in whichever way it is fed", () => {
    expect(relay.model(view())[0]).toEqual({
      key: "coil",
      a: "86",
      b: "85",
      law: { law: "resistor", ohms: 90 },
      passes: "load",
      copper: true,
    });
    expect(next("released", -7.2)).toBe("pulled-in");
  });

  // TE Connectivity, "Temperature considerations for DC relays": 6.5 V at 20 C is 8.16 V at 85 C.
  test("needs more volts when hot, as its copper does", () => {
    const part = view({ pullInVolts: 6.5 });
    expect([next("released", 8.14, part, 85), next("released", 8.18, part, 85)]).toEqual(["released", "pulled-in"]);
  });

  test("stays released with its coil open, whatever volts lie across it", () => {
    const open: Sees = { volts: () => 12.6, amps: () => 0, terminalVolts: () => null };
    expect(relay.next(view(), "released", open, AROUND)).toBe("released");
  });
});

// OEN 78 (320 ohm) and TE VF4A (14.4 V, 2.4 V) relay sheets.
test("a relay of the 24 V class has 320 ohm, pulls in at 14.4 V and drops out at 2.4 V", () => {
  const part = view({}, 24);
  expect([part.number("coilOhms"), part.number("pullInVolts"), part.number("dropOutVolts")]).toEqual([320, 14.4, 2.4]);
});

describe("the contacts of a relay", () => {
  // Terminals 30, 87 and 87a of a mini ISO change-over relay by a maker's listing.
  test.each([
    ["make", ["86", "85", "30", "87"], [], ["30-87"]],
    ["break", ["86", "85", "30", "87a"], ["30-87a"], []],
    ["change-over", ["86", "85", "30", "87", "87a"], ["30-87a"], ["30-87"]],
    ["twin-make", ["86", "85", "30", "87", "87b"], [], ["30-87", "30-87b"]],
  ])("of the form %s", (form, terminals, released, pulledIn) => {
    const part = view({ form });
    expect(part.terminals).toEqual(terminals);
    expect(relay.closed(part, "released", AROUND)).toEqual(released);
    expect(relay.closed(part, "pulled-in", AROUND)).toEqual(pulledIn);
  });

  test("take the numbers that the part has, in the order coil plus, coil minus, common, make, break", () => {
    const part = view({ form: "change-over" }, 12, ["1", "2", "3", "5", "4"]);
    expect(relay.closed(part, "released", AROUND)).toEqual(["3-4"]);
    expect(relay.closed(part, "pulled-in", AROUND)).toEqual(["3-5"]);
    expect(relay.model(part)[0]).toMatchObject({ a: "1", b: "2" });
  });

  test("stay away where the part lacks the terminal", () => {
    const part = view({ form: "change-over" }, 12, ["86", "85", "30", "87"]);
    expect(relay.model(part).map(({ key }) => key)).toEqual(["coil", "30-87"]);
  });
});

describe("what lies across the coil", () => {
  test("a diode passes from 85 to 86 only, a resistor both ways, and none is no element", () => {
    const across = (suppression: string) => relay.model(view({ suppression })).find(({ key }) => key === suppression);
    expect(across("diode")).toMatchObject({ a: "85", b: "86", passes: "diode" });
    expect(across("resistor")).toMatchObject({ passes: "load", law: { law: "resistor", ohms: 540 } });
    expect(across("none")).toBeUndefined();
  });
});

describe("the faults of a relay", () => {
  const modes = (form: string, suppression = "none") =>
    relay.faults(view({ form, suppression })).map(({ mode }) => mode);

  test("weld a single make contact once, and a break contact by itself", () => {
    expect(modes("change-over")).toEqual([
      "coil-open",
      "coil-shorted",
      "welded",
      "stuck-open-30-87a",
      "ohms-30-87a",
      "stuck-closed-30-87a",
      "stuck-open-30-87",
      "ohms-30-87",
    ]);
    expect(modes("break")).not.toContain("welded");
    expect(modes("make", "diode")).toContain("diode-shorted");
  });

  test("a coil burnt to a short takes current and does not pull in", () => {
    const shorted = relay.faults(view()).find(({ mode }) => mode === "coil-shorted")!;
    expect(shorted.effects(0)).toEqual([
      { does: "set-ohms", element: "coil", ohms: 5 },
      { does: "hold", state: "released" },
    ]);
  });
});
