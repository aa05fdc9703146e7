import { describe, expect, it } from "vitest";
import type { Element } from "../../core/solve/element.ts";
import { compile } from "../../core/solve/pattern.ts";
import { Solver } from "../../core/solve/solver.ts";

/**
 * Published direct-current problems. LEC: Kuphaldt, "Lessons in Electric Circuits", volume I. NEETS-1: US Navy, NEETS
 * Module 1, NAVEDTRA 14173 (1998). OS: OpenStax, "College Physics 2e", by module. Numbers only.
 */

/** A source without ohms of its own, as a textbook has it: so stiff that no printed digit sees it. */
const IDEAL = 1e-7;

const source = (plus: number, minus: number, volts: number, ohms = IDEAL): Element => ({
  law: "source",
  a: plus,
  b: minus,
  volts,
  ohms,
});
const resistor = (a: number, b: number, ohms: number): Element => ({ law: "resistor", a, b, ohms });

/** Solves a network; `volts(node)` and `amps(index)` of it, the index as the elements are listed. */
function solve(...elements: readonly Element[]): Solver {
  const nodeCount = Math.max(...elements.flatMap(({ a, b }) => [a, b])) + 1;
  const solver = new Solver(compile({ nodeCount, elements }));
  expect(solver.solve().converged).toBe(true);
  return solver;
}

/** Resistors one after the other from node 1 to node 0, behind a source: the source is element 0. */
function series(volts: number, ...ohms: readonly number[]): Solver {
  return solve(
    source(1, 0, volts),
    ...ohms.map((each, index) => resistor(index + 1, index === ohms.length - 1 ? 0 : index + 2, each)),
  );
}

/** Resistors side by side across a source, which is element 0. */
function parallel(volts: number, ...ohms: readonly number[]): Solver {
  return solve(source(1, 0, volts), ...ohms.map((each) => resistor(1, 0, each)));
}

const drops = (solver: Solver, count: number): number[] =>
  Array.from({ length: count }, (_, index) => solver.voltsAcross(index + 1));
const currents = (solver: Solver, count: number): number[] =>
  Array.from({ length: count }, (_, index) => solver.amps(index + 1));
const total = (solver: Solver): number => -solver.amps(0);

/** Numbers agree to the digits printed: half a unit of the last one. */
function printed(found: readonly number[], wanted: readonly number[], digits: number): void {
  for (const [index, value] of wanted.entries())
    expect(Math.abs(found[index]! - value)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-7);
}

