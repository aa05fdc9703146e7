import { assert } from "../base/outcome.ts";
import type { Network } from "./element.ts";
import { leastDegree } from "./order.ts";

/**
 * Where every number of a network lies, worked out once: joints contracted, unknowns in order of elimination, the
 * places of the factor. Every element has its place, open or not, so that no change of ohms alters the pattern.
 * Sizes: n unknowns, m edges of the factor, E elements.
 */
export interface Pattern {
  readonly network: Network;
  /** n: groups of joined nodes other than the reference. An unknown's number is its step of elimination. */
  readonly unknowns: number;
  /** m: entries of the factor off the diagonal. */
  readonly edges: number;
  /** Unknown of each node, -1 where it is the reference. Size nodeCount. */
  readonly unknownOf: Int32Array;
  /** Unknowns at ends a and b of each element, -1 for the reference. Size E each. */
  readonly aOf: Int32Array;
  readonly bOf: Int32Array;
  /** Place of each element: an edge below m, m + unknown for a leak to the reference, -1 for none. Size E. */
  readonly placeOf: Int32Array;
  /** Elements at each place: elementAt[elementStart[place] ..]. Sizes m + n + 1 and up to E. */
  readonly elementStart: Int32Array;
  readonly elementAt: Int32Array;
  /** Edges of column j are columnStart[j] .. columnStart[j + 1] - 1, rows rising. Sizes n + 1, m, m. */
  readonly columnStart: Int32Array;
  readonly rowOf: Int32Array;
  readonly columnOf: Int32Array;
  /** First row of each column, its parent in the elimination tree; -1 for a root. Size n. */
  readonly parentOf: Int32Array;
  /** Edges in row i are edgeInRow[rowStart[i]] .., columns rising, and their columns. Sizes n + 1, m, m. */
  readonly rowStart: Int32Array;
  readonly edgeInRow: Int32Array;
  readonly columnInRow: Int32Array;
  /** For edge p = (i, j) and each later edge (k, j) of its column in turn: the edge (k, i). Sizes m and all pairs. */
  readonly targetStart: Int32Array;
  readonly target: Int32Array;
  /** Of columns with two edges, the edge between their rows; -1 of others. Size n. */
  readonly betweenOf: Int32Array;
  /** What this one was extended from; null where it was compiled. */
  readonly base: Base | null;
}

/** The pattern that another was extended from. */
export interface Base {
  readonly pattern: Pattern;
  /** How many unknowns come before its own. */
  readonly added: number;
  /** Where each of its edges has gone. Size m of this pattern. */
  readonly edgeAt: Int32Array;
  /** Places of the extended pattern whose elements are not those of the base. */
  readonly otherPlaces: Int32Array;
}

/** The pattern of a network. Throws where an end is no node of it. */
export function compile(network: Network): Pattern {
  const { elements, nodeCount } = network;
  for (const { a, b } of elements) {
    assert(Number.isInteger(a) && a >= 0 && a < nodeCount, "end a of an element is a node");
    assert(Number.isInteger(b) && b >= 0 && b < nodeCount, "end b of an element is a node");
  }
  const { groupOf, groups } = contract(network);
  const { step, joined } = leastDegree(neighboursOf(network, groupOf, groups));

  const unknownOf = groupOf.map((group) => (group < 0 ? -1 : step[group]!));
  return patternOver(network, unknownOf, groups, columnsOf(step, joined));
}

/** The pattern of a network whose unknowns have their numbers and their columns. */
export function patternOver(network: Network, unknownOf: Int32Array, unknowns: number, columns: Columns): Pattern {
  const { elements } = network;
  const rows = rowsOf(unknowns, columns);
  const aOf = new Int32Array(elements.length);
  const bOf = new Int32Array(elements.length);
  const placeOf = new Int32Array(elements.length);
  for (let e = 0; e < elements.length; e++) {
    const { a, b, law } = elements[e]!;
    aOf[e] = unknownOf[a]!;
    bOf[e] = unknownOf[b]!;
    placeOf[e] = law === "joint" ? -1 : placeBetween(columns, aOf[e]!, bOf[e]!);
  }
  return {
    network,
    unknowns,
    edges: columns.rowOf.length,
    unknownOf,
    aOf,
    bOf,
    placeOf,
    ...elementsByPlace(placeOf, columns.rowOf.length + unknowns),
    ...columns,
    ...rows,
    ...targetsOf(columns, rows),
    base: null,
  };
}

// ---------------------------------------------------------------- joints and neighbours

/** Groups of joined nodes by union-find, numbered from 0; the group of the reference is -1. */
function contract(network: Network): { groupOf: Int32Array; groups: number } {
  const root = Int32Array.from({ length: network.nodeCount }, (_, node) => node);
  const find = (node: number): number => {
    let at = node;
    while (root[at] !== at) {
      root[at] = root[root[at]!]!;
      at = root[at]!;
    }
    return at;
  };
  for (const element of network.elements) {
    if (element.law !== "joint") continue;
    const a = find(element.a);
    const b = find(element.b);
    // The lower number leads, so that the reference always leads its group.
    if (a < b) root[b] = a;
    else root[a] = b;
  }
  const groupOf = new Int32Array(network.nodeCount).fill(-1);
  let groups = 0;
  for (let node = 1; node < network.nodeCount; node++) {
    const leader = find(node);
    if (leader !== 0) groupOf[node] = leader === node ? groups++ : groupOf[leader]!;
  }
  return { groupOf, groups };
}

