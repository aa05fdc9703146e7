import type { WireState } from "../base/states.ts";
import type { Ohms, Volts } from "../base/units.ts";
import type { NodeIndex } from "../solve/element.ts";
import type { CircuitNetwork } from "./network.ts";
import { type Doors, doorsOf } from "./passage.ts";

/** A path with more ohms than this counts as none: the point floats, with the note "ghost". */
export const GHOST_OHMS: Ohms = 100_000;
/** Ohms that faults may add along a firm path. */
export const FIRM_OHMS: Ohms = 1;
/** Two feeds further apart than this and joined firmly are a clash. */
export const CLASH_VOLTS: Volts = 4;
/** A firm end further from its post than this share of nominal volts is weak. */
export const WEAK_SHARE = 0.05;

/** What the one rule says of every node; arrays are as long as the network has nodes. */
export interface NodeStates {
  readonly state: readonly WireState[];
  readonly weak: Uint8Array;
  readonly ghost: Uint8Array;
  readonly alwaysFed: Uint8Array;
}

/** A terminal held by an EMF, with the volts it has when nothing draws on it. */
interface FeedPost {
  readonly node: NodeIndex;
  readonly openVolts: Volts;
  readonly isBattery: boolean;
}

/**
 * The one rule. `isOpen` says of every element whether it passes nothing now, `volts` is the solved voltage of every
 * node; `alwaysClosed` holds the contacts that no control opens. Paths end at posts, so that one short does not make
 * the whole body a clash.
 */
export function wireStates(
  network: CircuitNetwork,
  isOpen: Uint8Array,
  volts: ArrayLike<Volts>,
  alwaysClosed: Uint8Array,
): NodeStates {
  const doors = doorsOf(network);
  const posts = feedPosts(network, isOpen);
  const isPost = new Uint8Array(network.nodeCount);
  isPost[0] = 1;
  for (const post of posts) isPost[post.node] = 1;

  const firmReturn = walkFirm(network, doors, isOpen, isPost, 0, "towards");
  const lowest = new Float64Array(network.nodeCount).fill(Number.POSITIVE_INFINITY);
  const highest = new Float64Array(network.nodeCount).fill(Number.NEGATIVE_INFINITY);
  const nearest = new Float64Array(network.nodeCount).fill(Number.POSITIVE_INFINITY);
  const postVolts = new Float64Array(network.nodeCount);
  for (const post of posts) {
    const reach = walkFirm(network, doors, isOpen, isPost, post.node, "away");
    for (let node = 0; node < reach.length; node++) {
      const ohms = reach[node]!;
      if (ohms > FIRM_OHMS) continue;
      lowest[node] = Math.min(lowest[node]!, post.openVolts);
      highest[node] = Math.max(highest[node]!, post.openVolts);
      if (ohms < nearest[node]!) {
        nearest[node] = ohms;
        postVolts[node] = volts[post.node]!;
      }
    }
  }

  const isFirm = new Uint8Array(network.nodeCount);
  for (let node = 0; node < isFirm.length; node++) {
    if (firmReturn[node]! <= FIRM_OHMS || nearest[node]! <= FIRM_OHMS) isFirm[node] = 1;
  }
  const feedFirm = nearest.map((ohms) => (ohms <= FIRM_OHMS ? 0 : Number.POSITIVE_INFINITY));
  const returnFirm = firmReturn.map((ohms) => (ohms <= FIRM_OHMS ? 0 : Number.POSITIVE_INFINITY));
  const toFeed = walkLoads(network, doors, isOpen, isFirm, feedFirm, "away");
  const toReturn = walkLoads(network, doors, isOpen, isFirm, returnFirm, "towards");

  const state: WireState[] = [];
  const weak = new Uint8Array(network.nodeCount);
  const ghost = new Uint8Array(network.nodeCount);
  const allowed = WEAK_SHARE * network.circuit.nominalVolts;
  for (let node = 0; node < network.nodeCount; node++) {
    // The return post is ground itself, whatever is shorted onto it.
    const fed = node !== 0 && nearest[node]! <= FIRM_OHMS;
    const returned = firmReturn[node]! <= FIRM_OHMS;
    if (fed && (returned || highest[node]! - lowest[node]! > CLASH_VOLTS)) state.push("clash");
    else if (fed) state.push("powered");
    else if (returned) state.push("grounded");
    else state.push(throughLoads(toFeed[node]! <= GHOST_OHMS, toReturn[node]! <= GHOST_OHMS));
    if (fed !== returned) weak[node] = Math.abs(volts[node]! - (fed ? postVolts[node]! : 0)) > allowed ? 1 : 0;
    if (state[node] === "floating" && (Number.isFinite(toFeed[node]!) || Number.isFinite(toReturn[node]!)))
      ghost[node] = 1;
  }
  return { state, weak, ghost, alwaysFed: alwaysFed(network, doors, isOpen, alwaysClosed, isPost, posts) };
}

function throughLoads(feed: boolean, back: boolean): WireState {
  if (feed && back) return "between";
  if (feed) return "powered-through-load";
  return back ? "grounded-through-load" : "floating";
}

