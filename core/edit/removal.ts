import type { ConnectorId, PartId, PointId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { pointAt } from "../circuit/points.ts";
import type { Change } from "./change.ts";

/** Ids of what goes; the face of an in-line joint goes with its part. */
interface Going {
  readonly parts: ReadonlySet<PartId>;
  readonly connectors: ReadonlySet<ConnectorId>;
}

/**
 * The changes of the circuit that take out parts, wires and connectors, mixed: with a part go its wires, its place and the
 * cavities that carried its terminals; a connector that carries nothing any more goes too. Where a connector goes and
 * its part stays, wires end on the terminals. Refuses `nothing-chosen` and `thing-unknown`.
 */
export function removal(circuit: Circuit, ids: readonly string[]): Outcome<readonly Change[]> {
  const chosen = new Set(ids);
  if (chosen.size === 0) return refuse("nothing-chosen");
  const { parts, wires, connectors, placement } = circuit;
  const known = new Set([...parts, ...wires, ...connectors].map(({ id }) => id));
  for (const id of chosen) if (!known.has(id)) return refuse("thing-unknown", { id });
  const going = goingOf(circuit, chosen);

  const changes: Change[] = [];
  for (const { id, from, to } of wires) {
    const [start, end] = [endAfter(circuit, going, from), endAfter(circuit, going, to)];
    if (chosen.has(id) || start === null || end === null) {
      changes.push({ change: "remove", list: "wires", id });
      if (Object.hasOwn(placement.wires, id)) changes.push({ change: "entry", record: "bends", key: id });
      continue;
    }
    if (start !== from) changes.push({ change: "item", list: "wires", id, field: "from", value: start });
    if (end !== to) changes.push({ change: "item", list: "wires", id, field: "to", value: end });
  }
  for (const { id, cavities } of connectors) {
    if (going.connectors.has(id)) changes.push({ change: "remove", list: "connectors", id });
    else if (cavities && emptied(circuit, going, cavities)) {
      const value = cavitiesLeft(circuit, going, cavities);
      changes.push({ change: "item", list: "connectors", id, field: "cavities", value });
    }
  }
  for (const id of going.parts) {
    changes.push({ change: "remove", list: "parts", id });
    if (Object.hasOwn(placement.parts, id)) changes.push({ change: "entry", record: "places", key: id });
  }
  return ok(changes);
}

type Cavities = Readonly<Record<string, PointId>>;

function goingOf(circuit: Circuit, chosen: ReadonlySet<string>): Going {
  const parts = new Set(circuit.parts.map(({ id }) => id).filter((id) => chosen.has(id)));
  const connectors = circuit.connectors.filter(({ id, cavities }) => {
    if (chosen.has(id)) return true;
    const going = { parts, connectors: new Set<ConnectorId>() };
    if (!cavities || !emptied(circuit, going, cavities)) return false;
    return Object.keys(cavitiesLeft(circuit, going, cavities)).length === 0;
  });
  return { parts, connectors: new Set(connectors.map(({ id }) => id)) };
}

/** Whether a connector loses a terminal that it carries. */
function emptied(circuit: Circuit, going: Going, cavities: Cavities): boolean {
  return Object.values(cavities).some((carries) => isGone(circuit, going, carries));
}

function cavitiesLeft(circuit: Circuit, going: Going, cavities: Cavities): Cavities {
  return Object.fromEntries(Object.entries(cavities).filter(([, carries]) => !isGone(circuit, going, carries)));
}

function isGone(circuit: Circuit, going: Going, terminal: PointId): boolean {
  const point = pointAt(circuit, terminal);
  return point?.kind !== "terminal" || going.parts.has(point.part.id);
}

/** Where a wire's end lies afterwards; null where there is nothing left to end on. */
function endAfter(circuit: Circuit, going: Going, end: PointId): PointId | null {
  const point = pointAt(circuit, end);
  if (point?.kind !== "cavity") return isGone(circuit, going, end) ? null : end;
  const { carries, connector } = point;
  if (carries === undefined) return going.connectors.has(connector.id) ? null : end;
  if (isGone(circuit, going, carries)) return null;
  return going.connectors.has(connector.id) ? carries : end;
}
