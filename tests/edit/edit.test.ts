import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { benchFor } from "../../core/edit/bench.ts";
import type { Change } from "../../core/edit/change.ts";
import { apply, type Edit, joined } from "../../core/edit/edit.ts";
import { codeOf, expectSame, frozen, got, SMALL } from "./given.ts";

const BENCH = benchFor(SMALL);
const edit = (...changes: readonly Change[]): Edit => ({ name: "a test", changes });

/** One of every sort of change, on the small circuit. */
const CHANGES: readonly Change[] = [
  { change: "bench", field: "condition", value: { set: { S1: "on" }, apart: ["X1"] } },
  { change: "bench", field: "observed", value: { "wiper-on": "dead" } },
  { change: "bench", field: "complaint", value: "wiper-on" },
  { change: "bench", field: "faults", value: [{ target: "W2", mode: "open" }] },
  { change: "bench", field: "showFaults", value: false },
  { change: "circuit", field: "title", value: "Another" },
  { change: "circuit", field: "vehicle" },
  { change: "circuit", field: "revision", value: 3 },
  { change: "item", list: "parts", id: "G1", field: "label", value: "Second battery" },
  { change: "item", list: "parts", id: "G1", field: "label" },
  { change: "item", list: "parts", id: "F1", field: "settings" },
  { change: "item", list: "wires", id: "W3", field: "ohms" },
  { change: "item", list: "wires", id: "W5", field: "ohms", value: null },
  { change: "item", list: "checks", id: "wiper-on", field: "expect", value: "reverse" },
  { change: "add", list: "wires", at: 2, item: { id: "W10", from: "M1.1", to: "GP1.stud" } },
  { change: "add", list: "parts", at: 0, item: { id: "H1", kind: "horn" } },
  { change: "remove", list: "wires", id: "W9" },
  { change: "remove", list: "checks", id: "wiper-on" },
  { change: "entry", record: "places", key: "S1", value: { page: "p2", x: 1, y: 2, turn: 90 } },
  { change: "entry", record: "places", key: "S1" },
  { change: "entry", record: "bends", key: "W2" },
  { change: "entry", record: "bends", key: "W3", value: [[1, 2]], at: 0 },
  { change: "entry", record: "reach", key: "S1", value: { minutes: 2 }, at: 2 },
  { change: "entry", record: "reach", key: "M1.2", value: { minutes: 2 } },
];

