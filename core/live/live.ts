import type { PartId, PointId, WireId } from "../base/ids.ts";
import { LazyMap, placesOf } from "../base/lazyMap.ts";
import { remember } from "../base/memo.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, Ohms, Volts, Watts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Doing } from "../parts/kind.ts";
import type { NodeIndex } from "../solve/element.ts";
import type { Attachment } from "./attachment.ts";
import type { Fault } from "./fault.ts";
import type { CircuitNetwork } from "./network.ts";
import { Rig } from "./rig.ts";
import { type Happening, moveTo, reach, restore, type Settled } from "./settle.ts";
import { type Snapshot, snapshotOf } from "./snapshot.ts";
import { type PartStates, resume, type Standing, statesOf } from "./standing.ts";
import { unsetCombinations } from "./unset.ts";

/** Live state of one point. Volts are to the reference battery's negative post; null where it floats. */
export interface PointLive {
  readonly state: WireState;
  readonly volts: Volts | null;
  /** Volts it ranges over where its state is undecided. */
  readonly range: readonly [Volts, Volts] | null;
  readonly sourceOhms: Ohms | null;
  /** Powered, and through nothing that a control can switch off. */
  readonly alwaysFed: boolean;
  /** Firm, but more than 5 % of nominal from its post. */
  readonly weak: boolean;
  /** Floating but for a path of more than 100 kohm. */
  readonly ghost: boolean;
}

/** Live state of a wire: at its from end and at its to end; amps positive from -> to. */
export interface WireLive {
  readonly state: readonly [WireState, WireState];
  readonly volts: readonly [Volts | null, Volts | null];
  /** Volts each end ranges over where its state is undecided. */
  readonly range: readonly [PointLive["range"], PointLive["range"]];
  readonly amps: Amps;
  /** Nothing passes along it: the conductor itself is open. */
  readonly isBroken: boolean;
  readonly alwaysFed: boolean;
  readonly weak: boolean;
}

/** Live state of a part: what it does, if it does work, and which of its contacts are closed. */
export interface PartLive {
  readonly doing: Doing["doing"] | null;
  readonly amps: Amps;
  readonly watts: Watts;
  /** Work as a share of the healthy circuit's in the same condition; null for parts that do no work. */
  readonly level: number | null;
  readonly state: string;
  readonly closed: ReadonlySet<string>;
}

/** What an instrument that is clipped on feels. */
export interface ClippedLive {
  /** Volts of red against black; a lead that floats is at the volts that the instrument itself pulls it to. */
  readonly volts: Volts;
  /** Volts it ranges over where a module output that is not set decides. */
  readonly range: readonly [Volts, Volts] | null;
  /** Amps through it, red -> black positive. */
  readonly amps: Amps;
  /** Its own fuse is melted. */
  readonly melted: boolean;
}

/** Live state of a circuit in a condition, with or without faults. What is said of one thing is put together when it is read. */
export interface Live {
  readonly condition: Condition;
  /** False while something chatters or no operating point was found. */
  readonly settled: boolean;
  readonly points: ReadonlyMap<PointId, PointLive>;
  readonly wires: ReadonlyMap<WireId, WireLive>;
  readonly parts: ReadonlyMap<PartId, PartLive>;
  /** What is clipped on, in the order in which it was given. */
  readonly clipped: readonly ClippedLive[];
  readonly happenings: readonly Happening[];
  /** The same circuit just before its first fuse melted, where one did. */
  readonly before: Live | null;
}

/** Live state of a circuit in a condition reached from rest, with faults in it from the start. */
export function liveOf(
  circuit: Circuit,
  condition: Condition = {},
  faults: readonly Fault[] = [],
  clipped: readonly Attachment[] = [],
): Live {
  const rig = new Rig(circuit, faults, clipped);
  const good = faults.length > 0 ? workOf(circuit, condition) : null;
  return readOut(rig, condition, (beforeMelt) => reach(rig, condition, beforeMelt), good).live;
}

