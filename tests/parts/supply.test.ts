import { describe, expect, test } from "vitest";
import { battery } from "../../core/parts/battery.ts";
import { breaker } from "../../core/parts/breaker.ts";
import { fuse } from "../../core/parts/fuse.ts";
import { ground } from "../../core/parts/ground.ts";
import { jumper } from "../../core/parts/jumper.ts";
import type { Around, Kind, Sees, Settings } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";

const AROUND: Around = { positions: {}, drive: {}, engineRunning: false, ambientC: 20, nominalVolts: 12 };

function view(kind: Kind, settings: Settings = {}, nominalVolts = 12) {
  return viewOf(kind, { id: "P1", kind: kind.name, settings }, nominalVolts);
}

function carrying(amps: number): Sees {
  return { volts: () => 0, amps: () => amps, terminalVolts: (terminal) => (terminal === "-" ? 0 : 12) };
}

function ohms(kind: Kind, settings: Settings, key: string, nominalVolts = 12): number {
  const element = kind.model(view(kind, settings, nominalVolts)).find((candidate) => candidate.key === key)!;
  if (!("ohms" in element.law)) throw new Error(`${key} has no ohms`);
  return element.law.ohms;
}

describe("a battery", () => {
  // US Army TM 5-3805-262-20, page 5-142: open-circuit volts by charge; twice for 24 V.
  test.each([
    [100, 12, 12.6],
    [75, 12, 12.4],
    [50, 12, 12.2],
    [0, 12, 11.7],
    [100, 24, 25.2],
  ])("at %d %% of charge and %d V nominal has %d V of its own", (charge, nominalVolts, volts) => {
    const cells = battery.model(view(battery, { charge }, nominalVolts)).find(({ key }) => key === "cells")!;
    expect(cells.law).toMatchObject({ law: "source" });
    if (cells.law.law === "source") expect(cells.law.volts).toBeCloseTo(volts, 9);
  });

  test.each([0.001, 0.01, 0.6])(
    "of %d ohm inside shows them while it supplies, and 0.1 ohm more while it is charged",
    (internalOhms) => {
      const at = (key: string) => ohms(battery, { internalOhms }, key);
      expect(at("cells") + 1 / (1 / at("charging") + 1 / at("supplying"))).toBeCloseTo(internalOhms, 9);
      expect(at("cells") + at("charging")).toBeCloseTo(internalOhms + 0.1, 9);
    },
  );

  test("opens its easy path while current flows into plus, and not for next to none", () => {
    const next = (state: string, ampsIn: number) => battery.next(view(battery), state, carrying(ampsIn), AROUND);
    expect([next("supplying", 5), next("supplying", 0.001), next("charging", 0.001), next("charging", -5)]).toEqual([
      "charging",
      "supplying",
      "charging",
      "supplying",
    ]);
    expect(battery.closed(view(battery), "charging", AROUND)).toEqual([]);
    expect(battery.closed(view(battery), "supplying", AROUND)).toEqual(["supplying"]);
  });

  test("counts the amps that leave its plus post", () => {
    expect(battery.doing(view(battery), "supplying", carrying(-10), AROUND)).toEqual({
      doing: "supplying",
      amps: 10,
      watts: 120,
      work: 12,
    });
  });
});

describe("a fuse", () => {
  // Regular 10 A: 1 mV at 130 mA (mvwautotechniek.nl, voltage drop over fuses). Mini 15 A: 1.0 mV at 218 mA (MACS Service Reports).
  test("has the cold ohms of its rating and family, or those it is given", () => {
    expect(0.001 / ohms(fuse, { amps: 10 }, "link")).toBeCloseTo(0.13, 3);
    expect(0.001 / ohms(fuse, { amps: 15, family: "mini" }, "link")).toBeCloseTo(0.218, 3);
    expect(ohms(fuse, { amps: 10, coldOhms: 0.02 }, "link")).toBe(0.02);
  });

  test("keeps its state whatever flows, and passes nothing once melted", () => {
    expect(fuse.next(view(fuse), "good", carrying(1000), AROUND)).toBe("good");
    expect(fuse.next(view(fuse), "melted", carrying(0), AROUND)).toBe("melted");
    expect([fuse.closed(view(fuse), "good", AROUND), fuse.closed(view(fuse), "melted", AROUND)]).toEqual([
      ["link"],
      [],
    ]);
  });

  test("blown is a fuse held melted, as in a fused jumper lead", () => {
    for (const kind of [fuse, jumper]) {
      const blown = kind.faults(view(kind)).find(({ mode }) => mode === "blown")!;
      expect(blown.effects(0)).toEqual([{ does: "hold", state: "melted" }]);
    }
  });
});

describe("a circuit breaker of 10 A", () => {
  const next = (state: string, amps: number, resets: string) =>
    breaker.next(view(breaker, { resets }), state, carrying(amps), AROUND);

  // 135 %: common practice, no source.
  test("opens above 13.5 A, either way", () => {
    expect(next("closed", 13.5, "by hand")).toBe("closed");
    expect(next("closed", 13.6, "by hand")).toBe("tripped");
    expect(next("closed", -13.6, "by hand")).toBe("tripped");
  });

  test("cycles where it resets by itself, and then stays so, open, instead of going round", () => {
    expect(next("closed", 20, "automatically")).toBe("cycling");
    expect(next("cycling", 0, "automatically")).toBe("cycling");
    expect(breaker.closed(view(breaker), "cycling", AROUND)).toEqual([]);
  });
});

describe("a ground point", () => {
  test("joins its stud by contact ohms, and its body without any, to the body of that name", () => {
    expect(ground.model(view(ground, { body: "engine" }))).toEqual([
      { key: "stud", a: "stud", b: "=body:engine", law: { law: "resistor", ohms: 0.001 }, passes: "conductor" },
      { key: "body", a: "body", b: "=body:engine", law: { law: "joint" }, passes: "conductor" },
    ]);
  });

  test("off its stud is open, corroded adds ohms there", () => {
    const faults = ground.faults(view(ground));
    expect(faults.map(({ mode }) => mode)).toEqual(["corroded", "off"]);
    expect(faults[0]!.effects(4)).toEqual([{ does: "add-ohms", element: "stud", ohms: 4 }]);
  });
});
