import type { ConnectorId, PointId, WireId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { End, Part } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit } from "./circuit.ts";
import { isInLine, pointsOf, terminalPoint } from "./points.ts";
import { Sets } from "./sets.ts";

/** Points that wires, splices, page links and plugs join into one. Its id is its first point in the circuit's order. */
export interface Net {
  readonly id: PointId;
  readonly points: readonly PointId[];
  readonly wires: readonly WireId[];
}

/** All nets of a circuit with every plug home, in the order of their first points. */
export const netsOf = remember((circuit: Circuit): readonly Net[] => listed(circuit, []));

/** All nets with these plugs pulled apart: a cavity and its terminal, or the two sides of an in-line joint, part. */
export function netsApart(circuit: Circuit, apart: readonly ConnectorId[]): readonly Net[] {
  return apart.length === 0 ? netsOf(circuit) : listed(circuit, apart);
}

const byPoint = remember(
  (nets: readonly Net[]): ReadonlyMap<PointId, Net> =>
    new Map(nets.flatMap((net) => net.points.map((point) => [point, net] as const))),
);

/** The net of a point, with every plug home; undefined where there is no such point. */
export function netOf(circuit: Circuit, point: PointId): Net | undefined {
  return byPoint(netsOf(circuit)).get(point);
}

/** Ids of the wires that share a net with this one, without itself. */
export function sharedWith(circuit: Circuit, wire: WireId): readonly WireId[] {
  const found = circuit.wires.find((candidate) => candidate.id === wire);
  const net = found && netOf(circuit, found.from);
  return net ? net.wires.filter((id) => id !== wire) : [];
}

function listed(circuit: Circuit, apart: readonly ConnectorId[]): readonly Net[] {
  const sets = new Sets();
  for (const part of circuit.parts) {
    if (isInLine(part) && apart.includes(part.id)) continue;
    for (const [a, b] of joinedInside(circuit, part)) sets.merge(a, b);
  }
  for (const connector of circuit.connectors) {
    if (apart.includes(connector.id)) continue;
    for (const [cavity, carries] of Object.entries(connector.cavities ?? {})) {
      sets.merge(carries, `${connector.id}-${cavity}`);
    }
  }
  for (const wire of circuit.wires) sets.merge(wire.from, wire.to);
  const found = new Map<string, { id: PointId; points: PointId[]; wires: WireId[] }>();
  for (const { id } of pointsOf(circuit)) {
    const set = sets.of(id);
    const net = found.get(set);
    if (net) net.points.push(id);
    else found.set(set, { id, points: [id], wires: [] });
  }
  for (const wire of circuit.wires) found.get(sets.of(wire.from))?.wires.push(wire.id);
  return [...found.values()];
}

/**
 * Pairs that a part which only joins makes one: legs of a splice, links of one name, the two sides of a joint. A body is
 * left out: what shares a body does not share a net.
 */
function joinedInside(circuit: Circuit, part: Part): readonly (readonly [string, string])[] {
  const kind = kindOf(part.kind);
  if (kind?.role !== "join") return [];
  const elements = kind.model(viewOf(kind, part, circuit.nominalVolts));
  return elements
    .filter(({ passes, a, b }) => passes === "conductor" && !isBody(a) && !isBody(b))
    .map(({ a, b }) => [placeOf(part, a), placeOf(part, b)] as const);
}

/** The name of an end inside a part, as one name in the whole circuit. */
export function placeOf(part: Part, end: End): string {
  if (end.startsWith("=")) return end;
  return end.startsWith("~") ? `${part.id}${end}` : terminalPoint(part, end);
}

function isBody(end: End): boolean {
  return end.startsWith("=body:");
}
