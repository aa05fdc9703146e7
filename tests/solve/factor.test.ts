import { describe, expect, it } from "vitest";
import type { Element, Network } from "../../core/solve/element.ts";
import { emptyFactor, refactor, touch } from "../../core/solve/factor.ts";
import { inverseDiagonal } from "../../core/solve/inverse.ts";
import { compile, type Pattern } from "../../core/solve/pattern.ts";
import { Solver } from "../../core/solve/solver.ts";
import { solveTriangles } from "../../core/solve/triangles.ts";
import { harnessOf, stream } from "./randomNetwork.ts";

/** A siemens for every element, some of them 0, over six powers of ten. */
function randomSiemens(pattern: Pattern, seed: number): Float64Array {
  const next = stream(seed);
  return Float64Array.from(pattern.placeOf, () => (next() < 0.2 ? 0 : 10 ** (next() * 6 - 2)));
}

describe("the factor", () => {
  it("is bit for bit the same, made anew or brought up to date one element at a time", () => {
    for (let seed = 0; seed < 20; seed++) {
      const pattern = compile(harnessOf(120, seed).network);
      const siemens = randomSiemens(pattern, seed);
      const kept = emptyFactor(pattern);
      refactor(pattern, kept, siemens);
      const next = stream(seed + 1000);
      for (let change = 0; change < 50; change++) {
        const e = Math.floor(next() * siemens.length);
        siemens[e] = next() < 0.4 ? 0 : 10 ** (next() * 6 - 2);
        touch(kept, pattern.placeOf[e]!);
        if (next() < 0.5) refactor(pattern, kept, siemens);
      }
      refactor(pattern, kept, siemens);
      const fresh = emptyFactor(pattern);
      refactor(pattern, fresh, siemens);
      for (const part of ["edge", "leak", "share", "ohms"] as const) expect(kept[part]).toEqual(fresh[part]);
      expect(kept.zeroPivots).toBe(fresh.zeroPivots);
    }
  });

  it("does again no more than the columns above what changed, and none where nothing did", () => {
    const { network } = harnessOf(200, 3);
    const pattern = compile(network);
    const siemens = randomSiemens(pattern, 3);
    const factor = emptyFactor(pattern);
    expect(refactor(pattern, factor, siemens)).toBeGreaterThan(pattern.unknowns * 0.9);
    expect(refactor(pattern, factor, siemens)).toBe(0);
    for (const [e, place] of pattern.placeOf.entries()) {
      if (place < 0) continue;
      let above = 0;
      for (let j = place < pattern.edges ? pattern.columnOf[place]! : place - pattern.edges; j >= 0; above++) {
        j = pattern.parentOf[j]!;
      }
      siemens[e] = siemens[e]! + 1;
      touch(factor, place);
      expect(refactor(pattern, factor, siemens)).toBe(above);
    }
  });

  it("gives by the selected inverse what one solve for each unknown gives", () => {
    for (let seed = 0; seed < 10; seed++) {
      const pattern = compile(harnessOf(100, seed).network);
      const siemens = randomSiemens(pattern, seed).map((value) => Math.max(value, 1e-6));
      const factor = emptyFactor(pattern);
      refactor(pattern, factor, siemens);
      const diagonal = inverseDiagonal(pattern, factor);
      for (let unknown = 0; unknown < pattern.unknowns; unknown++) {
        const amps = new Float64Array(pattern.unknowns);
        const volts = new Float64Array(pattern.unknowns);
        amps[unknown] = 1;
        solveTriangles(pattern, factor, amps, volts);
        expect(Math.abs(diagonal[unknown]! / volts[unknown]! - 1)).toBeLessThan(1e-13);
      }
    }
  });
});

describe("a contact", () => {
  /** A feed through a contact (element 1) onto two branches with milliohms and megohms beside each other. */
  const elements: readonly Element[] = [
    { law: "source", a: 1, b: 0, volts: 12.6, ohms: 0.007 },
    { law: "resistor", a: 1, b: 2, ohms: 0.005 },
    { law: "resistor", a: 2, b: 3, ohms: 0.0013 },
    { law: "resistor", a: 3, b: 0, ohms: 4.7 },
    { law: "resistor", a: 3, b: 4, ohms: 1e7 },
    { law: "resistor", a: 4, b: 0, ohms: 0.1 },
    { law: "resistor", a: 1, b: 4, ohms: 6800 },
  ];
  const network: Network = { nodeCount: 5, elements };
  const nodes = [1, 2, 3, 4];

  it("that opens and closes a hundred times leaves every volt as it was, to the last bit", () => {
    const solver = new Solver(compile(network));
    solver.solve();
    const closed = nodes.map((node) => solver.volts(node));
    solver.setOhms(1, Number.POSITIVE_INFINITY);
    solver.solve();
    const open = nodes.map((node) => solver.volts(node));
    for (let k = 0; k < 100; k++) {
      solver.setOhms(1, 0.005 + k);
      solver.solve();
      solver.setOhms(1, Number.POSITIVE_INFINITY);
      solver.solve();
      expect(nodes.map((node) => solver.volts(node))).toEqual(open);
    }
    solver.setOhms(1, 0.005);
    solver.solve();
    expect(nodes.map((node) => solver.volts(node))).toEqual(closed);
  });

  it("costs nothing to ask again when nothing changed", () => {
    const solver = new Solver(compile(network));
    solver.solve();
    const { passes, columns } = { ...solver.work };
    solver.setOhms(1, 0.005);
    expect(solver.solve().passes).toBe(0);
    expect(solver.work).toEqual({ passes, columns });
  });
});

describe("compiling", () => {
  it("keeps ideal joints out of the unknowns, and the reference the reference however it is joined", () => {
    const joint = (a: number, b: number): Element => ({ law: "joint", a, b });
    const lamp: Element = { law: "lamp", a: 5, b: 2, ratedVolts: 12, ratedAmps: 1 };
    const pattern = compile({ nodeCount: 7, elements: [joint(3, 2), joint(2, 0), joint(4, 5), joint(5, 4), lamp] });
    expect([...pattern.unknownOf].map((unknown) => unknown < 0)).toEqual([
      true,
      false,
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(pattern.unknownOf[4]).toBe(pattern.unknownOf[5]);
    expect(pattern.unknowns).toBe(3);
  });

  it("refuses an end that is no node, as a broken invariant", () => {
    const astray: Element = { law: "resistor", a: 0, b: 3, ohms: 1 };
    expect(() => compile({ nodeCount: 3, elements: [astray] })).toThrow("broken invariant");
  });

  it("orders and lays out 20,000 nodes so that the factor stays near three edges a node", () => {
    const pattern = compile(harnessOf(20_000, 7).network);
    expect(pattern.edges / pattern.unknowns).toBeLessThan(3);
    expect(pattern.target.length / pattern.unknowns).toBeLessThan(8);
  });
});
