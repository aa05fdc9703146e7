import type { Circuit } from "./circuit.ts";
import { across, blocksOf, type Edge, type Graph, graphOf } from "./graph.ts";
import { looseEnd, type Problem, problem } from "./problem.ts";

/** Batteries that are missing, shorted or against each other, and loads that no ring with a source runs through. */
export function checkSupply(circuit: Circuit): readonly Problem[] {
  const graph = graphOf(circuit);
  return [...checkReference(circuit), ...checkBatteries(graph), ...checkLoops(graph)];
}

function checkReference(circuit: Circuit): readonly Problem[] {
  const batteries = circuit.parts.filter((part) => part.kind === "battery");
  if (batteries.length === 0) return circuit.parts.length === 0 ? [] : [problem("no-battery", "")];
  const marked = batteries.filter((part) => part.settings?.reference === true);
  if (marked.length > 1) {
    return [problem("references-many", marked[1]!.id, { parts: marked.map((part) => part.id).join(", ") })];
  }
  if (batteries.length === 1 || marked.length === 1) return [];
  return [looseEnd("reference-not-said", batteries[0]!.id, { part: batteries[0]!.id })];
}

function checkBatteries({ edges }: Graph): readonly Problem[] {
  const batteries = edges.filter((edge) => edge.passes === "source" && edge.part.kind === "battery");
  const shorted = batteries.filter(({ a, b }) => a === b);
  const found = shorted.map(({ part }) => problem("battery-shorted", part.id, { part: part.id }));
  for (const [index, one] of batteries.entries()) {
    for (const other of batteries.slice(index + 1)) {
      if (shorted.includes(one) || shorted.includes(other)) continue;
      const about = { part: one.part.id, other: other.part.id };
      if (one.a === other.b && one.b === other.a) found.push(problem("batteries-in-a-ring", one.part.id, about));
      else if (one.a === other.a && one.b !== other.b) found.push(problem("batteries-facing", one.part.id, about));
    }
  }
  return found;
}

/** One problem for each part whose loads all lie outside every ring with a source. */
function checkLoops(graph: Graph): readonly Problem[] {
  const block = blocksOf(graph);
  const supplied = new Set(graph.edges.flatMap(({ passes }, index) => (passes === "source" ? [block[index]!] : [])));
  const byPart = new Map<string, { readonly edge: Edge; readonly block: number }[]>();
  for (const [index, edge] of graph.edges.entries()) {
    if (edge.passes !== "load") continue;
    const list = byPart.get(edge.part.id) ?? [];
    list.push({ edge, block: block[index]! });
    byPart.set(edge.part.id, list);
  }
  return [...byPart].flatMap(([id, loads]) => {
    if (loads.some((load) => load.block !== -1 && supplied.has(load.block))) return [];
    const { edge } = loads[0]!;
    if (edge.a === edge.b) return [problem("load-bridged", id, { part: id })];
    return [problem(isFed(graph, edge) ? "no-return" : "no-supply", id, { part: id })];
  });
}

/** Whether either end of a load reaches the plus of a source without passing another load. */
function isFed({ edges, at }: Graph, load: Edge): boolean {
  const seen = new Set([load.a, load.b]);
  const waiting = [...seen];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const index of at[node]!) {
      const edge = edges[index]!;
      if (edge.passes === "source" && edge.a === node) return true;
      if (edge.passes === "source" || edge.passes === "load") continue;
      const other = across(edge, node);
      if (seen.has(other)) continue;
      seen.add(other);
      waiting.push(other);
    }
  }
  return false;
}
