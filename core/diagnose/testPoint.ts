import type { PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Minutes } from "../base/units.ts";
import type { AccessGroup, Circuit, Reach, Wire } from "../circuit/circuit.ts";
import { netOf } from "../circuit/nets.ts";
import { isInLine, pointAt, pointsOf, terminalPoint, terminalsOf, wireSideOf } from "../circuit/points.ts";
import { kindOf } from "../parts/catalogue.ts";

/** Minutes of each act where the circuit says nothing (guesses). */
export const MINUTES = {
  probe: 0.5,
  throwControl: 0.1,
  plugApart: 0.5,
  /** Until modules that a parted plug woke are still again. */
  asleepAgain: 1.5,
  meterMode: 0.2,
  lamp: 0.3,
  /** One wire singled out of its bundle, and the clamp set to nought. */
  clamp: 0.5,
  look: 0.3,
  listen: 0.2,
  scanTool: 3,
  /** A fused jumper clipped to both places of a load, and taken off again. */
  jumper: 1.5,
  /** A motor unbolted from what it drives, and bolted on again. */
  offMechanism: 10,
  swapRelay: 1,
  secondPerson: 1,
  changePlace: 0.5,
} as const;

/** A place a probe can reach, with what it takes to get there. */
export interface TestPoint {
  readonly point: PointId;
  readonly connector: string | null;
  readonly cavity: string | null;
  readonly colour: string | null;
  readonly access: string | null;
  readonly minutes: Minutes;
  readonly hands: 1 | 2;
  readonly doNotProbe: string | null;
  /** The lamp that the wire there can carry; null where a module's pin hangs on it, which no lamp may load. */
  readonly lamp: "4 A lamp" | "0.25 A lamp" | null;
  readonly cautions: readonly string[];
}

/** What `reach` says of a point: its own entry, else its connector's or its part's. */
export function reachOf(circuit: Circuit, point: PointId): Reach {
  const carried = pointsOf(circuit).find((each) => each.id === point);
  const owner = carried?.kind === "terminal" ? carried.part.id : point.replace(/-[^-]+$/, "");
  const part = carried?.kind === "cavity" ? carried.carries?.replace(/\.[^.]+$/, "") : undefined;
  return { ...(part ? circuit.reach[part] : {}), ...circuit.reach[owner], ...circuit.reach[point] };
}

/** Every place that a probe can touch: the wire side of plugs, in-line joints, open terminals, splices and grounds. */
export const testPointsOf = remember((circuit: Circuit): readonly TestPoint[] => {
  const found: TestPoint[] = [];
  for (const part of circuit.parts) {
    if (kindOf(part.kind)?.name === "page-link") continue;
    for (const terminal of terminalsOf(circuit, part)) {
      const point = wireSideOf(circuit, terminalPoint(part, terminal));
      if (wiresAt(circuit, point).length > 0) found.push(testPoint(circuit, point, isInLine(part)));
    }
  }
  return found;
});

/** A part as a place to be looked at or listened to: no pin, no lamp. */
export function placeOf(circuit: Circuit, part: string): TestPoint {
  const reach = reachOf(circuit, part);
  return {
    point: part,
    connector: null,
    cavity: null,
    colour: null,
    access: reach.access ?? null,
    minutes: reach.minutes ?? MINUTES.look,
    hands: 1,
    doNotProbe: null,
    lamp: null,
    cautions: reach.cautions ?? [],
  };
}

/** Wires that end on a point. */
export function wiresAt(circuit: Circuit, point: PointId): readonly Wire[] {
  return circuit.wires.filter((wire) => wire.from === point || wire.to === point);
}

function testPoint(circuit: Circuit, point: PointId, isJoint: boolean): TestPoint {
  const reach = reachOf(circuit, point);
  const dash = point.lastIndexOf("-");
  const isCavity = isJoint || circuit.connectors.some((connector) => point.startsWith(`${connector.id}-`));
  return {
    point,
    connector: isCavity ? point.slice(0, dash) : null,
    cavity: isCavity ? point.slice(dash + 1) : null,
    colour: wiresAt(circuit, point)[0]?.colour ?? null,
    access: reach.access ?? null,
    minutes: reach.minutes ?? MINUTES.probe,
    hands: reach.hands ?? 1,
    doNotProbe: reach.doNotProbe ?? null,
    lamp: lampFor(circuit, point),
    cautions: reach.cautions ?? [],
  };
}

/** Wires thinner than this get the small lamp: 4 A on 0.5 mm2 is more than a signal wire is meant for (common practice). */
const THIN_MM2 = 0.75;

function lampFor(circuit: Circuit, point: PointId): TestPoint["lamp"] {
  const hangsOnModule = netOf(circuit, point)?.points.some((id) => {
    const end = pointAt(circuit, id);
    if (end?.kind !== "terminal" || end.part.kind !== "module") return false;
    const role = end.part.pins?.[end.terminal];
    return role !== "supply" && role !== "ground";
  });
  if (hangsOnModule) return null;
  const isThin = wiresAt(circuit, point).every(({ mm2 }) => mm2 !== undefined && mm2 < THIN_MM2);
  return isThin ? "0.25 A lamp" : "4 A lamp";
}

/** Groups that must come off before this one, itself last. */
export function groupsToOpen(circuit: Circuit, id: string): readonly AccessGroup[] {
  const order: AccessGroup[] = [];
  const visit = (each: string): void => {
    const group = circuit.access.find((candidate) => candidate.id === each);
    if (!group || order.includes(group)) return;
    for (const before of group.after ?? []) visit(before);
    order.push(group);
  };
  visit(id);
  return order;
}

/** Minutes to open what is still shut in front of a point. */
export function minutesToOpen(circuit: Circuit, access: string | null, open: ReadonlySet<string>): Minutes {
  if (access === null) return 0;
  return groupsToOpen(circuit, access).reduce((sum, group) => (open.has(group.id) ? sum : sum + group.minutes), 0);
}
