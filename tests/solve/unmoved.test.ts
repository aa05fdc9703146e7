import { describe, expect, it } from "vitest";
import type { Element } from "../../core/solve/element.ts";
import { compile } from "../../core/solve/pattern.ts";
import { Solver, type State } from "../../core/solve/solver.ts";
import { isUnmoved, type Replacement, UnmovedReader } from "../../core/solve/unmoved.ts";
import { randomNetwork, stream } from "./randomNetwork.ts";

const VOLTS_APART = 1e-9;
const SHARE_APART = 1e-9;
/** Behind more ohms a node hangs on what leaks, and digits are lost on the way there. */
const GHOST_OHMS = 1e6;

/** One to three elements of a network other than sources, each with other ohms or taken out. */
function drawn(elements: readonly Element[], next: () => number): readonly Replacement[] {
  const some = elements.flatMap((element, index) => {
    const isOpen = element.law === "resistor" && element.ohms === Number.POSITIVE_INFINITY;
    return isOpen || ["joint", "source", "regulated"].includes(element.law) ? [] : [index];
  });
  if (some.length === 0) return [];
  const count = 1 + Math.floor(3 * next() * next());
  const chosen = new Set(Array.from({ length: count }, () => some[Math.floor(next() * some.length)]!));
  return [...chosen].map((element) => ({ element, siemens: next() < 0.5 ? 0 : 10 ** (3 - 6 * next()) }));
}

/** Volts and ohms of source of all nodes by the solver's own way, with the replacements put into it. */
function solvedWith(solver: Solver, state: State, elements: readonly Element[], replacements: readonly Replacement[]) {
  for (const { element, siemens } of replacements)
    solver.setElement(element, { ...elements[element]!, law: "resistor", ohms: 1 / siemens });
  solver.startFrom(state);
  expect(solver.solve().converged).toBe(true);
  return readOf(solver);
}

function readOf(solver: Solver) {
  const nodes = Int32Array.from(solver.pattern.unknownOf, (_, node) => node);
  const volts = new Float64Array(nodes.length);
  const sourceOhms = new Float64Array(nodes.length);
  solver.readOut(nodes, volts, sourceOhms);
  return { nodes, volts, sourceOhms };
}

interface Read {
  readonly volts: Float64Array;
  readonly sourceOhms: Float64Array;
}

function isAlike(one: Read, other: Read, node: number): boolean {
  const [ohms, others] = [one.sourceOhms[node]!, other.sourceOhms[node]!];
  if (Math.abs(one.volts[node]! - other.volts[node]!) > VOLTS_APART) return false;
  return others > GHOST_OHMS ? ohms > GHOST_OHMS / 2 : Math.abs(ohms - others) <= SHARE_APART * others + 1e-15;
}

describe("resistors that move no volts", () => {
  it("show on random networks the volts and ohms that a solver finds with them", () => {
    const apart: string[] = [];
    let [cut, kept] = [0, 0];
    for (let seed = 0; seed < 800; seed++) {
      const { network, contacts } = randomNetwork(seed);
      const pattern = compile(network);
      const solver = new Solver(pattern);
      const next = stream(seed);
      // With half of the contacts open, much stands without current.
      for (const contact of contacts) if (next() < 0.5) solver.setOhms(contact, Number.POSITIVE_INFINITY);
      if (!solver.solve().converged) continue;
      const state = solver.save()!;
      const before = readOf(solver);
      const reader = new UnmovedReader(pattern);
      for (let turn = 0; turn < 6; turn++) {
        const open = new Set(contacts.filter((contact) => state.table.numbers[4 * contact] === 0));
        const replacements = drawn(network.elements, next).filter(({ element }) => !open.has(element));
        if (replacements.length === 0 || !isUnmoved(state, replacements)) continue;
        const now = { volts: before.volts.slice(), sourceOhms: before.sourceOhms.slice() };
        reader.read(state, replacements, before.nodes, before, now);
        const own = solvedWith(solver, state, network.elements, replacements);
        const turned = before.nodes.filter((node) => !isAlike(now, own, node));
        for (const node of turned)
          apart.push(`network ${seed}, node ${node}: ${now.sourceOhms[node]} ohm, ${now.volts[node]} V`);
        if (own.sourceOhms.some((ohms, node) => ohms === Number.POSITIVE_INFINITY && before.sourceOhms[node]! < ohms))
          cut++;
        else kept++;
        for (const { element } of replacements) solver.setElement(element, network.elements[element]!);
      }
    }
    expect(apart).toEqual([]);
    expect(Math.min(cut, kept)).toBeGreaterThan(100);
  });
});