describe("Lessons in Electric Circuits, volume I", () => {
  it("D1, chapter 5: 9 V over 3k, 10k, 5k in series", () => {
    const solver = series(9, 3000, 10_000, 5000);
    printed(drops(solver, 3), [1.5, 5.0, 2.5], 3);
    printed([total(solver) * 1e3], [0.5], 3);
  });

  it("D2, chapter 5: 9 V over 10k, 2k, 1k side by side", () => {
    const solver = parallel(9, 10_000, 2000, 1000);
    printed(
      currents(solver, 3).map((amps) => amps * 1e3),
      [0.9, 4.5, 9],
      3,
    );
    printed([total(solver) * 1e3], [14.4], 3);
  });

  it("D3, chapter 7: 24 V over 100 and 250 side by side, then 350 and 200", () => {
    const solver = solve(
      source(1, 0, 24),
      resistor(1, 2, 100),
      resistor(1, 2, 250),
      resistor(2, 0, 350),
      resistor(2, 0, 200),
    );
    printed([solver.voltsAcross(1)], [8.6275], 4);
    printed([solver.voltsAcross(3)], [15.373], 3);
    printed(
      currents(solver, 4).map((amps) => amps * 1e3),
      [86.275, 34.51, 43.922, 76.863],
      3,
    );
    printed([total(solver) * 1e3, 24 / total(solver)], [120.78, 198.7], 2);
  });

  it("D4, chapter 5, component failure: 100, 300, 50 in series with the middle one shorted and open", () => {
    const healthy = series(9, 100, 300, 50);
    printed([...drops(healthy, 3), total(healthy) * 1e3], [2, 6, 1, 20], 3);
    const shorted = series(9, 100, IDEAL, 50);
    printed([...drops(shorted, 3), total(shorted) * 1e3], [6, 0, 3, 60], 3);
    const open = series(9, 100, Number.POSITIVE_INFINITY, 50);
    printed([...drops(open, 3), total(open)], [0, 9, 0, 0], 6);
  });

  it("D5, chapter 5, component failure: 90, 45, 180 side by side with the middle one open", () => {
    const healthy = parallel(9, 90, 45, 180);
    printed(
      [...currents(healthy, 3), total(healthy)].map((amps) => amps * 1e3),
      [100, 200, 50, 350],
      3,
    );
    printed([9 / total(healthy)], [25.714], 3);
    const open = parallel(9, 90, Number.POSITIVE_INFINITY, 180);
    printed(
      [...currents(open, 3), total(open)].map((amps) => amps * 1e3),
      [100, 0, 50, 150],
      3,
    );
    printed([9 / total(open)], [60], 3);
  });

  it("D6, chapter 10: 28 V by 4 ohm and 7 V by 1 ohm onto 2 ohm; Thevenin 11.2 V, 0.8 ohm", () => {
    const solver = solve(source(1, 0, 28), source(3, 0, 7), resistor(1, 2, 4), resistor(3, 2, 1), resistor(2, 0, 2));
    printed([solver.volts(2), solver.amps(2), solver.amps(4), solver.amps(1)], [8, 5, 4, 1], 5);
    printed([solver.voltsAcross(2), solver.voltsAcross(4), -solver.voltsAcross(3)], [20, 8, 1], 5);
    const open = solve(source(1, 0, 28), source(3, 0, 7), resistor(1, 2, 4), resistor(3, 2, 1));
    printed([open.volts(2), open.sourceOhms()[2]!, open.volts(2) / open.sourceOhms()[2]!], [11.2, 0.8, 14], 5);
  });

  it("D8, chapter 10: an unbalanced bridge on 10 V", () => {
    const solver = solve(
      source(1, 0, 10),
      resistor(1, 2, 12),
      resistor(1, 3, 18),
      resistor(2, 3, 6),
      resistor(2, 0, 18),
      resistor(3, 0, 12),
    );
    printed(drops(solver, 5), [4.706, 5.294, 0.588, 5.294, 4.706], 3);
  });

  it("D10, chapter 8: 24 V over two 250 M, a 10 M meter on the lower", () => {
    const arms = [source(1, 0, 24), resistor(1, 2, 250e6), resistor(2, 0, 250e6)];
    printed([solve(...arms).volts(2)], [12], 6);
    printed([solve(...arms, resistor(2, 0, 10e6)).volts(2)], [0.8889], 4);
  });

  it("D11, chapter 11: 10 V with 0.2 ohm inside, on 1 ohm and shorted", () => {
    const inside = source(1, 0, 10, 0.2);
    printed([solve(inside, resistor(1, 0, 1)).amps(1)], [8.333], 3);
    printed([solve(inside, resistor(1, 0, IDEAL)).amps(1)], [50], 3);
  });
});

