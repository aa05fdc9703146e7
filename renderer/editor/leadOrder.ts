import type { Positions } from "../../core/edit/positionTable.ts";

interface Edge {
  readonly a: string;
  readonly b: string;
  /** In how many positions it is closed. */
  count: number;
}

/**
 * Terminals in an order in which those that some position joins are neighbours where that can be, most often joined first;
 * those that nothing joins come last.
 */
export function leadOrder(positions: Positions, terminals: readonly string[]): readonly string[] {
  const next = new Map<string, string[]>(terminals.map((terminal) => [terminal, []]));
  const edges = edgesOf(positions, next);
  for (const { a, b } of [...edges].sort((one, other) => other.count - one.count)) {
    const [atA, atB] = [next.get(a)!, next.get(b)!];
    if (atA.length > 1 || atB.length > 1 || chainFrom(a, next).includes(b)) continue;
    atA.push(b);
    atB.push(a);
  }
  const order: string[] = [];
  const isUsed = (terminal: string): boolean => edges.some(({ a, b }) => a === terminal || b === terminal);
  for (const terminal of [...terminals.filter(isUsed), ...terminals]) {
    if (order.includes(terminal) || next.get(terminal)!.length > 1) continue;
    order.push(...chainFrom(terminal, next));
  }
  return order;
}

/** Terminals that no position joins; none where nothing is joined at all, since then all of them wait to be. */
export function idleTerminals(positions: Positions, terminals: readonly string[]): readonly string[] {
  const joined = new Set(positions.flatMap(({ joins }) => joins.flat()));
  return terminals.some((each) => joined.has(each)) ? terminals.filter((each) => !joined.has(each)) : [];
}

/**
 * The order kept while the table is edited, so that no column jumps: a terminal that another takes the place of hands its
 * column on, a new one comes last. The same order where nothing changed.
 */
export function keptOrder(order: readonly string[], terminals: readonly string[]): readonly string[] {
  const gone = order.filter((terminal) => !terminals.includes(terminal));
  const fresh = terminals.filter((terminal) => !order.includes(terminal));
  if (gone.length === 0 && fresh.length === 0) return order;
  if (gone.length !== fresh.length) return [...order.filter((terminal) => !gone.includes(terminal)), ...fresh];
  return order.map((terminal) => fresh[gone.indexOf(terminal)] ?? terminal);
}

function edgesOf(positions: Positions, known: ReadonlyMap<string, unknown>): readonly Edge[] {
  const edges: Edge[] = [];
  for (const [a, b] of positions.flatMap(({ joins }) => joins)) {
    if (a === b || !known.has(a) || !known.has(b)) continue;
    const edge = edges.find((each) => (each.a === a && each.b === b) || (each.a === b && each.b === a));
    if (edge) edge.count += 1;
    else edges.push({ a, b, count: 1 });
  }
  return edges;
}

/** The chain of neighbours that starts at a terminal. */
function chainFrom(terminal: string, next: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const chain = [terminal];
  for (;;) {
    const onward = next.get(chain.at(-1)!)!.find((each) => !chain.includes(each));
    if (onward === undefined) return chain;
    chain.push(onward);
  }
}
