import { describe, expect, it } from "vitest";
import type { Element, Law, Network } from "../../core/solve/element.ts";
import { extended } from "../../core/solve/extend.ts";
import { compile } from "../../core/solve/pattern.ts";
import { Solver } from "../../core/solve/solver.ts";
import { randomNetwork, stream } from "./randomNetwork.ts";

const OPEN: Law = { law: "resistor", ohms: Number.POSITIVE_INFINITY };
const elements: readonly Element[] = [
  { law: "source", a: 1, b: 0, volts: 12.6, ohms: 0.01 },
  { law: "resistor", a: 1, b: 2, ohms: 0.02 },
  { law: "motor", a: 2, b: 3, ohms: 0.6, frictionAmps: 2, speedOhms: 6 },
  { law: "lamp", a: 2, b: 3, ratedVolts: 12, ratedAmps: 1.75 },
  { law: "diode", a: 3, b: 2, saturationAmps: 1e-9, emissionVolts: 0.045 },
  { law: "resistor", a: 3, b: 0, ohms: 0.03 },
];
const network: Network = { nodeCount: 4, elements };
const nodes = [1, 2, 3];

const solved = (changes: Readonly<Record<number, Law>> = {}): Solver => {
  const now = elements.map((element, index): Element => ({ ...element, ...changes[index] }) as Element);
  const solver = new Solver(compile({ nodeCount: 4, elements: now }));
  expect(solver.solve().converged).toBe(true);
  return solver;
};

describe("a law changed in place", () => {
  it.each<[string, number, Law]>([
    ["a seized motor is a resistor", 2, { law: "resistor", ohms: 0.6 }],
    ["an open motor passes nothing", 2, OPEN],
    ["a burnt-out lamp passes nothing", 3, OPEN],
    ["a shorted diode is a wire", 4, { law: "resistor", ohms: 0.001 }],
    ["a wire turned lamp", 1, { law: "lamp", ratedVolts: 12, ratedAmps: 5 }],
    ["a lamp turned diode", 3, { law: "diode", saturationAmps: 1e-9, emissionVolts: 0.045 }],
    ["a worn motor", 2, { law: "motor", ohms: 1.5, frictionAmps: 4, speedOhms: 9 }],
    ["a flat battery", 0, { law: "source", volts: 10.1, ohms: 0.2 }],
    ["a battery turned alternator", 0, { law: "regulated", volts: 14.2, ohms: 0.02, maxAmps: 3 }],
  ])("%s: same volts as a network built so, and the first ones when it is mended", (_, index, law) => {
    const solver = new Solver(compile(network));
    solver.solve();
    const healthy = nodes.map((node) => solver.volts(node));
    solver.setElement(index, { ...elements[index]!, ...law } as Element);
    expect(solver.solve().converged).toBe(true);
    const built = solved({ [index]: law });
    for (const node of nodes) expect(Math.abs(solver.volts(node) - built.volts(node))).toBeLessThan(1e-8);
    expect(nodes.map((node) => solver.isFloating(node))).toEqual(nodes.map((node) => built.isFloating(node)));
    solver.setElement(index, elements[index]!);
    expect(solver.solve().converged).toBe(true);
    for (const [k, node] of nodes.entries()) expect(Math.abs(solver.volts(node) - healthy[k]!)).toBeLessThan(1e-8);
  });

  it("may not move its ends, nor be a joint", () => {
    const solver = new Solver(compile(network));
    expect(() => solver.setElement(1, { law: "resistor", a: 1, b: 3, ohms: 1 })).toThrow("broken invariant");
    expect(() => solver.setElement(1, { law: "joint", a: 1, b: 2 })).toThrow("broken invariant");
    expect(() => solver.setOhms(2, 1)).toThrow("broken invariant");
    expect(() => solver.setOhms(1, 0)).toThrow("broken invariant");
  });
});

describe("a saved state", () => {
  it("brings every volt back to the last bit once the numbers are given back", () => {
    for (let seed = 0; seed < 300; seed++) {
      const { network: wild, contacts } = randomNetwork(seed);
      const solver = new Solver(compile(wild));
      solver.solve();
      const read = () => Array.from({ length: wild.nodeCount }, (_, node) => solver.volts(node));
      const state = solver.save()!;
      // The volts of a state are those of its lines; a search that took refined passes ends beside them.
      solver.startFrom(state);
      solver.solve();
      const before = read();
      for (const contact of contacts) {
        solver.setOhms(contact, 17);
        solver.solve();
      }
      for (const contact of contacts) solver.setElement(contact, wild.elements[contact]!);
      solver.startFrom(state);
      solver.solve();
      expect(read()).toEqual(before);
    }
  });

  it("is there once something was found, and not while a number is other than it was solved with", () => {
    const solver = new Solver(compile(network));
    expect(solver.save()).toBe(null);
    solver.solve();
    expect(solver.save()).not.toBe(null);
    solver.setOhms(1, 17);
    expect(solver.save()).toBe(null);
  });

  it("is left for what has changed since: contacts, a lamp burnt out, a motor worn", () => {
    for (let seed = 0; seed < 300; seed++) {
      const { network: wild, contacts } = randomNetwork(seed);
      const pattern = compile(wild);
      const solver = new Solver(pattern);
      if (!solver.solve().converged) continue;
      const state = solver.save()!;
      const now = [...wild.elements];
      for (const [e, element] of wild.elements.entries()) {
        if (contacts.includes(e) && e % 2 === 0) now[e] = { ...element, law: "resistor", ohms: 17 };
        else if (element.law === "lamp" && e % 3 === 0) now[e] = { ...element, ...OPEN };
        else if (element.law === "motor") now[e] = { ...element, ohms: element.ohms + 1 };
        if (now[e] !== element) solver.setElement(e, now[e]!);
      }
      solver.solve();
      solver.startFrom(state);
      expectAlike(solver, new Solver(compile({ ...wild, elements: now })));
    }
  });
});