/** Live state after going on from where a rig stands; latches, relays and melted fuses keep their history. */
export function liveAfter(rig: Rig, condition: Condition, healthyWork: Work | null = null): Live {
  return liveFrom(rig, null, condition, healthyWork).live;
}

/** Live state, and what goes on from it. */
export interface Reached {
  readonly live: Live;
  /** The states that parts were left in: where the next condition goes on from. */
  readonly states: PartStates;
  readonly work: Work;
  /** Whether the rig still stands there: trying out unset outputs, or a round that chatters, leaves it elsewhere. */
  readonly isRigThere: boolean;
}

/**
 * Live state after going on from where a circuit stood, or with null from where the rig stands. A function of circuit,
 * faults, standing and condition alone: the rig only saves laying them out anew.
 */
export function liveFrom(rig: Rig, before: Standing | null, condition: Condition, healthyWork: Work | null): Reached {
  if (before) resume(rig, before);
  return readOut(rig, condition, (beforeMelt) => moveTo(rig, condition, beforeMelt), healthyWork);
}

/** What each part of the healthy circuit does in a condition, by part. */
export type Work = ReadonlyMap<PartId, Doing>;

/** Work of the circuit without faults, in a condition reached from rest. */
export function workOf(circuit: Circuit, condition: Condition): Work {
  const rig = new Rig(circuit);
  reach(rig, condition);
  return snapshotOf(rig).doing;
}

function readOut(
  rig: Rig,
  condition: Condition,
  bring: (beforeMelt: () => void) => Settled,
  good: Work | null,
): Reached {
  let before: Live | null = null;
  const settled = bring(() => {
    before ??= assemble(rig, condition, [snapshotOf(rig)], { calm: true, happenings: [], round: [] }, good, null);
  });
  const states = statesOf(rig);
  const moments = settled.round.length > 0 ? roundOf(rig, settled) : unsetCombinations(rig, () => snapshotOf(rig));
  return {
    live: assemble(rig, condition, moments, settled, good, before),
    states,
    work: moments[0]!.doing,
    isRigThere: settled.round.length === 0 && moments.length === 1,
  };
}

/** A snapshot in each state of a chattering round. */
function roundOf(rig: Rig, settled: Settled): readonly Snapshot[] {
  return settled.round.map((states) => {
    restore(rig, states);
    rig.solver.solve();
    return snapshotOf(rig);
  });
}

function assemble(
  rig: Rig,
  condition: Condition,
  moments: readonly Snapshot[],
  settled: Settled,
  good: Work | null,
  before: Live | null,
): Live {
  const { network } = rig;
  const first = moments[0]!;
  const { points, pointNodes, wires, wireElements, parts, partIds } = namesOf(network);
  // Many points and ends of wires lie on one node, and show the same.
  const shown: (PointLive | undefined)[] = new Array(network.nodeCount);
  const pointAt = (node: NodeIndex): PointLive => {
    const known = shown[node] ?? pointLive(moments, node);
    shown[node] = known;
    return known;
  };
  const wireAt = ([one, other]: readonly [number, number]): WireLive => {
    const [from, to] = [network.elements[one]!.element.a, network.elements[other]!.element.b];
    return wireLive(first, one, other, pointAt(from), pointAt(to));
  };
  return {
    condition,
    settled: settled.calm,
    points: new LazyMap(points, (place) => pointAt(pointNodes[place]!)),
    wires: new LazyMap(wires, (place) => wireAt(wireElements[place]!)),
    parts: new LazyMap(parts, (place) => partLive(first, partIds[place]!, good)),
    clipped: network.attached.map((index) => clippedLive(network, moments, index)),
    happenings: settled.happenings,
    before,
  };
}

