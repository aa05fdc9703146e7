import type { ConnectorId, PartId, PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { netsApart } from "../circuit/nets.ts";
import { partAt, pointAt, pointsOf, terminalPoint, terminalsOf } from "../circuit/points.ts";
import { reachOf } from "./testPoint.ts";

/** How a load is fed by itself: its plug apart, plus on one place of it and minus on the other. */
export interface Feeding {
  readonly load: PartId;
  readonly plug: ConnectorId;
  readonly plus: PointId;
  readonly minus: PointId;
}

/** Kinds that may be fed by themselves: nothing in them minds which way round, or is harmed by full volts. */
const FED: readonly string[] = ["motor", "lamp", "heater", "horn", "solenoid"];

/**
 * How a load can be fed directly, plus on its first terminal; null where no one plug parts it from all else, where it is
 * none that may be fed so, or where it is not to be probed.
 */
export const feedingOf = remember((circuit: Circuit): ((load: PartId) => Feeding | null) => {
  const known = new Map<PartId, Feeding | null>();
  return (load) => {
    const before = known.get(load);
    if (before !== undefined) return before;
    const feeding = foundFor(circuit, load);
    known.set(load, feeding);
    return feeding;
  };
});

function foundFor(circuit: Circuit, load: PartId): Feeding | null {
  const part = partAt(circuit, load);
  if (!part || !FED.includes(part.kind) || reachOf(circuit, load).doNotProbe !== undefined) return null;
  const terminals = terminalsOf(circuit, part).map((terminal) => terminalPoint(part, terminal));
  const [one, two] = terminals;
  if (one === undefined || two === undefined || terminals.length !== 2) return null;
  for (const { id } of circuit.connectors) {
    if (reachOf(circuit, id).doNotProbe !== undefined) continue;
    const nets = netsApart(circuit, [id]);
    const [plus, minus] = [one, two].map((terminal) => {
      const points = nets.find((net) => net.points.includes(terminal))?.points ?? [terminal];
      return placeOn(circuit, id, terminal, points);
    });
    if (plus && minus) return { load, plug: id, plus, minus };
  }
  return null;
}

/** The place of a parted plug that leads to this terminal and to nothing else. */
function placeOn(circuit: Circuit, plug: ConnectorId, terminal: PointId, points: readonly PointId[]): PointId | null {
  const others = points.filter((point) => point !== terminal);
  if (others.length === 0) {
    const carrier = pointsOf(circuit).find((point) => point.kind === "cavity" && point.carries === terminal);
    return carrier?.kind === "cavity" && carrier.connector.id === plug ? terminal : null;
  }
  const isOnPlug = (point: PointId): boolean => {
    const at = pointAt(circuit, point);
    return at?.kind === "terminal" && at.part.id === plug;
  };
  return others.length === 1 && isOnPlug(others[0]!) ? others[0]! : null;
}
