import { describe, expect, test } from "vitest";
import { benchFor } from "../../core/edit/bench.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import type { Action } from "../../renderer/state/action.ts";
import { benchText, isBenchLost, readBench } from "../../renderer/state/benchText.ts";
import { reduceBench } from "../../renderer/state/reduceBench.ts";
import { got, LATCH, SMALL, VENTS } from "../edit/given.ts";
import { openAfter } from "./stage.ts";

test("what was kept on a bench and cannot be read is lost, and nothing else is", () => {
  const text = benchText(openAfter(VENTS));
  expect(isBenchLost({ bench: text, benchVersion: 3 })).toBe(false);
  // Nothing was kept yet.
  expect(isBenchLost({ bench: null, benchVersion: 0 })).toBe(false);
  for (const bench of [null, "{", "[]", JSON.stringify({ version: 99 })])
    expect(isBenchLost({ bench, benchVersion: 1 })).toBe(true);
});

const STORED = { id: "c1", version: 3, benchVersion: 2 };
const WORKED: readonly Action[] = [
  { do: "throw", control: "S1", position: "on" },
  { do: "make", command: (bench) => plantFault(bench, "W13:ohms=20") },
  { do: "make", command: (bench) => chooseComplaint(bench, "rear-open-own") },
  { do: "show-page", page: "p3" },
  { do: "look-at", page: "p3", viewport: { scale: 2, x: -10, y: 5 } },
  { do: "open-panel", panel: "table" },
  { do: "show-table", connector: "X6" },
];

describe("a bench as text", () => {
  test("comes back as it was, history and sight included", () => {
    const open = openAfter(VENTS, ...WORKED, { do: "undo" });
    const back = readBench(VENTS, benchText(open), STORED);
    expect(back.desk.bench).toEqual(open.desk.bench);
    expect(back.desk.history).toEqual(open.desk.history);
    expect(back).toMatchObject({
      ...STORED,
      page: "p3",
      viewports: { p3: { scale: 2, x: -10, y: 5 } },
      panel: "table",
      connector: "X6",
      isTrial: false,
    });
  });

  test("undo and redo go on where they were", () => {
    const back = readBench(VENTS, benchText(openAfter(VENTS, ...WORKED)), STORED);
    const undone = got(reduceBench(back, { do: "undo" }));
    expect(undone.desk.bench.complaint).toBeNull();
    expect(got(reduceBench(undone, { do: "redo" })).desk.bench).toEqual(back.desk.bench);
    const empty = ["undo", "undo"].reduce((open) => got(reduceBench(open, { do: "undo" })), undone);
    expect(empty.desk.bench.condition).toEqual({});
    expect(empty.desk.bench.faults).toEqual([]);
  });

  test("a gesture of today does not join one that was made before", () => {
    const hold = { do: "hold", control: "S6", position: "open" } as const;
    const back = readBench(VENTS, benchText(openAfter(VENTS, hold, { do: "let-go", control: "S6" })), STORED);
    expect(got(reduceBench(back, hold)).desk.history.done).toHaveLength(2);
  });

  test("what a finger held has sprung back, what was pinned stays", () => {
    const hold = { do: "hold", control: "S6", position: "open" } as const;
    const pinned = { do: "throw", control: "S5", position: "close" } as const;
    const back = readBench(VENTS, benchText(openAfter(VENTS, pinned, hold)), STORED);
    expect(back.desk.bench.condition.set).toEqual({ S5: "close" });
    expect(back.held).toEqual([]);
  });

  test("a latched relay stays pulled in", () => {
    const open = openAfter(LATCH, { do: "hold", control: "S1", position: "in" }, { do: "let-go", control: "S1" });
    const back = readBench(LATCH, benchText(open), STORED);
    expect(back.desk.bench.before).toEqual(open.desk.bench.before);
  });

  test("it does not hold the circuit", () => {
    expect(benchText(openAfter(VENTS))).not.toContain(VENTS.title);
  });

  test("what was a trial is one again", () => {
    const trial = { ...openAfter(VENTS), isTrial: true };
    expect(readBench(VENTS, benchText(trial), STORED).isTrial).toBe(true);
  });
});

describe("a text that does not fit", () => {
  const plain = readBench(VENTS, null, STORED);
  const withBench = (bench: unknown, rest: object = {}) => JSON.stringify({ version: 1, bench, ...rest });

  test.each([
    ["nothing", ""],
    ["no JSON", "{"],
    ["a list", "[]"],
    ["a number", "7"],
    ["null", "null"],
    ["a newer version", JSON.stringify({ version: 2, bench: { complaint: "rear-open-own" } })],
    ["a bench that is none", withBench(5)],
    ["a history that is none", withBench({}, { history: "{" })],
    ["a condition that is none", withBench({ condition: 5 })],
    ["a control that is not there", withBench({ condition: { set: { S99: "on" } } })],
    ["faults that are none", withBench({ faults: [5, { target: "W999", mode: "open" }] })],
    ["a complaint that is no check", withBench({ complaint: "nothing" })],
    ["a before without its states", withBench({ before: { condition: {} } })],
    ["sight of what is not there", withBench({}, { sight: { page: "p99", panel: "cellar", connector: 7 } })],
    ["a view of no size", withBench({}, { sight: { viewports: { p1: { scale: 0, x: 0, y: 0 } } } })],
    ["a hold that is none", withBench({}, { sight: { held: [5, "S6", "S99"] } })],
    ["a view that is none", withBench({}, { sight: { viewports: { p1: null } } })],
  ])("%s gives a plain start", (_, text) => {
    const open = readBench(VENTS, text, STORED);
    expect(open).toEqual(plain);
    expect(open.desk.bench).toEqual(benchFor(VENTS));
  });

  test("leaves out only what does not fit", () => {
    const text = withBench({ condition: { set: { S1: "on" } }, complaint: "nothing" });
    expect(readBench(VENTS, text, STORED).desk.bench).toMatchObject({
      condition: { set: { S1: "on" } },
      complaint: null,
    });
  });

  test("of another circuit opens all the same", () => {
    const text = benchText(openAfter(VENTS, ...WORKED));
    const open = readBench(SMALL, text, STORED);
    expect(open.desk.bench).toMatchObject({ circuit: SMALL, faults: [], complaint: null });
    expect(SMALL.pages.map(({ id }) => id)).toContain(open.page);
  });
});
