import { assert } from "../base/outcome.ts";
import type { Element, Network } from "./element.ts";
import { columnsWith, compile, type Pattern, patternOver } from "./pattern.ts";

/**
 * The pattern of a network that begins with the nodes and elements of another and adds some, without ordering it anew:
 * what is added is eliminated first, and all else in the order that it had. Elements may have moved to other nodes. The
 * pattern names the other as its base; where joints have moved, come or gone, it is compiled and has none.
 */
export function extended(base: Pattern, network: Network): Pattern {
  const { elements, nodeCount } = network;
  const from = base.network;
  assert(nodeCount >= from.nodeCount && elements.length >= from.elements.length, "an extended network only grows");
  if (elements.some((element, e) => isOtherJoint(element, from.elements[e]))) return compile(network);
  const added = nodeCount - from.nodeCount;
  const unknownOf = new Int32Array(nodeCount);
  for (let node = 0; node < from.nodeCount; node++) {
    const unknown = base.unknownOf[node]!;
    unknownOf[node] = unknown < 0 ? -1 : unknown + added;
  }
  for (let node = from.nodeCount; node < nodeCount; node++) unknownOf[node] = node - from.nodeCount;

  const more = new Map<number, number[]>();
  for (let e = 0; e < elements.length; e++) {
    const { a, b } = elements[e]!;
    if (hasOtherEnds(elements[e]!, from.elements[e])) addEdge(base, added, more, unknownOf[a]!, unknownOf[b]!);
  }
  const { columns, edgeAt } = grown(base, added, more);
  const pattern = patternOver(network, unknownOf, base.unknowns + added, columns);
  const placeNow = (was: number): number =>
    was < 0 ? -1 : was < base.edges ? edgeAt[was]! : was - base.edges + added + pattern.edges;
  const otherPlaces = new Set<number>();
  pattern.placeOf.forEach((place, e) => {
    const before = e < base.placeOf.length ? placeNow(base.placeOf[e]!) : -1;
    if (before !== place) otherPlaces.add(before).add(place);
  });
  otherPlaces.delete(-1);
  return { ...pattern, base: { pattern: base, added, edgeAt, otherPlaces: Int32Array.from(otherPlaces) } };
}

function hasOtherEnds(element: Element, was: Element | undefined): boolean {
  return was === undefined || was.a !== element.a || was.b !== element.b;
}

function isOtherJoint(element: Element, was: Element | undefined): boolean {
  if (element.law !== "joint" && was?.law !== "joint") return false;
  return element.law !== was?.law || hasOtherEnds(element, was);
}

/** Whether the base has an edge from this column to this row, both numbered with what is added. */
function hasEdge({ columnStart, rowOf }: Pattern, added: number, column: number, row: number): boolean {
  if (column < added) return false;
  for (let p = columnStart[column - added]!; p < columnStart[column - added + 1]!; p++)
    if (rowOf[p] === row - added) return true;
  return false;
}

/** Notes an edge that the base has not, by its column. */
function addEdge(base: Pattern, added: number, more: Map<number, number[]>, one: number, other: number): void {
  const column = Math.min(one, other);
  const row = Math.max(one, other);
  if (column < 0 || column === row || hasEdge(base, added, column, row)) return;
  const rows = more.get(column);
  if (rows === undefined) more.set(column, [row]);
  else if (!rows.includes(row)) rows.push(row);
}

/** The base's columns with more edges and all that these fill in, and where each edge of the base has gone. */
function grown(base: Pattern, added: number, more: Map<number, number[]>) {
  const { unknowns, columnStart, rowOf, edges } = base;
  const edgeAt = new Int32Array(edges);
  const starts = [0];
  const rows: number[] = [];
  for (let j = 0; j < unknowns + added; j++) {
    const start = rows.length;
    if (j >= added)
      for (let p = columnStart[j - added]!; p < columnStart[j - added + 1]!; p++) rows.push(rowOf[p]! + added);
    const news = more.get(j);
    if (news !== undefined) {
      for (const row of news) insert(rows, start, row);
      // What a column is joined to, its parent is joined to once the column has gone.
      for (let k = start + 1; k < rows.length; k++) addEdge(base, added, more, rows[start]!, rows[k]!);
    }
    if (j >= added) {
      let at = start;
      for (let p = columnStart[j - added]!; p < columnStart[j - added + 1]!; p++) {
        while (rows[at] !== rowOf[p]! + added) at++;
        edgeAt[p] = at;
      }
    }
    starts.push(rows.length);
  }
  return { columns: columnsWith(Int32Array.from(starts), Int32Array.from(rows)), edgeAt };
}

/** Puts a row in its place among the rising ones from `start` on. */
function insert(rows: number[], start: number, row: number): void {
  let at = rows.length;
  rows.push(row);
  for (; at > start && rows[at - 1]! > row; at--) rows[at] = rows[at - 1]!;
  rows[at] = row;
}