function neighboursOf(network: Network, groupOf: Int32Array, groups: number): number[][] {
  const neighbours: number[][] = Array.from({ length: groups }, () => []);
  for (const element of network.elements) {
    const a = groupOf[element.a]!;
    const b = groupOf[element.b]!;
    if (element.law === "joint" || a === b || a < 0 || b < 0) continue;
    neighbours[a]!.push(b);
    neighbours[b]!.push(a);
  }
  return neighbours.map((list) => (list.length > 1 ? [...new Set(list)] : list));
}

// ---------------------------------------------------------------- the factor's places

/** The part of a pattern that says which edges its columns have. */
export type Columns = Pick<Pattern, "columnStart" | "rowOf" | "columnOf" | "parentOf">;
type Rows = Pick<Pattern, "rowStart" | "edgeInRow" | "columnInRow">;

function columnsOf(step: Int32Array, joined: readonly (readonly number[])[]): Columns {
  const n = step.length;
  const nodeAt = new Int32Array(n);
  for (let node = 0; node < n; node++) nodeAt[step[node]!] = node;
  const columnStart = new Int32Array(n + 1);
  for (let j = 0; j < n; j++) columnStart[j + 1] = columnStart[j]! + joined[nodeAt[j]!]!.length;
  const rowOf = new Int32Array(columnStart[n]!);
  for (let j = 0; j < n; j++) {
    const start = columnStart[j]!;
    const members = joined[nodeAt[j]!]!;
    for (let k = 0; k < members.length; k++) rowOf[start + k] = step[members[k]!]!;
    rowOf.subarray(start, columnStart[j + 1]!).sort();
  }
  return columnsWith(columnStart, rowOf);
}

/** Columns whose rows are known and rise. */
export function columnsWith(columnStart: Int32Array, rowOf: Int32Array): Columns {
  const columnOf = new Int32Array(rowOf.length);
  const parentOf = new Int32Array(columnStart.length - 1).fill(-1);
  for (let j = 0; j < parentOf.length; j++) {
    const start = columnStart[j]!;
    const end = columnStart[j + 1]!;
    columnOf.fill(j, start, end);
    if (end > start) parentOf[j] = rowOf[start]!;
  }
  return { columnStart, rowOf, columnOf, parentOf };
}

function rowsOf(n: number, columns: Columns): Rows {
  const { rowOf, columnOf } = columns;
  const rowStart = new Int32Array(n + 1);
  for (const row of rowOf) rowStart[row + 1]!++;
  for (let i = 0; i < n; i++) rowStart[i + 1]! += rowStart[i]!;
  const edgeInRow = new Int32Array(rowOf.length);
  const columnInRow = new Int32Array(rowOf.length);
  const next = rowStart.slice();
  for (let p = 0; p < rowOf.length; p++) {
    const r = next[rowOf[p]!]!++;
    edgeInRow[r] = p;
    columnInRow[r] = columnOf[p]!;
  }
  return { rowStart, edgeInRow, columnInRow };
}

/** Runs of targets lie in the order in which the factor reads them: by row, then by column. */
function targetsOf(columns: Columns, rows: Rows): Pick<Pattern, "targetStart" | "target" | "betweenOf"> {
  const { columnStart, rowOf, columnOf } = columns;
  const { rowStart, edgeInRow } = rows;
  const n = columnStart.length - 1;
  const targetStart = new Int32Array(rowOf.length);
  let pairs = 0;
  for (const p of edgeInRow) {
    targetStart[p] = pairs;
    pairs += columnStart[columnOf[p]! + 1]! - p - 1;
  }
  const target = new Int32Array(pairs);
  const edgeAtRow = new Int32Array(n);
  for (let i = 0; i < n; i++) {
    for (let p = columnStart[i]!; p < columnStart[i + 1]!; p++) edgeAtRow[rowOf[p]!] = p;
    for (let r = rowStart[i]!; r < rowStart[i + 1]!; r++) {
      const p = edgeInRow[r]!;
      const end = columnStart[columnOf[p]! + 1]!;
      for (let q = p + 1, t = targetStart[p]!; q < end; q++, t++) target[t] = edgeAtRow[rowOf[q]!]!;
    }
  }
  const betweenOf = new Int32Array(n).fill(-1);
  for (let j = 0; j < n; j++) {
    const start = columnStart[j]!;
    if (columnStart[j + 1]! === start + 2) betweenOf[j] = target[targetStart[start]!]!;
  }
  return { targetStart, target, betweenOf };
}

// ---------------------------------------------------------------- places of elements

function placeBetween(columns: Columns, a: number, b: number): number {
  if (a === b) return -1;
  const { columnStart, rowOf } = columns;
  const edges = rowOf.length;
  if (a < 0 || b < 0) return edges + Math.max(a, b);
  const column = Math.min(a, b);
  const row = Math.max(a, b);
  let low = columnStart[column]!;
  let high = columnStart[column + 1]! - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rowOf[middle]! < row) low = middle + 1;
    else high = middle;
  }
  assert(rowOf[low] === row, "an element between two unknowns has an edge");
  return low;
}

function elementsByPlace(placeOf: Int32Array, places: number): Pick<Pattern, "elementStart" | "elementAt"> {
  const elementStart = new Int32Array(places + 1);
  for (const place of placeOf) if (place >= 0) elementStart[place + 1]!++;
  for (let place = 0; place < places; place++) elementStart[place + 1]! += elementStart[place]!;
  const elementAt = new Int32Array(elementStart[places]!);
  const next = elementStart.slice();
  for (let e = 0; e < placeOf.length; e++) if (placeOf[e]! >= 0) elementAt[next[placeOf[e]!]!++] = e;
  return { elementStart, elementAt };
}
