import { remember } from "../base/memo.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { ModelElement, Part, Passing } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit } from "./circuit.ts";
import { placeOf } from "./nets.ts";
import { Sets } from "./sets.ts";

/** Something between two nodes that is more than a conductor: a contact, a load, a source, a module's pin. */
export interface Edge {
  readonly part: Part;
  readonly key: string;
  readonly passes: Passing;
  readonly a: number;
  readonly b: number;
}

/** The circuit with all conductors shrunk to nodes, bodies too; every switch counts as closed, every plug as home. */
export interface Graph {
  readonly nodeCount: number;
  readonly edges: readonly Edge[];
  /** Edges at each node. */
  readonly at: readonly (readonly number[])[];
}

/** The graph of a circuit, for questions of what could ever conduct. */
export const graphOf = remember((circuit: Circuit): Graph => {
  const sets = new Sets();
  for (const wire of circuit.wires) sets.merge(wire.from, wire.to);
  for (const { id, cavities = {} } of circuit.connectors) {
    for (const [cavity, carries] of Object.entries(cavities)) sets.merge(carries, `${id}-${cavity}`);
  }
  const found: { readonly part: Part; readonly element: ModelElement }[] = [];
  for (const part of circuit.parts) {
    const kind = kindOf(part.kind);
    for (const element of kind?.model(viewOf(kind, part, circuit.nominalVolts)) ?? []) {
      if (element.passes === "conductor") sets.merge(placeOf(part, element.a), placeOf(part, element.b));
      else found.push({ part, element });
    }
  }
  const numbers = new Map<string, number>();
  const at: number[][] = [];
  const node = (name: string): number => {
    const set = sets.of(name);
    const known = numbers.get(set) ?? numbers.size;
    if (known === numbers.size) at.push([]);
    numbers.set(set, known);
    return known;
  };
  const edges = found.map(({ part, element: { key, passes, a, b } }, index) => {
    const ends = { a: node(placeOf(part, a)), b: node(placeOf(part, b)) };
    at[ends.a]!.push(index);
    if (ends.b !== ends.a) at[ends.b]!.push(index);
    return { part, key, passes, ...ends };
  });
  return { nodeCount: numbers.size, edges, at };
});

/** The node at the other end of an edge. */
export function across({ a, b }: Edge, node: number): number {
  return a === node ? b : a;
}

/**
 * For each edge the number of its block: two edges are in one block where some ring runs through both (Hopcroft and
 * Tarjan, "Algorithm 447: efficient algorithms for graph manipulation", 1973, without recursion). -1 for an edge from a
 * node to itself.
 */
export function blocksOf({ nodeCount, edges, at }: Graph): Int32Array {
  const block = new Int32Array(edges.length).fill(-1);
  const order = new Int32Array(nodeCount).fill(-1);
  const low = new Int32Array(nodeCount);
  const next = new Int32Array(nodeCount);
  const cameBy = new Int32Array(nodeCount).fill(-1);
  const seen = new Uint8Array(edges.length);
  const pending: number[] = [];
  let count = 0;
  let blocks = 0;
  for (let root = 0; root < nodeCount; root++) {
    if (order[root] !== -1) continue;
    const path = [root];
    order[root] = low[root] = count++;
    while (path.length > 0) {
      const node = path.at(-1)!;
      const index = at[node]![next[node]!++];
      if (index === undefined) {
        path.pop();
        const above = path.at(-1);
        if (above === undefined) continue;
        low[above] = Math.min(low[above]!, low[node]!);
        if (low[node]! < order[above]!) continue;
        // Nothing below `node` reaches past `above`: all edges since the one into `node` are one block.
        for (let edge = -1; edge !== cameBy[node]; ) {
          edge = pending.pop()!;
          block[edge] = blocks;
        }
        blocks++;
        continue;
      }
      if (seen[index] || edges[index]!.a === edges[index]!.b) continue;
      seen[index] = 1;
      pending.push(index);
      const other = across(edges[index]!, node);
      if (order[other] !== -1) {
        low[node] = Math.min(low[node]!, order[other]!);
        continue;
      }
      order[other] = low[other] = count++;
      cameBy[other] = index;
      path.push(other);
    }
  }
  return block;
}
