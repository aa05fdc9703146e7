import { describe, expect, test } from "vitest";
import type { Around, Part, PinRole } from "../../core/parts/kind.ts";
import { controlModule, unsetOutputs } from "../../core/parts/module.ts";
import { viewOf } from "../../core/parts/view.ts";
import { battery, ohms, onBench, type Wired } from "./bench.ts";

const PINS: Readonly<Record<string, PinRole>> = {
  "30": "supply",
  "31": "ground",
  rain: "input",
  button: "input",
  motor: "drives-high",
  relay: "drives-low",
};
/** Closes on rain; the button is a switch to ground and pulls the relay while it does not rain. */
const PART: Omit<Part, "id" | "kind"> = {
  pins: PINS,
  table: [
    { when: { rain: "high" }, joins: [["30", "motor"]] },
    { when: { button: "low", rain: "low" }, joins: [["31", "relay"]] },
  ],
};
const SUPPLY: readonly Wired[] = [
  ["30", "-", battery(12)],
  ["31", "-", ohms(0.001)],
];
const LOADS: readonly Wired[] = [
  ["motor", "-", ohms(10)],
  ["30", "relay", ohms(90)],
];
const AROUND: Around = { positions: {}, drive: {}, engineRunning: false, ambientC: 20, nominalVolts: 12 };

function stand(wired: readonly Wired[], around: Partial<Around> = {}, part = PART, fault?: readonly [string]) {
  return onBench(controlModule, { part, wired: [...SUPPLY, ...LOADS, ...wired], around, ...(fault ? { fault } : {}) });
}

function unset(state: string, around: Partial<Around> = {}, part = PART): readonly string[] {
  const view = viewOf(controlModule, { id: "U1", kind: "module", ...part }, 12);
  return unsetOutputs(view, state, { ...AROUND, ...around });
}

describe("a module's table", () => {
  test("drives an output high while its input is fed, and not before", () => {
    const [dry, wet] = [stand([]), stand([["30", "rain", ohms(0.1)]])];
    expect([dry.state, wet.state]).toEqual(["idle", "rows 1"]);
    expect(dry.volts("motor")).toBeLessThan(0.01);
    expect(wet.volts("motor")).toBeGreaterThan(11.7);
  });

  test("drives an output low while a switch grounds its input", () => {
    const stood = stand([["button", "-", ohms(0.1)]]);
    expect(stood.state).toBe("rows 2");
    expect(stood.volts("relay")).toBeLessThan(0.5);
  });

  test("pulls an input up where the table waits for it to go low, else down", () => {
    const stood = stand([]);
    expect(stood.volts("button")).toBeGreaterThan(11.5);
    expect(stood.volts("rain")).toBeLessThan(0.1);
  });

  test("leaves a row undecided while an input lies between low and high, and its output unset", () => {
    const stood = stand([["30", "rain", ohms(10000)]]);
    expect(stood.volts("rain")).toBeCloseTo(6, 1);
    expect(stood.state).toBe("rows ?1");
    expect(unset("rows ?1")).toEqual(["motor"]);
    expect(unset("rows ?1", { drive: { motor: "off" } })).toEqual([]);
  });

  test("says no as soon as one input says no, whatever another lies at", () => {
    expect(
      stand([
        ["30", "rain", ohms(10000)],
        ["button", "-", ohms(0.1)],
      ]).state,
    ).toBe("rows ?1 ?2");
    expect(stand([["30", "rain", ohms(10000)]]).state).not.toContain("2");
  });

  test("judges its inputs by 60 % and 20 % of nominal volts", () => {
    const at = (volts: number) => stand([["rain", "-", { law: "source", volts, ohms: 0.01 }]]).state;
    expect([7.3, 7.1, 2.5, 2.3].map(at)).toEqual(["rows 1", "rows ?1", "rows ?1", "idle"]);
  });
});

describe("a module without", () => {
  test("supply sleeps, with nothing unset", () => {
    const stood = onBench(controlModule, {
      part: PART,
      wired: [...LOADS, ["31", "-", ohms(0.001)], ["rain", "-", battery(12)]],
    });
    expect(stood.state).toBe("asleep");
    expect(unset("asleep")).toEqual([]);
  });

  test("ground sleeps, though a fed input holds it up", () => {
    const stood = onBench(controlModule, {
      part: PART,
      wired: [...LOADS, ["30", "-", battery(12)], ["30", "rain", ohms(0.1)]],
    });
    expect(stood.state).toBe("asleep");
  });

  test("a table has all its outputs unset", () => {
    const { table: _, ...bare } = PART;
    expect(unset("idle", {}, bare)).toEqual(["motor", "relay"]);
    expect(unset("idle", { drive: { relay: "on" } }, bare)).toEqual(["motor"]);
  });

  test("a table tells the live room the same pins through its kind", () => {
    const view = viewOf(controlModule, { id: "U1", kind: "module", pins: PINS }, 12);
    const sees = { volts: () => 0, amps: () => 0, terminalVolts: () => null };
    expect(controlModule.unset?.(view, "idle", sees, AROUND)).toEqual(["motor", "relay"]);
  });

  test("pins told has a supply, a ground, an input and an output", () => {
    const view = viewOf(controlModule, { id: "U1", kind: "module" }, 12);
    expect(view.terminals).toHaveLength(4);
    expect(unsetOutputs(view, "idle", AROUND)).toHaveLength(1);
  });
});

describe("an output", () => {
  test("is driven by hand to its own rail, and let go by hand against the table", () => {
    const on = stand([], { drive: { motor: "on", relay: "on" } });
    expect(on.volts("motor")).toBeGreaterThan(11.7);
    expect(on.volts("relay")).toBeLessThan(0.5);
    const off = stand([["30", "rain", ohms(0.1)]], { drive: { motor: "off" } });
    expect(off.volts("motor")).toBeLessThan(0.01);
  });

  test("that is dead does not rise, and one stuck on does not fall", () => {
    const wet: readonly Wired[] = [["30", "rain", ohms(0.1)]];
    expect(Math.abs(stand(wet, {}, PART, ["output-dead-motor"]).volts("motor"))).toBeLessThan(0.01);
    expect(stand([], {}, PART, ["output-stuck-on-motor"]).volts("motor")).toBeGreaterThan(11.7);
  });

  test("loses volts in its driver, for a module's pin is never firm", () => {
    const view = viewOf(controlModule, { id: "U1", kind: "module", ...PART }, 12);
    const pins = controlModule.model(view).filter(({ key }) => key.startsWith("pin-"));
    expect(pins).toHaveLength(6);
    expect(pins.every(({ passes }) => passes === "pin")).toBe(true);
  });
});