describe("applying", () => {
  test.each(CHANGES.map((change) => [JSON.stringify(change), change] as const))("%s is undone exactly", (_, change) => {
    const before = frozen(BENCH);
    const { bench, inverse } = got(apply(BENCH, edit(change)));
    expect(bench).not.toEqual(BENCH);
    const { bench: back, inverse: again } = got(apply(bench, inverse));
    expectSame(back, BENCH);
    expect(got(apply(back, again)).bench).toEqual(bench);
    expect(BENCH).toEqual(before);
  });

  test("any changes after one another are undone exactly, by the one inverse", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...CHANGES), { maxLength: 8 }), (changes) => {
        const applied = apply(BENCH, edit(...changes));
        if (!applied.ok) return;
        expectSame(got(apply(applied.value.bench, applied.value.inverse)).bench, BENCH);
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  test("what is not touched is shared with the bench before", () => {
    const { bench } = got(apply(BENCH, edit(CHANGES[18]!)));
    expect(bench.circuit.parts).toBe(SMALL.parts);
    expect(bench.condition).toBe(BENCH.condition);
  });

  test.each<readonly [string, Change]>([
    ["edit-gone", { change: "item", list: "parts", id: "M9", field: "label", value: "x" }],
    ["edit-gone", { change: "remove", list: "wires", id: "W99" }],
    ["twice", { change: "add", list: "parts", at: 0, item: { id: "F1", kind: "fuse" } }],
    ["edit-place", { change: "add", list: "pages", at: 3, item: { id: "p9", title: "", widthMm: 1, heightMm: 1 } }],
    ["part-unknown", { change: "entry", record: "places", key: "M9", value: { page: "p1", x: 0, y: 0 } }],
    ["page-unknown", { change: "entry", record: "places", key: "M1", value: { page: "p9", x: 0, y: 0 } }],
    ["wire-unknown", { change: "entry", record: "bends", key: "W99", value: [] }],
    ["reach-unknown", { change: "entry", record: "reach", key: "M9", value: {} }],
    ["point-part", { change: "remove", list: "parts", id: "M1" }],
    ["point-connector", { change: "remove", list: "connectors", id: "X1" }],
    ["page-unknown", { change: "remove", list: "pages", id: "p2" }],
    ["access-unknown", { change: "remove", list: "access", id: "column" }],
    ["wire-unknown", { change: "remove", list: "wires", id: "W2" }],
    ["point-terminal", { change: "item", list: "wires", id: "W2", field: "from", value: "F1.9" }],
    ["part-terminals", { change: "item", list: "parts", id: "M1", field: "terminals", value: ["1", "2", "3"] }],
    ["part-kind", { change: "add", list: "parts", at: 0, item: { id: "Q1", kind: "no-such-kind" } }],
    ["part-unknown", { change: "item", list: "checks", id: "wiper-on", field: "load", value: "M9" }],
    [
      "condition-position",
      { change: "item", list: "parts", id: "S1", field: "positions", value: [{ name: "off", joins: [] }] },
    ],
    ["condition-control", { change: "bench", field: "condition", value: { set: { S9: "on" } } }],
    ["fault-target", { change: "bench", field: "faults", value: [{ target: "W99", mode: "open" }] }],
    ["no-check", { change: "bench", field: "complaint", value: "no-such" }],
    ["no-check", { change: "bench", field: "observed", value: { "no-such": "dead" } }],
  ])("refuses %s: %o", (code, change) => {
    const before = frozen(BENCH);
    expect(codeOf(apply(BENCH, edit(change)))).toBe(code);
    expect(BENCH).toEqual(before);
  });

  test("a part goes together with its wires, places and faults, and comes back with them", () => {
    const withFault = got(
      apply(BENCH, edit({ change: "bench", field: "faults", value: [{ target: "M1", mode: "seized" }] })),
    ).bench;
    const without = edit(
      { change: "bench", field: "faults", value: [] },
      { change: "remove", list: "wires", id: "W4" },
      { change: "remove", list: "wires", id: "W5" },
      { change: "entry", record: "places", key: "M1" },
      { change: "entry", record: "reach", key: "M1.1" },
      { change: "remove", list: "checks", id: "wiper-on" },
      { change: "remove", list: "parts", id: "M1" },
    );
    const applied = got(apply(withFault, without));
    expect(applied.bench.circuit.parts.map(({ id }) => id)).not.toContain("M1");
    expectSame(got(apply(applied.bench, applied.inverse)).bench, withFault);
    const forgotten = { ...without, changes: without.changes.slice(1) };
    expect(codeOf(apply(withFault, forgotten))).toBe("fault-target");
  });
});

describe("joining two edits", () => {
  test("does what both do, and its inverses joined undo both", () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...CHANGES), { minLength: 1, maxLength: 5 }),
        fc.array(fc.constantFrom(...CHANGES), { minLength: 1, maxLength: 5 }),
        (some, others) => {
          const first = apply(BENCH, edit(...some));
          if (!first.ok) return;
          const second = apply(first.value.bench, edit(...others));
          if (!second.ok) return;
          const both = got(apply(BENCH, joined(edit(...some), edit(...others))));
          expectSame(both.bench, second.value.bench);
          const back = joined(second.value.inverse, first.value.inverse);
          expectSame(got(apply(both.bench, back)).bench, BENCH);
        },
      ),
      { seed: 12, numRuns: 600 },
    );
  });

  test("sets a value again on what has gone and come back between", () => {
    const paint = (value: string): Change => ({ change: "item", list: "wires", id: "W9", field: "colour", value });
    const item = SMALL.wires.find(({ id }) => id === "W9")!;
    const again = edit(
      { change: "remove", list: "wires", id: "W9" },
      { change: "add", list: "wires", at: 8, item },
      paint("RD"),
    );
    const both = got(apply(BENCH, joined(edit(paint("BK")), again)));
    expect(both.bench.circuit.wires[8]?.colour).toBe("RD");
  });

  test("sets a value once, however often both set it", () => {
    const to = (x: number): Edit =>
      edit({ change: "entry", record: "places", key: "S1", value: { page: "p1", x, y: 0 } });
    const many = Array.from({ length: 50 }, (_, x) => to(x)).reduce(joined);
    expect(many.changes).toEqual(to(49).changes);
  });
});