/** Everything in a network that has a name for a person: points with their nodes, wires with their elements, parts. */
const namesOf = remember(({ nodes, wires, parts }: CircuitNetwork) => {
  const named = [...nodes].filter(([name]) => !name.includes("~") && !name.startsWith("="));
  const partIds = [...parts.keys()].filter((id) => !id.startsWith("~"));
  return {
    points: placesOf<PointId>(named.map(([name]) => name)),
    pointNodes: named.map(([, node]) => node),
    wires: placesOf<WireId>(wires.keys()),
    wireElements: [...wires.values()],
    parts: placesOf<PartId>(partIds),
    partIds,
  };
});

/** Nothing ranges at either end of a wire. */
const NO_RANGES: WireLive["range"] = [null, null];

function wireLive({ amps, isOpen }: Snapshot, one: number, other: number, from: PointLive, to: PointLive): WireLive {
  return {
    state: [from.state, to.state],
    volts: [from.volts, to.volts],
    range: from.range === null && to.range === null ? NO_RANGES : [from.range, to.range],
    amps: amps[one]!,
    isBroken: isOpen[one] === 1 || isOpen[other] === 1,
    alwaysFed: from.alwaysFed && to.alwaysFed,
    weak: from.weak || to.weak,
  };
}

function clippedLive(network: CircuitNetwork, moments: readonly Snapshot[], index: number): ClippedLive {
  const { element, owner } = network.elements[index]!;
  const first = moments[0]!;
  const volts = moments.map((moment) => moment.volts[element.a]! - moment.volts[element.b]!);
  return {
    volts: volts[0]!,
    range: rangeOf(volts),
    amps: first.amps[index]!,
    melted: first.states.get(owner) === "melted",
  };
}

/** From lowest to highest where moments are apart by more than a hundredth of a volt. */
function rangeOf(volts: readonly Volts[]): readonly [Volts, Volts] | null {
  const [least, most] = [Math.min(...volts), Math.max(...volts)];
  return most - least > 0.01 ? [least, most] : null;
}

function pointLive(moments: readonly Snapshot[], node: NodeIndex): PointLive {
  const { nodes, sourceOhms } = moments[0]!;
  const state = nodes.state[node]!;
  const agrees = moments.every((moment) => moment.nodes.state[node] === state);
  const range = moments.length === 1 ? null : rangeOf(moments.map(({ volts }) => volts[node]!));
  const ohms = sourceOhms[node]!;
  return {
    state: agrees ? state : "undecided",
    volts: (agrees && state === "floating") || range !== null ? null : moments[0]!.volts[node]!,
    range,
    sourceOhms: state === "floating" || !Number.isFinite(ohms) ? null : ohms,
    alwaysFed: agrees && state === "powered" && nodes.alwaysFed[node] === 1,
    weak: nodes.weak[node] === 1,
    ghost: nodes.ghost[node] === 1,
  };
}

/** Words of a part that does no work. */
const IDLE: readonly Doing["doing"][] = ["off", "released", "stalled", "melted", "tripped"];

/** Whether a part does no work: off, released, stalled, melted or tripped. */
export function isIdle({ doing }: Pick<Doing, "doing">): boolean {
  return IDLE.includes(doing);
}

/** Share of the healthy circuit's work; where that is idle, 1 for doing anything at all. */
export function levelOf(now: Doing, healthy: Doing): number {
  if (!isIdle(healthy) && healthy.work !== 0) return Math.abs(now.work / healthy.work);
  return isIdle(now) ? 0 : 1;
}

function partLive(moment: Snapshot, id: PartId, good: Work | null): PartLive {
  const doing = moment.doing.get(id);
  return {
    doing: doing?.doing ?? null,
    amps: doing?.amps ?? 0,
    watts: doing?.watts ?? 0,
    level: doing ? levelOf(doing, good?.get(id) ?? doing) : null,
    state: moment.states.get(id) ?? "",
    closed: moment.closed.get(id) ?? new Set(),
  };
}
