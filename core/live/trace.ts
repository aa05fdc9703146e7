import type { NodeIndex } from "../solve/element.ts";
import type { Placed } from "./network.ts";
import { doorsOf } from "./passage.ts";
import type { Rig } from "./rig.ts";

/** A path through the network: the elements passed, from the start to the end it was asked for. */
export type Trace = readonly Placed[];

/**
 * The path of fewest elements from a node to one of `ends`, or null. "towards" follows current into the return, "away"
 * goes against it, towards a feed. Loads are passed only where `throughLoads` says so, sources never, and no node that
 * `isShut` marks: a way to ground does not lead through what is firmly fed.
 */
export function traceTo(
  rig: Rig,
  from: NodeIndex,
  ends: ReadonlySet<NodeIndex>,
  way: "towards" | "away",
  throughLoads: boolean,
  isShut: (node: NodeIndex) => boolean = () => false,
): Trace | null {
  const { network, isOpen } = rig;
  const doors = doorsOf(network);
  const cameBy = new Map<NodeIndex, { readonly element: number; readonly node: NodeIndex }>();
  const queue: NodeIndex[] = [from];
  const seen = new Set<NodeIndex>(queue);
  for (let next = 0; next < queue.length; next++) {
    const node = queue[next]!;
    if (ends.has(node)) return backTrack(rig, cameBy, from, node);
    for (let door = doors.start[node]!; door < doors.start[node + 1]!; door++) {
      const element = doors.element[door]!;
      const other = doors.other[door]!;
      if (isOpen[element] || doors.isSource[element] || seen.has(other) || isShut(other)) continue;
      if (!throughLoads && !doors.isFirm[element]) continue;
      if (doors.isDiode[element] && (way === "towards") !== (doors.fromA[door] === 1)) continue;
      seen.add(other);
      cameBy.set(other, { element, node });
      queue.push(other);
    }
  }
  return null;
}

function backTrack(
  rig: Rig,
  cameBy: ReadonlyMap<NodeIndex, { readonly element: number; readonly node: NodeIndex }>,
  from: NodeIndex,
  end: NodeIndex,
): Trace {
  const path: Placed[] = [];
  for (let node = end; node !== from; ) {
    const step = cameBy.get(node)!;
    path.push(rig.network.elements[step.element]!);
    node = step.node;
  }
  return path.reverse();
}

/** Where everything joined to a node ends: open elements with, beyond them, another node. Nodes that `isShut` marks end it too. */
export function openEdges(
  rig: Rig,
  from: NodeIndex,
  isShut: (node: NodeIndex) => boolean = () => false,
): readonly { readonly placed: Placed; readonly beyond: NodeIndex }[] {
  const { network, isOpen } = rig;
  const doors = doorsOf(network);
  const queue: NodeIndex[] = [from];
  const seen = new Set<NodeIndex>(queue);
  const edges: { readonly placed: Placed; readonly beyond: NodeIndex }[] = [];
  for (let next = 0; next < queue.length; next++) {
    const node = queue[next]!;
    for (let door = doors.start[node]!; door < doors.start[node + 1]!; door++) {
      const element = doors.element[door]!;
      const other = doors.other[door]!;
      if (isOpen[element]) edges.push({ placed: network.elements[element]!, beyond: other });
      else if (!doors.isSource[element] && !seen.has(other) && !isShut(other)) {
        seen.add(other);
        queue.push(other);
      }
    }
  }
  return edges.filter(({ beyond }) => !seen.has(beyond));
}
