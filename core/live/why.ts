import type { ControlKey, PointId } from "../base/ids.ts";
import { assert } from "../base/outcome.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { controlsOf } from "../circuit/points.ts";
import type { NodeIndex } from "../solve/element.ts";
import type { Attachment } from "./attachment.ts";
import type { Fault } from "./fault.ts";
import { CLIPPED_NAMES, isFuseOfInstrument } from "./instruments/clipped.ts";
import type { Placed, PlacedPart } from "./network.ts";
import { Rig } from "./rig.ts";
import { moveTo, reach } from "./settle.ts";
import { snapshotOf } from "./snapshot.ts";
import { resume, type Standing } from "./standing.ts";
import { openEdges, traceTo } from "./trace.ts";

/** One part on a path: which of its ways is used, and in what state or position it stands. */
export interface Passed {
  readonly part: string;
  /** `6-4`, `link`: the way through; "" where there is only one. */
  readonly way: string;
  /** "pulled-in", "S5=open": what keeps it closed or open. */
  readonly because: string;
}

/** Why a point is as it is: its path to a feed and to the return, where it stops, and what would change it. */
export interface Why {
  readonly point: PointId;
  readonly state: WireState;
  readonly volts: Volts | null;
  readonly amps: Amps;
  /** Parts passed from the feed to the point; null where there is no path. */
  readonly feed: readonly Passed[] | null;
  /** Parts passed from the point to the return; null where there is no path. */
  readonly back: readonly Passed[] | null;
  /** Open places where a path to a feed or to the return stops, and what lies beyond. */
  readonly stops: readonly (Passed & { readonly beyond: WireState })[];
  /** Single throws that would give the point another state. */
  readonly changes: readonly { readonly control: ControlKey; readonly position: string; readonly state: WireState }[];
}

/** How a rig is brought to a condition. */
type Bring = (rig: Rig, condition: Condition) => void;

/** Why a point has its state in a condition, with or without faults. The point must exist in the circuit. */
export function whyOf(circuit: Circuit, point: PointId, condition: Condition, faults: readonly Fault[] = []): Why {
  return whyBy(() => new Rig(circuit, faults), point, condition, reach);
}

/** Why a point has its state where a circuit stands: what would change it goes on from there, latches and all. */
export function whyFrom(
  circuit: Circuit,
  point: PointId,
  now: Standing,
  faults: readonly Fault[] = [],
  clipped: readonly Attachment[] = [],
): Why {
  const made = () => new Rig(circuit, faults, clipped);
  return whyBy(made, point, now.condition, (rig, condition) => {
    resume(rig, now);
    moveTo(rig, condition);
  });
}

function whyBy(made: () => Rig, point: PointId, condition: Condition, bring: Bring): Why {
  const rig = made();
  bring(rig, condition);
  const node = rig.network.nodes.get(point);
  assert(node !== undefined, `no point ${point}`);
  const moment = snapshotOf(rig);
  const state = moment.nodes.state[node]!;
  const posts = postsOf(rig);
  const isFirm = state === "powered" || state === "grounded" || state === "clash";
  const is =
    (...states: readonly WireState[]) =>
    (other: NodeIndex) =>
      !isFirm && states.includes(moment.nodes.state[other]!);
  const feed = state === "grounded" ? null : traceTo(rig, node, posts, "away", !isFirm, is("grounded"));
  const back = state === "powered" ? null : traceTo(rig, node, new Set([0]), "towards", !isFirm, is("powered"));
  const amps = throughPoint(rig, node);
  const stops = openEdges(rig, node, is("powered", "grounded", "clash")).map(({ placed, beyond }) => ({
    ...passed(rig, placed),
    beyond: moment.nodes.state[beyond]!,
  }));
  return {
    point,
    state,
    volts: state === "floating" ? null : moment.volts[node]!,
    amps,
    feed: feed && withSource(rig, feed, node, posts),
    back: back && passedAlong(rig, back),
    stops: distinct(stops.filter((stop) => stop.beyond !== state && stop.beyond !== "floating")),
    changes: changesOf(made(), point, condition, state, bring),
  };
}