describe("NEETS Module 1", () => {
  it("D12, figures 3-61 and 3-62: 20 in series with 100 and 25 side by side, each fault in turn", () => {
    const at = (r1: number, r2: number, r3: number) =>
      solve(source(1, 0, 120), resistor(1, 2, r1), resistor(2, 0, r2), resistor(2, 0, r3));
    const open = Number.POSITIVE_INFINITY;
    const faults = [at(20, 100, 25), at(open, 100, 25), at(20, 100, open), at(IDEAL, 100, 25), at(20, 100, IDEAL)];
    printed(faults.map(total), [3, 0, 1, 6, 6], 3);
    printed(
      faults.map((solver) => solver.volts(2)),
      [60, 0, 100, 120, 0],
      3,
    );
  });

  it("D13, figure 3-54: 60 V over 8 and then 20 and 30 side by side", () => {
    const solver = solve(source(1, 0, 60), resistor(1, 2, 8), resistor(2, 0, 20), resistor(2, 0, 30));
    printed([total(solver), ...drops(solver, 2), solver.amps(2), solver.amps(3)], [3, 24, 36, 1.8, 1.2], 6);
    printed(
      [1, 2, 3].map((index) => solver.amps(index) * solver.voltsAcross(index)),
      [72, 64.8, 43.2],
      4,
    );
  });

  it("D14, figure 3-55: 300 V over 1k and then 300 + 100 beside 400, and with other values", () => {
    const at = (first: number, beside: number) =>
      solve(
        source(1, 0, 300),
        resistor(1, 2, 1000),
        resistor(2, 3, first),
        resistor(3, 0, 100),
        resistor(2, 0, beside),
      );
    const drawn = at(300, 400);
    printed([total(drawn) * 1e3, drawn.volts(2), drawn.amps(2) * 1e3, drawn.voltsAcross(2)], [250, 50, 125, 37.5], 3);
    const other = at(900, 1000);
    printed([total(other) * 300, other.voltsAcross(3)], [60, 10], 3);
  });

  it("D16, figure 3-50: 180 V over 20, 30, 18, 18, 18 side by side", () => {
    const solver = parallel(180, 20, 30, 18, 18, 18);
    printed(
      [...currents(solver, 5), total(solver), 180 / total(solver), 180 * total(solver)],
      [9, 6, 10, 10, 10, 45, 4, 8100],
      3,
    );
  });

  it("D17, figure 3-63: 100 V over four of 50 ohm, with ground at the end and moved up", () => {
    const end = solve(
      source(4, 0, 100),
      resistor(1, 0, 50),
      resistor(2, 1, 50),
      resistor(3, 2, 50),
      resistor(4, 3, 50),
    );
    printed(
      [1, 2, 3, 4].map((node) => end.volts(node)),
      [25, 50, 75, 100],
      6,
    );
    printed([total(end)], [0.5], 6);
    const moved = solve(
      source(4, 1, 100),
      resistor(0, 1, 50),
      resistor(2, 0, 50),
      resistor(3, 2, 50),
      resistor(4, 3, 50),
    );
    printed(
      [1, 2, 3, 4].map((node) => moved.volts(node)),
      [-25, 25, 50, 75],
      6,
    );
  });

  it("D19, figure 3-64: 100 V over 75, then 275 beside a load of 25 V and 910 mA", () => {
    const solver = solve(source(1, 0, 100), resistor(1, 2, 75), resistor(2, 0, 275), resistor(2, 0, 25 / 0.91));
    printed([solver.volts(2), total(solver)], [25, 1], 1);
    printed([solver.volts(2)], [24.983], 3);
  });

  it("D21, pages 3-31 and 3-32: 50 V over 10, 10, 50, 30", () => {
    const solver = series(50, 10, 10, 50, 30);
    printed([...drops(solver, 4), total(solver), 50 * total(solver)], [5, 5, 25, 15, 0.5, 25], 5);
  });

  it("D22, figure 3-32: the whole supply lies across a blown fuse", () => {
    const solver = series(100, 20, Number.POSITIVE_INFINITY, 30);
    printed(drops(solver, 3), [0, 100, 0], 6);
  });
});

describe("OpenStax College Physics", () => {
  it("D23, m42356: 12 V over 1, 6, 13 in series, side by side, and mixed", () => {
    const row = series(12, 1, 6, 13);
    printed([total(row), ...drops(row, 3), 12 * total(row)], [0.6, 0.6, 3.6, 7.8, 7.2], 3);
    printed([total(parallel(12, 1, 6, 13))], [14.92], 2);
    const mixed = solve(source(1, 0, 12), resistor(1, 2, 1), resistor(2, 0, 6), resistor(2, 0, 13));
    printed([total(mixed), mixed.voltsAcross(1), mixed.volts(2), mixed.amps(2)], [2.35, 2.35, 9.65, 1.61], 2);
  });

  it("D25, m42357: 12 V with 0.1 ohm inside on 10 and 0.5 ohm; with 0.5 ohm inside on 0.5 ohm", () => {
    const on = (inside: number, load: number) => solve(source(1, 0, 12, inside), resistor(1, 0, load));
    printed([on(0.1, 10).amps(1)], [1.188], 3);
    printed([on(0.1, 10).volts(1)], [11.9], 1);
    printed(
      [on(0.1, 0.5).amps(1), on(0.1, 0.5).volts(1), on(0.5, 0.5).amps(1), on(0.5, 0.5).volts(1)],
      [20, 10, 12, 6],
      1,
    );
  });

  it("D27, m42357: a bulb of 2.30 ohm on 1.58 V with 0.1 ohm inside", () => {
    const solver = solve(source(1, 0, 1.58, 0.1), resistor(1, 0, 2.3));
    printed([solver.amps(1), solver.amps(1) * solver.volts(1)], [0.658, 0.997], 3);
  });

  it("D28, m42360: a voltmeter of 1.00k on 1.585 V with 0.1 ohm inside", () => {
    const solver = solve(source(1, 0, 1.585, 0.1), resistor(1, 0, 1000));
    printed([solver.amps(1) * 1e3], [1.58], 2);
    printed([solver.volts(1)], [1.5848], 4);
  });

  it("D29, m42362: a bridge balances where Rx = R3 R2 / R1", () => {
    const solver = solve(
      source(1, 0, 6),
      resistor(1, 2, 1000),
      resistor(2, 0, 625),
      resistor(1, 3, 2500),
      resistor(3, 0, 1562.5),
      resistor(2, 3, 50),
    );
    printed([solver.amps(5) * 1e6], [0], 3);
  });
});
