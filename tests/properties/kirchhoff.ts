import type { Rig } from "../../core/live/rig.ts";
import type { Element } from "../../core/solve/element.ts";
import { ampsThrough } from "../reference/laws.ts";
import { Sets } from "../reference/sets.ts";

/** Amps that flow out of each node and are not made good; joined nodes count as one, filed under the lowest of them. */
function unbalanced(rig: Rig, elements: readonly (Element | null)[]): Float64Array {
  const { nodeCount } = rig.network;
  const same = new Sets(nodeCount);
  for (const element of elements) if (element?.law === "joint") same.merge(element.a, element.b);
  const amps = new Float64Array(nodeCount);
  for (const [index, element] of elements.entries()) {
    if (!element || element.law === "joint") continue;
    const { a, b } = element;
    // On a floating island no node has volts of its own, and only differences count.
    const isFloating = rig.solver.isFloating(a) || rig.solver.isFloating(b);
    const across = isFloating ? rig.solver.voltsAcross(index) : rig.solver.volts(a) - rig.solver.volts(b);
    const passed = ampsThrough(element, across);
    amps[same.of(a)]! += passed;
    amps[same.of(b)]! -= passed;
  }
  return amps;
}

/** The greatest amps out of balance at any node, by laws and volts read apart from the solver. */
export function worstResidual(rig: Rig, elements: readonly (Element | null)[]): number {
  return Math.max(...unbalanced(rig, elements).map(Math.abs));
}

/**
 * The greatest volts over any element that cannot carry current, since one of its ends leads nowhere else. Batteries
 * and regulated sources apart, they must have none: a switched-off wire has the volts of what it hangs on.
 */
export function worstDeadVolts(rig: Rig, elements: readonly (Element | null)[]): number {
  const { nodeCount } = rig.network;
  const same = new Sets(nodeCount);
  for (const element of elements) if (element?.law === "joint") same.merge(element.a, element.b);
  const at: number[][] = Array.from({ length: nodeCount }, () => []);
  const ends = elements.map((element) => (element ? [same.of(element.a), same.of(element.b)] : [0, 0]));
  ends.forEach(([a = 0, b = 0], index) => {
    if (a === b) return;
    at[a]!.push(index);
    at[b]!.push(index);
  });
  const isGone = new Uint8Array(elements.length);
  const count = at.map((list) => list.length);
  const leaves = [...at.keys()].filter((node) => count[node] === 1 && node !== 0);
  let worst = 0;
  for (let leaf = leaves.pop(); leaf !== undefined; leaf = leaves.pop()) {
    const index = at[leaf]!.find((each) => isGone[each] === 0);
    if (index === undefined) continue;
    isGone[index] = 1;
    const { law } = elements[index]!;
    if (law !== "source" && law !== "regulated") worst = Math.max(worst, Math.abs(rig.solver.voltsAcross(index)));
    const other = ends[index]![0] === leaf ? ends[index]![1]! : ends[index]![0]!;
    if (--count[other]! === 1 && other !== 0) leaves.push(other);
  }
  return worst;
}
