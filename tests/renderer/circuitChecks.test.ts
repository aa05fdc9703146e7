import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { benchFor } from "../../core/edit/bench.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { apply } from "../../core/edit/edit.ts";
import { expectationsOf, loadsOf } from "../../renderer/circuit/checking.ts";
import { readCircuit } from "../../schemas/circuit.ts";

function benchWith(sample: string) {
  const read = readCircuit(readFileSync(new URL(`../../samples/${sample}.circuit.json`, import.meta.url)));
  if (!read.ok) throw new Error(read.refusal.code);
  return benchFor(read.value);
}

describe("what a check can be of", () => {
  const bench = benchWith("1-roof-vents");

  test("every load of a sample's own checks is offered, batteries and fuses are not", () => {
    const ids = loadsOf(bench).map(({ id }) => id);
    for (const { load } of bench.circuit.checks) expect(ids).toContain(load);
    expect(ids).not.toContain("G1");
    expect(ids).not.toContain("F3");
  });

  test("the same circuit in the same state gives the same list", () => {
    expect(loadsOf(bench)).toBe(loadsOf(bench));
    expect(expectationsOf(bench, "M3")).toBe(expectationsOf(bench, "M3"));
  });

  test("what a load does now comes first", () => {
    expect(expectationsOf(bench, "M3")[0]).toBe("off");
    const check = bench.circuit.checks.find(({ load, expect: word }) => load === "M3" && word === "forward")!;
    const edit = setUp(bench, check.condition);
    const done = edit.ok ? apply(bench, edit.value) : edit;
    expect(done.ok && expectationsOf(done.value.bench, "M3")[0]).toBe("forward");
  });

  test("a part that is not there can do nothing", () => {
    expect(expectationsOf(bench, "M99")).toEqual([]);
    expect(loadsOf(null)).toEqual([]);
  });
});
