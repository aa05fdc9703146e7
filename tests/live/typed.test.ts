import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { controlsOf } from "../../core/circuit/points.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { conditionText, parseCondition } from "../../core/live/condition.ts";
import { faultText, parseFault } from "../../core/live/fault.ts";
import { agrees, judge, OBSERVED_WORDS } from "../../core/live/judge.ts";
import { sample } from "../samples/onTheBench.ts";

const vents = sample("1-roof-vents");
const codeOf = (outcome: { ok: boolean; refusal?: { code: string } }): string =>
  outcome.ok ? "" : outcome.refusal!.code;

describe("a condition as it is typed", () => {
  const controls = controlsOf(vents);
  const conditions = fc.record({
    set: fc.uniqueArray(fc.constantFrom(...controls), { maxLength: 4 }),
    pick: fc.nat(),
    apart: fc.subarray(["X3", "X5", "X30"]),
    out: fc.subarray(["F1", "F3", "K1"]),
    running: fc.boolean(),
    ambientC: fc.integer({ min: -40, max: 125 }),
  });

  it("reads back what it writes, thrown in the same order", () => {
    fc.assert(
      fc.property(conditions, ({ set, pick, apart, out, running, ambientC }) => {
        const thrown = set.map(
          ({ key, control }) => [key, control.positions[pick % control.positions.length]!.name] as const,
        );
        const condition = {
          ...(thrown.length > 0 && { set: Object.fromEntries(thrown) }),
          ...(apart.length > 0 && { apart }),
          ...(out.length > 0 && { out }),
          ...(running && { running }),
          ambientC,
        };
        const read = parseCondition(vents, conditionText(condition));
        expect(read).toEqual({ ok: true, value: condition });
        expect(Object.keys((read.ok && read.value.set) || {})).toEqual(thrown.map(([key]) => key));
      }),
      { numRuns: 200, seed: 1 },
    );
  });

  it.each([
    ["S5", "condition-spelling"],
    ["S99=on", "condition-control"],
    ["S2=open", "condition-control"],
    ["S5=sideways", "condition-position"],
    ["apart:X99", "condition-connector"],
    ["out:F99", "condition-part"],
    ["drive:K1.86=on", "condition-drive"],
    ["ambient:hot", "condition-spelling"],
    ["ambient:400", "condition-ambient"],
  ])("%s is refused with %s", (text, code) => {
    expect(codeOf(parseCondition(vents, text))).toBe(code);
  });
});

describe("a fault as it is typed", () => {
  it("reads back every fault the circuit can have", () => {
    const single = possibleFaults(vents).filter(({ faults }) => faults.length === 1);
    const faults = single.map(({ faults }) => faults[0]!);
    expect(faults.length).toBeGreaterThan(500);
    for (const fault of faults) expect(parseFault(vents, faultText(fault))).toEqual({ ok: true, value: fault });
    expect(new Set(faults.map(faultText)).size).toBe(faults.length);
  });

  it.each([
    ["M3", "fault-spelling"],
    ["M99:open", "fault-target"],
    ["M3:tired", "fault-mode"],
    ["M3:open=3", "fault-no-value"],
    ["W13:ohms=-1", "fault-value"],
    ["W13:ohms=many", "fault-value"],
    ["W13:crossed=W13", "fault-crossed"],
    ["W13:crossed", "fault-crossed"],
  ])("%s is refused with %s", (text, code) => {
    expect(codeOf(parseFault(vents, text))).toBe(code);
  });

  it("takes the usual value where none is typed", () => {
    expect(parseFault(vents, "W13:ohms")).toEqual({ ok: true, value: { target: "W13", mode: "ohms", value: 20 } });
  });
});

describe("judging a function check", () => {
  const check = (expectation: "forward" | "off" | "flashes") => ({
    id: "c",
    label: "c",
    condition: {},
    load: "M1",
    expect: expectation,
  });

  it.each([
    [1, "works"],
    [0.7, "works"],
    [0.69, "weak"],
    [0.15, "weak"],
    [0.14, "dead"],
  ] as const)("a level of %d is %s", (level, verdict) => {
    expect(judge(check("forward"), { doing: "forward", level })).toBe(verdict);
  });

  it("calls running the other way, or when it should be off, wrong", () => {
    expect(judge(check("forward"), { doing: "reverse", level: 1 })).toBe("wrong");
    expect(judge(check("off"), { doing: "forward", level: 0.5 })).toBe("wrong");
    expect(judge(check("off"), { doing: "off", level: 0 })).toBe("works");
    expect(judge(check("flashes"), { doing: "on", level: 1 })).toBe("wrong");
  });

  it("agrees with what a person saw, and with anything where nothing was tried", () => {
    expect(OBSERVED_WORDS.filter((word) => agrees("dead", word, false))).toEqual(["dead", "sometimes", "not-tried"]);
    expect(agrees("dead", "blows-its-fuse", true)).toBe(true);
  });
});
