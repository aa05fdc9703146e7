import { LuDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import type { Element, Network } from "../../core/solve/element.ts";
import { compile } from "../../core/solve/pattern.ts";
import { Solver } from "../../core/solve/solver.ts";
import { kirchhoff } from "./kirchhoff.ts";
import { harnessOf, randomNetwork, stream } from "./randomNetwork.ts";

/** A connected network of resistors and sources, from a seed. */
function linearNetwork(seed: number): Network {
  const next = stream(seed);
  const nodeCount = 3 + Math.floor(next() * 30);
  const elements: Element[] = [{ law: "source", a: 1, b: 0, volts: 12, ohms: 0.01 }];
  for (let node = 1; node < nodeCount; node++) {
    const other = Math.floor(next() * node);
    elements.push({ law: "resistor", a: node, b: other, ohms: 10 ** (next() * 4 - 2) });
  }
  for (let extra = 0; extra < nodeCount; extra++) {
    const [a, b] = [Math.floor(next() * nodeCount), Math.floor(next() * nodeCount)];
    if (a === b) continue;
    const ohms = 10 ** (next() * 4 - 2);
    elements.push(next() < 0.1 ? { law: "source", a, b, volts: 24 * next(), ohms } : { law: "resistor", a, b, ohms });
  }
  return { nodeCount, elements };
}

/** The nodal matrix and right-hand side without the reference, dense. */
function dense({ nodeCount, elements }: Network): { matrix: Matrix; amps: Matrix } {
  const matrix = Matrix.zeros(nodeCount - 1, nodeCount - 1);
  const amps = Matrix.zeros(nodeCount - 1, 1);
  const add = (row: number, column: number, value: number): void => {
    if (row > 0 && column > 0) matrix.set(row - 1, column - 1, matrix.get(row - 1, column - 1) + value);
  };
  for (const element of elements) {
    if (element.law !== "resistor" && element.law !== "source") continue;
    const { a, b, ohms } = element;
    const siemens = 1 / ohms;
    add(a, a, siemens);
    add(b, b, siemens);
    add(a, b, -siemens);
    add(b, a, -siemens);
    if (element.law !== "source") continue;
    if (a > 0) amps.set(a - 1, 0, amps.get(a - 1, 0) + siemens * element.volts);
    if (b > 0) amps.set(b - 1, 0, amps.get(b - 1, 0) - siemens * element.volts);
  }
  return { matrix, amps };
}

describe("against a dense solve of ml-matrix", () => {
  it.each(Array.from({ length: 60 }, (_, seed) => seed))("linear network %i has the same volts", (seed) => {
    const network = linearNetwork(seed);
    const solver = new Solver(compile(network));
    expect(solver.solve().converged).toBe(true);
    const { matrix, amps } = dense(network);
    const volts = new LuDecomposition(matrix).solve(amps);
    for (let node = 1; node < network.nodeCount; node++)
      expect(solver.volts(node)).toBeCloseTo(volts.get(node - 1, 0), 9);
  });

  it.each(Array.from({ length: 20 }, (_, seed) => seed))(
    "linear network %i has the same ohms of source at every node",
    (seed) => {
      const network = linearNetwork(seed);
      const solver = new Solver(compile(network));
      solver.solve();
      const ohms = solver.sourceOhms();
      const inverse = new LuDecomposition(dense(network).matrix).solve(Matrix.eye(network.nodeCount - 1));
      for (let node = 1; node < network.nodeCount; node++) {
        const exact = inverse.get(node - 1, node - 1);
        expect(Math.abs(ohms[node]! - exact) / exact).toBeLessThan(1e-9);
      }
    },
  );
});

describe("floating parts", () => {
  const network: Network = {
    nodeCount: 7,
    elements: [
      { law: "source", a: 1, b: 0, volts: 12, ohms: 0.01 },
      { law: "resistor", a: 1, b: 2, ohms: Number.POSITIVE_INFINITY },
      { law: "resistor", a: 2, b: 3, ohms: 1 },
      { law: "joint", a: 3, b: 4 },
      { law: "lamp", a: 5, b: 6, ratedVolts: 12, ratedAmps: 2 },
      { law: "resistor", a: 5, b: 0, ohms: 1e9 },
    ],
  };

  it("are found exactly, and a gigohm is not floating", () => {
    const solver = new Solver(compile(network));
    solver.solve();
    expect([1, 2, 3, 4, 5, 6].map((node) => solver.isFloating(node))).toEqual([false, true, true, true, false, false]);
    expect(solver.sourceOhms()[3]).toBe(Number.POSITIVE_INFINITY);
    expect(solver.ohmsBetween(2, 4)).toBeCloseTo(1, 12);
    expect(solver.ohmsBetween(2, 1)).toBe(Number.POSITIVE_INFINITY);
  });

  it("come alive when a contact closes and leave no phantom behind when it opens", () => {
    const solver = new Solver(compile(network));
    solver.solve();
    solver.setOhms(1, 0.02);
    solver.solve();
    expect(solver.volts(4)).toBeCloseTo(12, 9);
    solver.setOhms(1, Number.POSITIVE_INFINITY);
    solver.solve();
    expect(solver.isFloating(4)).toBe(true);
  });
});

describe("changing one thing at a time", () => {
  it.each([50, 200, 1000])("gives the same volts as a fresh solver, on a harness of %i nodes", (nodes) => {
    const { network, contacts } = harnessOf(nodes, 7);
    const solver = new Solver(compile(network));
    solver.solve();
    const next = stream(nodes);
    const elements = [...network.elements];
    for (let step = 0; step < 60; step++) {
      const contact = contacts[Math.floor(next() * contacts.length)]!;
      const ohms = next() < 0.5 ? Number.POSITIVE_INFINITY : 0.01;
      elements[contact] = { ...elements[contact]!, law: "resistor", ohms };
      solver.setElement(contact, elements[contact]!);
      expect(solver.solve().converged).toBe(true);
    }
    const fresh = new Solver(compile({ ...network, elements }));
    fresh.solve();
    const ohms = fresh.sourceOhms();
    for (let node = 1; node < network.nodeCount; node++) {
      expect(solver.isFloating(node)).toBe(fresh.isFloating(node));
      if (ohms[node]! < 1000) expect(Math.abs(solver.volts(node) - fresh.volts(node))).toBeLessThan(1e-6);
    }
  });
});

describe("5,000 random networks, each with three throws", () => {
  it("all find an operating point whose currents add up to 1e-9 A, beside the last digits of the volts", () => {
    const unsolved: number[] = [];
    const unbalanced: { seed: number; worst: number }[] = [];
    for (let seed = 0; seed < 5000; seed++) {
      const { network, contacts } = randomNetwork(seed);
      const solver = new Solver(compile(network));
      const next = stream(seed);
      const elements = [...network.elements];
      for (let step = 0; step < 4; step++) {
        if (step > 0 && contacts.length > 0) {
          const contact = contacts[Math.floor(next() * contacts.length)]!;
          const ohms = next() < 0.5 ? Number.POSITIVE_INFINITY : 0.005;
          elements[contact] = { ...elements[contact]!, law: "resistor", ohms };
          solver.setElement(contact, elements[contact]!);
        }
        if (!solver.solve().converged) unsolved.push(seed);
        const { worst, digits } = kirchhoff(network, elements, solver);
        if (worst > 1e-9 + digits) unbalanced.push({ seed, worst });
      }
    }
    expect(unsolved).toEqual([]);
    expect(unbalanced).toEqual([]);
  });
});

describe("hard cases", () => {
  const solved = (elements: readonly Element[], nodeCount: number): Solver => {
    const solver = new Solver(compile({ nodeCount, elements }));
    expect(solver.solve().converged).toBe(true);
    return solver;
  };
  const battery: Element = { law: "source", a: 1, b: 0, volts: 12.6, ohms: 0.005 };
  const lamp = { law: "lamp", ratedVolts: 12, ratedAmps: 1.75 } as const;
  const diode = { law: "diode", saturationAmps: 1e-9, emissionVolts: 0.045 } as const;

  it("a dead short carries battery volts over all ohms", () => {
    expect(solved([battery, { law: "resistor", a: 1, b: 0, ohms: 0.001 }], 2).amps(1)).toBeCloseTo(2100, 6);
  });

  it("two lamps in series share alike", () => {
    expect(solved([battery, { ...lamp, a: 1, b: 2 }, { ...lamp, a: 2, b: 0 }], 3).volts(2)).toBeCloseTo(6.3, 2);
  });

  it("a lamp behind a reverse diode stays dark", () => {
    const solver = solved([battery, { ...diode, a: 2, b: 1 }, { ...lamp, a: 2, b: 0 }], 3);
    expect(Math.abs(solver.amps(2))).toBeLessThan(2e-9);
  });

  it("two feeds through diodes give the higher, less its drop", () => {
    const other: Element = { law: "source", a: 3, b: 0, volts: 14.4, ohms: 0.005 };
    const solver = solved(
      [battery, other, { ...diode, a: 1, b: 2 }, { ...diode, a: 3, b: 2 }, { ...lamp, a: 2, b: 0 }],
      4,
    );
    expect(solver.volts(2)).toBeGreaterThan(13.3);
    expect(solver.amps(2)).toBeLessThan(1e-9);
  });

  it("a regulated source holds its volts, gives way at its limit, and blocks above", () => {
    const regulated = { law: "regulated", a: 2, b: 0, volts: 14.2, ohms: 0.01, maxAmps: 90 } as const;
    const with_ = (load: number) =>
      solved(
        [
          regulated,
          { law: "resistor", a: 2, b: 0, ohms: load },
          battery,
          { law: "resistor", a: 1, b: 2, ohms: Number.POSITIVE_INFINITY },
        ],
        3,
      );
    expect(with_(1).volts(2)).toBeCloseTo(14.2 - 0.14, 2);
    expect(with_(0.05).amps(0)).toBeCloseTo(-90, 6);
    const pushed = solved([regulated, { law: "source", a: 2, b: 0, volts: 15, ohms: 0.1 }], 3);
    expect(pushed.amps(0)).toBe(0);
  });

  it("two motors in series run on half the volts each", () => {
    const motor = { law: "motor", ohms: 1.2, frictionAmps: 2.4, speedOhms: 12 } as const;
    const solver = solved([battery, { ...motor, a: 1, b: 2 }, { ...motor, a: 2, b: 0 }], 3);
    expect(solver.volts(2)).toBeCloseTo(solver.volts(1) / 2, 9);
  });
});