/** Nodes that a battery feeds through conductors and contacts no control can open. */
function alwaysFed(
  network: CircuitNetwork,
  doors: Doors,
  isOpen: Uint8Array,
  alwaysClosed: Uint8Array,
  isPost: Uint8Array,
  posts: readonly FeedPost[],
): Uint8Array {
  const shut = isOpen.map((open, index) => (open || (doors.isContact[index] && !alwaysClosed[index]) ? 1 : 0));
  const fed = new Uint8Array(network.nodeCount);
  for (const post of posts) {
    if (!post.isBattery) continue;
    const reach = walkFirm(network, doors, shut, isPost, post.node, "away");
    for (let node = 0; node < fed.length; node++) if (reach[node]! <= FIRM_OHMS) fed[node] = 1;
  }
  return fed;
}

/**
 * Every terminal held by an EMF. Volts with no current are carried from the return through conductors first and
 * sources second; of a source's two ends the one reached later is the post.
 */
function feedPosts(network: CircuitNetwork, isOpen: Uint8Array): readonly FeedPost[] {
  const doors = doorsOf(network);
  const level = new Int32Array(network.nodeCount).fill(-1);
  const open = new Float64Array(network.nodeCount);
  let front: NodeIndex[] = [0];
  level[0] = 0;
  for (let depth = 0; front.length > 0; depth++) {
    for (let next = 0; next < front.length; next++) {
      const node = front[next]!;
      for (let d = doors.start[node]!; d < doors.start[node + 1]!; d++) {
        const index = doors.element[d]!;
        const other = doors.other[d]!;
        if (
          isOpen[index] ||
          doors.isSource[index] ||
          !doors.isFirm[index] ||
          doors.isDiode[index] ||
          level[other] !== -1
        )
          continue;
        level[other] = depth;
        open[other] = open[node]!;
        front.push(other);
      }
    }
    const beyond: NodeIndex[] = [];
    for (const source of doors.sources) {
      const { element } = network.elements[source]!;
      const emf = element.law === "source" || element.law === "regulated" ? element.volts : 0;
      if (isOpen[source]) continue;
      for (const [from, to, rise] of [
        [element.a, element.b, -emf],
        [element.b, element.a, emf],
      ] as const) {
        if (level[from] !== depth || level[to] !== -1) continue;
        level[to] = depth + 1;
        open[to] = open[from]! + rise;
        beyond.push(to);
      }
    }
    front = beyond;
  }
  return doors.sources.flatMap((source) => {
    const { element } = network.elements[source]!;
    if (isOpen[source] || (element.law !== "source" && element.law !== "regulated")) return [];
    if (level[element.a] === -1 || level[element.b] === -1) return [];
    const plusIsPost = level[element.b]! <= level[element.a]!;
    const node = plusIsPost ? element.a : element.b;
    const openVolts = plusIsPost ? open[element.b]! + element.volts : open[element.a]! - element.volts;
    return node === 0 ? [] : [{ node, openVolts, isBattery: element.law === "source" }];
  });
}

/**
 * Least ohms added by faults from a post to every node along conductors; infinite where there is no firm path.
 * "away" follows current out of a feed, "towards" follows it back into the return.
 */
function walkFirm(
  network: CircuitNetwork,
  doors: Doors,
  isOpen: Uint8Array,
  isPost: Uint8Array,
  post: NodeIndex,
  way: "away" | "towards",
): Float64Array {
  const ohms = new Float64Array(network.nodeCount).fill(Number.POSITIVE_INFINITY);
  ohms[post] = 0;
  const stack: NodeIndex[] = [post];
  while (stack.length > 0) {
    const node = stack.pop()!;
    if (node !== post && isPost[node]) continue;
    for (let d = doors.start[node]!; d < doors.start[node + 1]!; d++) {
      const index = doors.element[d]!;
      if (isOpen[index] || !doors.isFirm[index] || !lets(doors, d, way)) continue;
      const other = doors.other[d]!;
      const sum = ohms[node]! + doors.addedOhms[index]!;
      if (sum <= FIRM_OHMS && sum < ohms[other]!) {
        ohms[other] = sum;
        stack.push(other);
      }
    }
  }
  return ohms;
}

/** Least ohms from the firm nodes to every other node through anything that conducts, never through a firm node. */
function walkLoads(
  network: CircuitNetwork,
  doors: Doors,
  isOpen: Uint8Array,
  isFirm: Uint8Array,
  from: Float64Array,
  way: "away" | "towards",
): Float64Array {
  const ohms = Float64Array.from(from);
  const stack: NodeIndex[] = [];
  for (let node = 0; node < network.nodeCount; node++) if (ohms[node] === 0) stack.push(node);
  while (stack.length > 0) {
    const node = stack.pop()!;
    for (let d = doors.start[node]!; d < doors.start[node + 1]!; d++) {
      const index = doors.element[d]!;
      const other = doors.other[d]!;
      if (isOpen[index] || doors.isSource[index] || isFirm[other] || !lets(doors, d, way)) continue;
      const sum = ohms[node]! + doors.pathOhms[index]!;
      if (sum < ohms[other]!) {
        ohms[other] = sum;
        stack.push(other);
      }
    }
  }
  return ohms;
}

/** Whether a walk may leave its node by this door: a diode passes current from a to b only. */
function lets(doors: Doors, door: number, way: "away" | "towards"): boolean {
  const index = doors.element[door]!;
  if (!doors.isDiode[index]) return true;
  return (way === "away") === (doors.fromA[door] === 1);
}
