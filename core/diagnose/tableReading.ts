import type { ConnectorId, PointId } from "../base/ids.ts";
import type { Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt, isInLine, parsePoint, partAt, pointAt, terminalPoint, terminalsOf } from "../circuit/points.ts";
import type { Fault } from "../live/fault.ts";
import { burns, lampOn } from "../live/instruments/testLamp.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { snapshotOf } from "../live/snapshot.ts";
import type { Brightness } from "../trade/instruments.ts";
import type { PositionCell, PositionRow, PositionTable } from "./positionTable.ts";
import { type Stand, standsFor } from "./tablePositions.ts";
import { wiresAt } from "./testPoint.ts";

/** Cells of one state closer than this share of nominal volts read the same: the sag of a sister load is no change. */
const SAME_SHARE = 0.05;

/**
 * The position table of a connector: every pin in every distinct position, plug on and off, what a 10 Mohm meter shows
 * and how a 4 A lamp burns to either post. Columns that read alike are merged into the first of them.
 */
export function positionTable(circuit: Circuit, connector: ConnectorId, faults: readonly Fault[] = []): PositionTable {
  const points = pinsOf(circuit, connector);
  const read = standsFor(circuit, connector).map((stand) => ({
    stand,
    cells: readStand(circuit, stand, points, faults),
  }));
  const kept: { readonly stand: Stand; readonly cells: readonly PositionCell[]; readonly merged: string[] }[] = [];
  for (const { stand, cells } of read) {
    const like = kept.find(
      (each) =>
        each.stand.plugged === stand.plugged && readsAlike(each.cells, cells, SAME_SHARE * circuit.nominalVolts),
    );
    const name = stand.under === "" ? stand.title : `${stand.title} (${stand.under})`;
    if (like) like.merged.push(name);
    else kept.push({ stand, cells, merged: [] });
  }
  const rows: readonly PositionRow[] = points.map((point, row) => ({
    point,
    pin: point.slice(point.search(/[.-][^.-]+$/) + 1),
    colour: wiresAt(circuit, point)[0]?.colour ?? null,
    leadsTo: leadsTo(circuit, point),
    cells: kept.map(({ cells }) => cells[row]!),
  }));
  return { connector, columns: kept.map(({ stand, merged }) => ({ ...stand, merged })), rows };
}

/** Pins of a connector that carry a wire, wire side, in the order of its face; of an in-line joint both halves. */
function pinsOf(circuit: Circuit, id: ConnectorId): readonly PointId[] {
  const part = partAt(circuit, id);
  const all =
    part && isInLine(part)
      ? terminalsOf(circuit, part).map((terminal) => terminalPoint(part, terminal))
      : (connectorAt(circuit, id)?.rows.flat() ?? []).map((cavity) => `${id}-${cavity}`);
  return all.filter((point) => wiresAt(circuit, point).length > 0);
}

function readStand(
  circuit: Circuit,
  { condition }: Stand,
  points: readonly PointId[],
  faults: readonly Fault[],
): readonly PositionCell[] {
  const rig = new Rig(circuit, faults);
  reach(rig, condition);
  const { nodes, volts } = snapshotOf(rig);
  return points.map((point) => {
    const node = rig.network.nodes.get(point)!;
    const state = nodes.state[node]!;
    const reachesNeither = state === "floating";
    return {
      state,
      volts: reachesNeither ? null : volts[node]!,
      lampToMinus: reachesNeither ? "dark" : burnsAt(circuit, point, "battery -", { condition, faults }),
      lampToPlus: reachesNeither ? "dark" : burnsAt(circuit, point, "battery +", { condition, faults }),
    };
  });
}

/** How a 4 A lamp burns between a point and a post, solved with the lamp in the circuit. */
function burnsAt(
  circuit: Circuit,
  point: PointId,
  lampTo: "battery +" | "battery -",
  { condition, faults }: { readonly condition: Stand["condition"]; readonly faults: readonly Fault[] },
): Brightness {
  const rig = new Rig(circuit, faults, [lampOn("heavy", point, lampTo, circuit.nominalVolts)]);
  reach(rig, condition);
  return burns(rig);
}

function readsAlike(one: readonly PositionCell[], other: readonly PositionCell[], sameVolts: Volts): boolean {
  return one.every((cell, index) => {
    const like = other[index]!;
    const alikeVolts =
      cell.volts === null || like.volts === null
        ? cell.volts === like.volts
        : Math.abs(cell.volts - like.volts) < sameVolts;
    return (
      cell.state === like.state &&
      alikeVolts &&
      cell.lampToMinus === like.lampToMinus &&
      cell.lampToPlus === like.lampToPlus
    );
  });
}

/** Where the wire at a pin leads: the part at its far end, or the name of the page link there. */
function leadsTo(circuit: Circuit, point: PointId): string {
  const wire = wiresAt(circuit, point)[0];
  if (!wire) return "";
  const far = parsePoint(circuit, wire.from === point ? wire.to : wire.from);
  if (!far.ok) return "";
  const end =
    far.value.kind === "cavity" && far.value.carries !== undefined ? pointAt(circuit, far.value.carries) : far.value;
  if (end?.kind !== "terminal") return "";
  const name = end.part.kind === "page-link" ? end.part.settings?.name : end.part.id;
  return `to ${name ?? end.part.id}`;
}