/** Nodes held by an EMF: battery pluses and regulated outputs. */
function postsOf(rig: Rig): ReadonlySet<NodeIndex> {
  const posts = new Set<NodeIndex>();
  rig.network.elements.forEach(({ passes, element }, index) => {
    if (passes === "source" && !rig.isOpen[index]) posts.add(element.a);
  });
  return posts;
}

function withSource(
  rig: Rig,
  path: readonly Placed[],
  node: NodeIndex,
  posts: ReadonlySet<NodeIndex>,
): readonly Passed[] {
  const last = path.at(-1)?.element;
  const end = path.length === 0 ? node : posts.has(last!.a) ? last!.a : last!.b;
  const source = rig.network.elements.find((placed) => placed.passes === "source" && placed.element.a === end);
  const along = passedAlong(rig, [...path].reverse());
  return source
    ? [{ part: source.owner, way: "", because: "" }, ...along.filter((each) => each.part !== source.owner)]
    : along;
}

/** Largest current into a point. */
function throughPoint(rig: Rig, node: NodeIndex): Amps {
  let most = 0;
  rig.network.elements.forEach(({ element }, index) => {
    if (element.law !== "joint" && (element.a === node || element.b === node))
      most = Math.max(most, Math.abs(rig.solver.amps(index)));
  });
  return most;
}

/** Parts on a path in order, each way once; wires, plugs and page links are left out. */
function passedAlong(rig: Rig, path: readonly Placed[]): readonly Passed[] {
  const named = path.filter(
    ({ owner, key, element }) => (rig.network.parts.has(owner) || key === "clipped") && element.law !== "joint",
  );
  return distinct(named.map((placed) => passed(rig, placed)));
}

function distinct<T extends Passed>(list: readonly T[]): readonly T[] {
  const seen = new Set<string>();
  return list.filter(({ part, way }) => {
    const id = `${part} ${way}`;
    const isNew = !seen.has(id);
    seen.add(id);
    return isNew;
  });
}

function passed(rig: Rig, { owner, key, passes }: Placed): Passed {
  const placed = rig.network.parts.get(owner);
  if (isFuseOfInstrument(owner)) return { part: CLIPPED_NAMES.jumper, way: "", because: "" };
  if (!placed) return { part: owner, way: "", because: "" };
  const controls = controlsOf(rig.circuit).filter((control) => control.part.id === owner);
  const deciding = controls.filter(({ control }) =>
    control.positions.some(({ joins }) => joins.some((pair) => pair.join("-") === key)),
  );
  const positions = (deciding.length > 0 ? deciding : controls).map(
    (control) => `${control.key}=${rig.position(control.key)}`,
  );
  const state = rig.states.get(owner) ?? "";
  const because =
    positions.length > 0
      ? positions.join(", ")
      : state === placed.kind.start && placed.kind.role === "protection"
        ? ""
        : state + coilWants(rig, placed, state);
  const isOnlyWay = placed.elements.size === 1;
  return { part: owner, way: passes === "contact" && !isOnlyWay ? key : "", because };
}

/** What the coil of a part that is not pulled in lacks, in words after its state; empty where it lacks neither side. */
function coilWants(rig: Rig, { elements }: PlacedPart, state: string): string {
  const coil = elements.get("coil");
  if (coil === undefined || state !== "released") return "";
  const { a, b } = rig.network.elements[coil]!.element;
  const reaches = (ends: ReadonlySet<NodeIndex>, way: "towards" | "away"): boolean =>
    [a, b].some((end) => traceTo(rig, end, ends, way, false) !== null);
  if (!reaches(postsOf(rig), "away")) return ": its coil has no feed";
  return reaches(new Set([0]), "towards") ? "" : ": its coil has no return";
}

function changesOf(rig: Rig, point: PointId, condition: Condition, state: WireState, bring: Bring): Why["changes"] {
  const node = rig.network.nodes.get(point)!;
  return controlsOf(rig.circuit).flatMap(({ key, control }) => {
    const now = condition.set?.[key] ?? control.positions[0]?.name;
    return control.positions.flatMap(({ name }) => {
      if (name === now) return [];
      bring(rig, { ...condition, set: { ...condition.set, [key]: name } });
      const then = snapshotOf(rig).nodes.state[node]!;
      return then === state ? [] : [{ control: key, position: name, state: then }];
    });
  });
}
