import { describe, expect, test } from "vitest";
import { compareTidiness, type DrawnWire, sumOf, tidinessOf, tidinessOfWires } from "../../core/circuit/tidiness.ts";
import { SMALL } from "../edit/given.ts";

/** A wire through these spots, from one terminal to another. */
function wire(ends: readonly [string, string], ...spots: readonly (readonly [number, number])[]): DrawnWire {
  return { ends, corners: spots.map(([x, y]) => ({ x, y })) };
}

const LEVEL = wire(["A.1", "B.1"], [0, 5], [20, 5]);

describe("the figures of wires", () => {
  test("a straight wire has neither crossings nor bends, only its length", () => {
    expect(tidinessOfWires([LEVEL])).toEqual({ crossings: 0, bends: 0, length: 20 });
  });

  test("an upright wire through it is one crossing; corners are bends", () => {
    const stepped = wire(["C.1", "D.1"], [4, 0], [4, 10], [9, 10], [9, 0]);
    expect(tidinessOfWires([LEVEL, stepped])).toEqual({ crossings: 2, bends: 2, length: 45 });
  });

  test("a wire that ends on another's line from the side does not cross it", () => {
    expect(tidinessOfWires([LEVEL, wire(["C.1", "D.1"], [4, 0], [4, 5])]).crossings).toBe(0);
  });

  test("what wires of one terminal share is no crossing, but where they part and meet again there is one", () => {
    const mate = wire(["A.1", "C.1"], [0, 5], [8, 5], [8, 12]);
    expect(tidinessOfWires([LEVEL, mate]).crossings).toBe(0);
    const back = wire(["A.1", "C.1"], [0, 5], [8, 5], [8, 12], [14, 12], [14, 0]);
    expect(tidinessOfWires([LEVEL, back]).crossings).toBe(1);
  });

  test("wires of different terminals that lie on each other count as crossing", () => {
    expect(tidinessOfWires([LEVEL, wire(["C.1", "D.1"], [4, 0], [4, 5], [9, 5], [9, 9])]).crossings).toBe(1);
    expect(tidinessOfWires([LEVEL, wire(["C.1", "D.1"], [20, 5], [30, 5])]).crossings).toBe(0);
  });
});

describe("the figures of a page", () => {
  test("are those of its wires as they are drawn", () => {
    const { broken, bends, length } = tidinessOf(SMALL, "p1");
    expect(broken).toBe(0);
    expect(bends).toBeGreaterThan(0);
    expect(length).toBeGreaterThan(0);
    expect(tidinessOf(SMALL, "p9")).toEqual({ broken: 0, crossings: 0, bends: 0, length: 0 });
  });

  test("a wire across the bar of a long splice is a crossing, in whatever turn the splice stands", () => {
    const bar = { id: "SP9", kind: "splice", settings: { legs: 5, pitch: 15 } };
    const wires = [{ id: "W90", from: "F1.1", to: "G1.-" }];
    const crossings = (turn: 0 | 90, place: { x: number; y: number }, bend: readonly [number, number][]) => {
      const parts = { ...SMALL.placement.parts, SP9: { page: "p1", ...place, ...(turn && { turn }) } };
      const placement = { parts, wires: { W90: bend } };
      return tidinessOf({ ...SMALL, parts: [...SMALL.parts, bar], wires, placement }, "p1").crossings;
    };
    expect(
      crossings(0, { x: 40, y: 60 }, [
        [50, 20],
        [50, 70],
      ]),
    ).toBe(1);
    expect(
      crossings(90, { x: 60, y: 30 }, [
        [50, 40],
        [80, 40],
        [80, 85],
      ]),
    ).toBe(1);
    expect(
      crossings(0, { x: 40, y: 60 }, [
        [30, 20],
        [30, 70],
      ]),
    ).toBe(0);
  });

  test("a wire that finds no way is counted as broken", () => {
    const { G1, ...others } = SMALL.placement.parts;
    const walled = { ...SMALL, placement: { wires: {}, parts: { ...others, G1: { ...G1!, ...others.F1! } } } };
    expect(tidinessOf(walled, "p1").broken).toBeGreaterThan(0);
  });

  test("broken wires weigh most, then crossings and bends alike, then length", () => {
    const figures = { broken: 0, crossings: 3, bends: 4, length: 100 };
    expect(sumOf(figures)).toBe(7);
    expect(compareTidiness(figures, { ...figures, broken: 1, crossings: 0, bends: 0 })).toBeLessThan(0);
    expect(compareTidiness(figures, { ...figures, crossings: 4, bends: 3 })).toBe(0);
    expect(compareTidiness(figures, { ...figures, crossings: 4, length: 10 })).toBeLessThan(0);
    expect(compareTidiness(figures, { ...figures, length: 101 })).toBeLessThan(0);
  });
});
