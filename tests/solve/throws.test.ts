import { describe, expect, it } from "vitest";
import type { Element, Network } from "../../core/solve/element.ts";
import { compile } from "../../core/solve/pattern.ts";
import { Solver } from "../../core/solve/solver.ts";
import { kirchhoff } from "./kirchhoff.ts";
import { harnessOf, randomNetwork, stream } from "./randomNetwork.ts";

/** A network whose contacts are thrown by lot, and its elements as they stand. */
function thrown({ network, contacts }: { network: Network; contacts: readonly number[] }, seed: number) {
  const next = stream(seed);
  const elements: Element[] = [...network.elements];
  const throwOne = (...solvers: readonly Solver[]): void => {
    const contact = contacts[Math.floor(next() * contacts.length)]!;
    const ohms = next() < 0.5 ? Number.POSITIVE_INFINITY : 0.005;
    elements[contact] = { ...elements[contact]!, law: "resistor", ohms };
    for (const solver of solvers) solver.setOhms(contact, ohms);
  };
  return { elements, throwOne };
}

const voltsIn = (solver: Solver, { nodeCount }: Network) =>
  Array.from({ length: nodeCount }, (_, node) => solver.volts(node));

describe("10,000 throws of one solver", () => {
  const drawn = harnessOf(150, 11);
  const { network } = drawn;
  const pattern = compile(network);
  const solver = new Solver(pattern);
  const { elements, throwOne } = thrown(drawn, 11);

  it("leave every node balanced after each of them, and end where a cold start does", () => {
    const unbalanced: { step: number; worst: number }[] = [];
    const apart: { step: number; node: number; volts: number }[] = [];
    for (let step = 1; step <= 10_000; step++) {
      throwOne(solver);
      expect(solver.solve().converged).toBe(true);
      const { worst } = kirchhoff(network, elements, solver);
      if (!(worst <= 1e-9)) unbalanced.push({ step, worst });
      if (step % 500 !== 0) continue;
      const cold = new Solver(compile({ ...network, elements }));
      cold.solve();
      const ohms = cold.sourceOhms();
      for (let node = 1; node < network.nodeCount; node++) {
        const volts = Math.abs(solver.volts(node) - cold.volts(node));
        if (solver.isFloating(node) !== cold.isFloating(node) || (ohms[node]! < 1000 && !(volts < 1e-8)))
          apart.push({ step, node, volts });
      }
    }
    expect({ unbalanced, apart }).toEqual({ unbalanced: [], apart: [] });
  });
});

describe("what is worked out only when it is read", () => {
  it("is what is worked out at once, to the last bit, whichever elements are watched", () => {
    for (let seed = 0; seed < 400; seed++) {
      const drawn = seed % 2 === 0 ? randomNetwork(seed) : harnessOf(60, seed);
      const { network, contacts } = drawn;
      if (contacts.length === 0) continue;
      const pattern = compile(network);
      const watched = network.elements.flatMap((_, e) => ((e + seed) % 3 === 0 ? [e] : []));
      const [read, left] = [new Solver(pattern), new Solver(pattern, watched)];
      const { elements, throwOne } = thrown(drawn, seed);
      for (let step = 0; step < 8; step++) {
        if (step > 0) throwOne(read, left);
        expect(left.solve()).toEqual(read.solve());
        const volts = voltsIn(read, network);
        // Now and then one element is read, or one becomes another, while the rest is still to be worked out.
        const some = Math.floor(stream(seed * 8 + step)() * elements.length);
        if (step % 3 === 1) expect(left.voltsAcross(some)).toBe(read.voltsAcross(some));
        if (step % 4 === 2 && elements[some]!.law === "lamp") {
          elements[some] = { ...elements[some]!, law: "resistor", ohms: 40 };
          for (const solver of [read, left]) solver.setElement(some, elements[some]!);
          expect(left.solve()).toEqual(read.solve());
        } else if (step % 2 === 1) expect(voltsIn(left, network)).toEqual(volts);
      }
      expect(voltsIn(left, network)).toEqual(voltsIn(read, network));
      const nodes = Int32Array.from({ length: network.nodeCount }, (_, node) => node);
      const [volts, ohms] = [new Float64Array(nodes.length), new Float64Array(nodes.length)];
      left.readOut(nodes, volts, ohms);
      expect([...volts]).toEqual(voltsIn(read, network));
      expect(ohms).toEqual(read.sourceOhms());
    }
  });
});

describe("the balance of a network", () => {
  it("is drawn up again after fifteen searches that could be trusted", () => {
    const { network } = harnessOf(100, 3);
    // Resistors and a source alone: no line is ever off its law.
    const straight = network.elements.map((element): Element => {
      const { law, a, b } = element;
      return law === "resistor" || law === "source" ? element : { law: "resistor", a, b, ohms: 3 };
    });
    const solver = new Solver(compile({ ...network, elements: straight }));
    const residuals = new Set([solver.solve().residualAmps]);
    const known: number[] = [];
    for (let step = 1; step <= 64; step++) {
      solver.setElement(0, { law: "source", a: 1, b: 0, volts: 12.6 + step / 37, ohms: 0.01 });
      residuals.add(solver.solve().residualAmps);
      known.push(residuals.size);
    }
    expect(known).toEqual(Array.from({ length: 64 }, (_, step) => 1 + ((step + 1) >> 4)));
  });
});
