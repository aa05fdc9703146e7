import type { ConnectorId, PointId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { isInLine, parsePoint, wireSideOf } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, goingOn, without } from "../editOf.ts";
import { plugOf } from "../faceRows.ts";
import { endsMoved, wireBetween } from "../wireEnds.ts";

/**
 * Puts a part's terminal into a cavity, or null for none. Wires of the terminal then end on the cavity; a cavity that is
 * emptied leaves its wires on the terminal; those of a cavity that carries another terminal now stay in it. Refuses
 * `point-connector`, `connector-in-line`, `point-cavity`, what names no terminal, `cavity-carries`, `carried-twice`,
 * `wire-to-itself` where a wire runs from the one to the other, and `already-so`.
 */
export function fillCavity(
  bench: Bench,
  connector: ConnectorId,
  cavity: string,
  terminal: PointId | null,
): Outcome<Edit> {
  const { circuit } = bench;
  const plug = plugOf(circuit, connector);
  if (!plug.ok) return plug;
  const place = parsePoint(circuit, `${connector}-${cavity}`);
  if (!place.ok) return place;
  const here = place.value.id;
  const was = plug.value.cavities[cavity];
  const carries = terminal === null ? ok(undefined) : carriedBy(circuit, terminal, here);
  if (!carries.ok) return carries;
  if (carries.value === was) return alreadySo(here);
  const looped = carries.value === undefined ? undefined : wireBetween(circuit, carries.value, here);
  if (looped) return refuse("wire-to-itself", { wire: looped.id, end: here });
  const others = without(plug.value.cavities, cavity);
  const value = carries.value === undefined ? others : { ...plug.value.cavities, [cavity]: carries.value };
  const stays = was !== undefined && carries.value !== undefined;
  return editOf(bench, WIRING_NAMES.fillCavity(here, carries.value ?? WIRING_NAMES.nothing), [
    goingOn(bench),
    { change: "item", list: "connectors", id: connector, field: "cavities", value },
    ...(carries.value !== undefined ? endsMoved(circuit, carries.value, here) : endsMoved(circuit, here, was!)),
    ...(stays ? bendsDroppedAt(circuit, here) : []),
  ]);
}

function carriedBy(circuit: Circuit, text: PointId, here: PointId): Outcome<PointId> {
  const point = parsePoint(circuit, text);
  if (!point.ok) return point;
  const { value } = point;
  if (value.kind !== "terminal" || isInLine(value.part)) return refuse("cavity-carries", { point: value.id });
  const there = wireSideOf(circuit, value.id);
  if (there !== value.id && there !== here) return refuse("carried-twice", { point: value.id, here, there });
  return ok(value.id);
}

/** Wires that stay in a cavity while its terminal is another one lie elsewhere on the page. */
function bendsDroppedAt({ wires, placement }: Circuit, point: PointId): readonly Change[] {
  return wires
    .filter(({ id, from, to }) => (from === point || to === point) && Object.hasOwn(placement.wires, id))
    .map(({ id }) => ({ change: "entry", record: "bends", key: id }));
}