/** Two solvers find the same volts and ohms of source, a microvolt apart behind less than a kilohm. */
function expectAlike(one: Solver, other: Solver): void {
  expect([one.solve().converged, other.solve().converged]).toEqual([true, true]);
  const [ohms, others] = [one.sourceOhms(), other.sourceOhms()];
  for (const [node, each] of others.entries()) {
    expect(one.isFloating(node)).toBe(other.isFloating(node));
    if (each > 1000) continue;
    expect(Math.abs(one.volts(node) - other.volts(node))).toBeLessThan(1e-6);
    expect(Math.abs(ohms[node]! - each)).toBeLessThan(1e-6 * each + 1e-12);
  }
}

describe("an extended pattern", () => {
  /** An element replaced by a wire that is cut in two, its middle bridged to another node; then once more. */
  const cut = ({ nodeCount, elements }: Network, seed: number): Network => {
    const next = stream(seed);
    const some = elements.flatMap(({ law }, e) => (law === "joint" ? [] : [e]));
    const now = [...elements];
    for (let middle = nodeCount; middle < nodeCount + 2; middle++) {
      const e = some[Math.floor(next() * some.length)]!;
      const { a, b } = now[e]!;
      now[e] = { law: "resistor", ohms: 0.01, a, b: middle };
      now.push({ law: "resistor", ohms: 0.01, a: middle, b });
      now.push({ law: "resistor", ohms: 0.05, a: middle, b: Math.floor(next() * middle) });
    }
    return { nodeCount: nodeCount + 2, elements: now };
  };

  it("finds on 300 random networks what a compiled one finds, cold and from a state of its base", () => {
    for (let seed = 0; seed < 300; seed++) {
      const { network: wild } = randomNetwork(seed);
      const base = compile(wild);
      const more = cut(wild, seed);
      const solver = new Solver(extended(base, more));
      expectAlike(solver, new Solver(compile(more)));
      const sound = new Solver(base);
      if (!sound.solve().converged) continue;
      const started = new Solver(extended(base, more));
      started.startFrom(sound.save()!);
      expectAlike(started, solver);
    }
  });

  it("is compiled anew where a joint moves", () => {
    const joined: Network = { nodeCount: 5, elements: [...elements, { law: "joint", a: 3, b: 4 }] };
    const moved: Network = { nodeCount: 5, elements: [...elements, { law: "joint", a: 2, b: 4 }] };
    expect(extended(compile(joined), moved)).toEqual(compile(moved));
  });
});

describe("a walk of contacts", () => {
  it("ends on 2,000 random networks where a cold start ends, to a microvolt behind less than a kilohm", () => {
    const apart: { seed: number; node: number; volts: number }[] = [];
    for (let seed = 10_000; seed < 12_000; seed++) {
      const { network: wild, contacts } = randomNetwork(seed);
      const pattern = compile(wild);
      const warm = new Solver(pattern);
      const next = stream(seed);
      warm.solve();
      const now = [...wild.elements];
      for (let step = 0; step < 4 && contacts.length > 0; step++) {
        const contact = contacts[Math.floor(next() * contacts.length)]!;
        const ohms = next() < 0.5 ? Number.POSITIVE_INFINITY : 0.005;
        now[contact] = { ...now[contact]!, law: "resistor", ohms };
        warm.setOhms(contact, ohms);
        warm.solve();
      }
      const cold = new Solver(pattern);
      for (const contact of contacts) cold.setElement(contact, now[contact]!);
      expect(cold.solve().converged).toBe(true);
      const ohms = cold.sourceOhms();
      for (let node = 1; node < wild.nodeCount; node++) {
        const volts = Math.abs(warm.volts(node) - cold.volts(node));
        if (ohms[node]! < 1000 && volts > 1e-6) apart.push({ seed, node, volts });
        if (warm.isFloating(node) !== cold.isFloating(node)) apart.push({ seed, node, volts: Number.NaN });
      }
    }
    expect(apart).toEqual([]);
  });
});
