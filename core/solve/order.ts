/**
 * An order of elimination that keeps the factor sparse: always the node with the fewest neighbours next.
 * Method: P. R. Amestoy, T. A. Davis, I. S. Duff, "An approximate minimum degree ordering algorithm", SIAM J. Matrix
 * Anal. Appl. 17 (1996): eliminated nodes are kept as cliques, never as explicit fill, and degrees are upper bounds.
 */

/** The order found, and the fill it leaves. n nodes. */
export interface Elimination {
  /** Step at which each node goes. Size n. */
  readonly step: Int32Array;
  /** Nodes still there that each node was joined to when it went. n lists of node numbers. */
  readonly joined: readonly (readonly number[])[];
}

/**
 * Orders the nodes of a graph by least degree; ties go to the node touched longest ago, so that every
 * other node of a chain goes before those between: few columns lie above any other, and few are worked out again.
 * `neighbours` is one list a node, without the node itself and without repeats; the lists are used up.
 */
export function leastDegree(neighbours: number[][]): Elimination {
  const graph = quotientGraph(neighbours);
  const { queue, step, joined } = graph;
  for (let k = 0; k < step.length; k++) {
    const node = takeLeast(queue);
    const members = gather(graph, node);
    step[node] = k;
    joined[node] = members;
    if (members.length === 1) lowerDegree(graph, members[0]!);
    else if (members.length > 1) joinClique(graph, node, members);
  }
  return { step, joined };
}

// ---------------------------------------------------------------- quotient graph

interface QuotientGraph {
  /** -1 while the node is there. Size n. */
  readonly step: Int32Array;
  /** Direct neighbours; may still name nodes that went. */
  readonly neighbours: number[][];
  /** The clique that each eliminated node left behind, while it is not absorbed. */
  readonly joined: number[][];
  /** Cliques that each node belongs to, named by the node that left them; may still name absorbed ones. */
  readonly cliquesOf: number[][];
  /** 1 where a clique has been absorbed by a later one. Size n. */
  readonly absorbed: Uint8Array;
  /** Members of a clique that lie outside the newest one, valid where seenBy names it. Size n each. */
  readonly outside: Int32Array;
  readonly seenBy: Int32Array;
  /** Node whose elimination marked this node last. Size n. */
  readonly markedBy: Int32Array;
  readonly queue: Queue;
}

function quotientGraph(neighbours: number[][]): QuotientGraph {
  const n = neighbours.length;
  const queue = emptyQueue(n);
  for (let node = 0; node < n; node++) insert(queue, node, neighbours[node]!.length);
  return {
    step: new Int32Array(n).fill(-1),
    neighbours,
    joined: Array.from({ length: n }, () => []),
    cliquesOf: Array.from({ length: n }, () => []),
    absorbed: new Uint8Array(n),
    outside: new Int32Array(n),
    seenBy: new Int32Array(n).fill(-1),
    markedBy: new Int32Array(n).fill(-1),
    queue,
  };
}

/** Everything a node touches, directly or through its cliques, which are absorbed by the one that now arises. */
function gather(graph: QuotientGraph, node: number): number[] {
  const { step, markedBy, absorbed, joined } = graph;
  const members: number[] = [];
  markedBy[node] = node;
  const take = (other: number): void => {
    if (step[other]! >= 0 || markedBy[other] === node) return;
    markedBy[other] = node;
    members.push(other);
  };
  for (const other of graph.neighbours[node]!) take(other);
  for (const clique of graph.cliquesOf[node]!) {
    if (absorbed[clique]) continue;
    for (const other of joined[clique]!) take(other);
    absorbed[clique] = 1;
  }
  graph.neighbours[node] = [];
  graph.cliquesOf[node] = [];
  return members;
}

/** The only neighbour of a leaf loses one. No clique arises, and a hub's long list need not be read. */
function lowerDegree(graph: QuotientGraph, node: number): void {
  move(graph.queue, node, graph.queue.degree[node]! - 1);
}

/** Makes `members` a clique named by the node that went, and brings lists and degrees of its members up to date. */
function joinClique(graph: QuotientGraph, node: number, members: readonly number[]): void {
  const { step, neighbours, joined, cliquesOf, absorbed, outside, seenBy, markedBy, queue } = graph;
  for (const member of members) {
    for (const clique of cliquesOf[member]!) {
      if (absorbed[clique]) continue;
      if (seenBy[clique] !== node) {
        seenBy[clique] = node;
        outside[clique] = joined[clique]!.length;
      }
      outside[clique]!--;
    }
  }
  for (const member of members) {
    const direct = neighbours[member]!.filter((other) => step[other]! < 0 && markedBy[other] !== node);
    neighbours[member] = direct;
    let degree = direct.length + members.length - 1;
    const kept = [node];
    for (const clique of cliquesOf[member]!) {
      if (absorbed[clique]) continue;
      if (outside[clique] === 0) {
        absorbed[clique] = 1;
        continue;
      }
      degree += outside[clique]!;
      kept.push(clique);
    }
    cliquesOf[member] = kept;
    move(queue, member, Math.min(degree, queue.degree[member]! + members.length - 2));
  }
}

// ---------------------------------------------------------------- queue by degree

/** Doubly linked lists of nodes, one a degree. Sizes n + 1 for head and tail, n for the others. */
interface Queue {
  readonly head: Int32Array;
  readonly tail: Int32Array;
  readonly next: Int32Array;
  readonly before: Int32Array;
  readonly degree: Int32Array;
  /** No list below this one holds a node. */
  least: number;
}

function emptyQueue(n: number): Queue {
  const list = (size: number): Int32Array => new Int32Array(size).fill(-1);
  return { head: list(n + 1), tail: list(n + 1), next: list(n), before: list(n), degree: list(n), least: n };
}

function insert(queue: Queue, node: number, degree: number): void {
  const { head, tail, next, before } = queue;
  const last = tail[degree]!;
  queue.degree[node] = degree;
  next[node] = -1;
  before[node] = last;
  if (last >= 0) next[last] = node;
  else head[degree] = node;
  tail[degree] = node;
  if (degree < queue.least) queue.least = degree;
}

function remove(queue: Queue, node: number): void {
  const { head, tail, next, before, degree } = queue;
  const after = next[node]!;
  const previous = before[node]!;
  if (previous >= 0) next[previous] = after;
  else head[degree[node]!] = after;
  if (after >= 0) before[after] = previous;
  else tail[degree[node]!] = previous;
}

function move(queue: Queue, node: number, degree: number): void {
  remove(queue, node);
  insert(queue, node, degree);
}

function takeLeast(queue: Queue): number {
  while (queue.head[queue.least]! < 0) queue.least++;
  const node = queue.head[queue.least]!;
  remove(queue, node);
  return node;
}
