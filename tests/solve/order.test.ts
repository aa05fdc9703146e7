import { describe, expect, it } from "vitest";
import { leastDegree } from "../../core/solve/order.ts";
import { stream } from "./randomNetwork.ts";

/** Lists of neighbours from pairs, without repeats. */
function graph(size: number, pairs: readonly (readonly [number, number])[]): number[][] {
  const lists = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of pairs) {
    if (a === b) continue;
    lists[a]!.add(b);
    lists[b]!.add(a);
  }
  return lists.map((list) => [...list]);
}

/** Fill by the book: who is joined to each node when it goes, with every clique drawn out. */
function filled(neighbours: readonly (readonly number[])[], step: Int32Array): number[][] {
  const lists = neighbours.map((list) => new Set(list));
  const joined: number[][] = lists.map(() => []);
  const order = [...step.keys()].sort((a, b) => step[a]! - step[b]!);
  for (const node of order) {
    const members = [...lists[node]!];
    joined[node] = members.toSorted((a, b) => a - b);
    for (const member of members) {
      lists[member]!.delete(node);
      for (const other of members) if (other !== member) lists[member]!.add(other);
    }
  }
  return joined;
}

function randomPairs(size: number, count: number, seed: number): [number, number][] {
  const next = stream(seed);
  return Array.from({ length: count }, () => [Math.floor(next() * size), Math.floor(next() * size)]);
}

describe("the order of elimination", () => {
  it("takes every node once, and names exactly the nodes that elimination joins to it", () => {
    for (let seed = 0; seed < 200; seed++) {
      const size = 1 + (seed % 40);
      const pairs = randomPairs(size, Math.floor((size * (seed % 7)) / 2), seed);
      const { step, joined } = leastDegree(graph(size, pairs));
      expect([...step].sort((a, b) => a - b)).toEqual(Array.from({ length: size }, (_, k) => k));
      const byTheBook = filled(graph(size, pairs), step);
      expect(joined.map((list) => list.toSorted((a, b) => a - b))).toEqual(byTheBook);
    }
  });

  it("fills a tree with nothing", () => {
    const next = stream(11);
    const size = 500;
    const tree = Array.from({ length: size - 1 }, (_, k): [number, number] => [k + 1, Math.floor(next() * (k + 1))]);
    const { joined } = leastDegree(graph(size, tree));
    expect(joined.reduce((sum, list) => sum + list.length, 0)).toBe(size - 1);
  });

  it("leaves a hub for the end, however many wires it has", () => {
    const star = Array.from({ length: 300 }, (_, k): [number, number] => [0, k + 1]);
    const { step, joined } = leastDegree(graph(301, star));
    expect(step[0]).toBeGreaterThanOrEqual(299);
    expect(Math.max(...joined.map((list) => list.length))).toBe(1);
  });

  it("fills a square mesh of 30 by 30 far less than taking it row by row", () => {
    const side = 30;
    const pairs: [number, number][] = [];
    for (let node = 0; node < side * side; node++) {
      if (node % side < side - 1) pairs.push([node, node + 1]);
      if (node + side < side * side) pairs.push([node, node + side]);
    }
    const entries = (lists: readonly (readonly number[])[]) => lists.reduce((sum, list) => sum + list.length, 0);
    const { joined } = leastDegree(graph(side * side, pairs));
    const rowByRow = filled(
      graph(side * side, pairs),
      Int32Array.from({ length: side * side }, (_, k) => k),
    );
    expect(entries(joined)).toBeLessThan(entries(rowByRow) / 2);
  });
});
