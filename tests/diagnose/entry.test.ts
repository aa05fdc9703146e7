import { describe, expect, it } from "vitest";
import { outcomeOf, readEntry, readingsOf } from "../../core/diagnose/entry.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { suspectsFor } from "../../core/diagnose/suspects.ts";
import { sample } from "../samples/onTheBench.ts";
import { probesOf } from "./simulate.ts";

const vents = sample("1-roof-vents");
const check = vents.checks.find(({ id }) => id === "middle-open-own")!;
const complaint = { check, word: "dead" } as const;
const { steps, suspects } = probeOrder(vents, complaint);
const single = steps.find(({ instrument, settings }) => instrument === "meter volts" && settings.length === 1)!;
const sweep = steps.find(({ sweepOf }) => sweepOf !== null)!;
const lamp = steps.find(({ lampTo }) => lampTo !== null)!;

function shows(typed: string, step = single) {
  const entry = readEntry(typed, step, steps, 12);
  return entry.ok ? entry.value.map((each) => each.shows) : entry.refusal.code;
}

describe("what is typed into the field of a row", () => {
  it.each([
    ["11.9", 11.9],
    ["11,9 V", 11.9],
    ["250 mV", 0.25],
    ["-0.2", -0.2],
    ["\u22120.2V", -0.2],
  ])("%s is volts", (typed, volts) => {
    expect(shows(typed)).toEqual([[{ volts, word: null }]]);
  });

  it("is a lamp's word, with volts or without", () => {
    expect(shows("dim", lamp)).toEqual([[{ volts: null, word: "dim" }]]);
    expect(shows("dim 7.2", lamp)).toEqual([[{ volts: 7.2, word: "dim" }]]);
    expect(shows("0.4", lamp)).toEqual([[{ volts: 0.4, word: null }]]);
  });

  it("is a value for every position of a sweep, or one word for all", () => {
    const values = sweep.settings.map((_, index) => `${index}.5`).join("  ");
    expect(shows(values, sweep)).toEqual([sweep.settings.map((_, index) => ({ volts: index + 0.5, word: null }))]);
    expect(shows("ok", sweep)).toHaveLength(1);
    expect(shows("12.1", sweep)).toBe("reading-count");
  });

  it("addresses other rows by number", () => {
    expect(shows(`${single.number} = 12.6`, sweep)).toEqual([[{ volts: 12.6, word: null }]]);
    const entry = readEntry(`${single.number}=11.9 ${lamp.number}=dim 7`, single, steps, 12);
    expect(entry.ok && entry.value.map(({ step }) => step.number)).toEqual([single.number, lamp.number]);
  });

  it.each([
    ["", "reading-empty"],
    ["lots", "reading-value"],
    ["dim", "reading-value"],
    ["3 A", "reading-unit"],
    ["400", "reading-high"],
    ["99=1", "reading-row"],
    ["x=1", "reading-column"],
    ["1=", "reading-count"],
  ])("%s is refused with %s", (typed, code) => {
    expect(shows(typed)).toBe(code);
  });

  it("makes a reading for every setting, with the row's leads", () => {
    const entry = readEntry("ok", sweep, steps, 12);
    const readings = entry.ok ? readingsOf(entry.value[0]!, "2026-01-02T03:04:05Z") : [];
    expect(readings.map(({ condition }) => condition)).toEqual(sweep.settings.map(({ condition }) => condition));
    expect(readings[0]).toMatchObject({ red: sweep.point, black: sweep.black, standing: "taken" });
  });
});

describe("the outcome an entry falls in", () => {
  it("is, for what a suspect shows in a row, the one that leaves that suspect", () => {
    const known = new Map(suspectsFor(vents, complaint).map(({ possible }) => [possible.id, possible]));
    for (const step of steps.slice(0, 6))
      for (const { id, faults } of suspects.filter((_, index) => index % 10 === 0)) {
        expect(known.has(id)).toBe(true);
        const reads = probesOf(step).map((probe) => readWith(vents, faults, check.condition, probe).shows);
        const outcome = outcomeOf({ step, shows: reads });
        expect(outcome?.leaves.map((suspect) => suspect.id)).toContain(id);
      }
  });
});
