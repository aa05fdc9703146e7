import type { PartId, PointId } from "../base/ids.ts";
import type { GridUnits, Volts } from "../base/units.ts";
import type { Circuit, Connector, PartPlace, Placement, Wire } from "../circuit/circuit.ts";
import { partAt, pointAt } from "../circuit/points.ts";
import type { Part } from "../parts/kind.ts";

/** Where a part of a fragment stands, from the top left of the whole. */
export type FragmentPlace = Omit<PartPlace, "page">;

/** Parts with the wires between them and the connectors that carry them alone, to be put into a circuit. Plain data. */
export interface Fragment {
  readonly format: "wirefathom/fragment";
  readonly version: 1;
  /** What the circuit had from which it was taken. */
  readonly nominalVolts: Volts;
  readonly colourCodes: Circuit["colourCodes"];
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
  readonly connectors: readonly Connector[];
  /** A part that stood on no page has no place. */
  readonly places: Readonly<Record<PartId, FragmentPlace>>;
  /** Bends that a person has set, from the same top left. */
  readonly bends: Placement["wires"];
}

/**
 * The parts of these ids as a fragment, in the order of the circuit; ids of anything else count for nothing, since what
 * goes along follows from the parts. A wire whose connector stays behind ends on the terminal.
 */
export function copied(circuit: Circuit, ids: readonly string[]): Fragment {
  const chosen = new Set(ids.filter((id) => partAt(circuit, id) !== undefined));
  const connectors = circuit.connectors.filter((connector) => carriesOnly(circuit, connector, chosen));
  const kept = new Set(connectors.map(({ id }) => id));
  const wires = circuit.wires.flatMap((wire): readonly Wire[] => {
    const [from, to] = [endOn(circuit, wire.from, chosen, kept), endOn(circuit, wire.to, chosen, kept)];
    return from === null || to === null ? [] : [untied({ ...wire, from, to })];
  });
  const { x, y } = originOf(circuit, [...chosen]);
  return {
    format: "wirefathom/fragment",
    version: 1,
    nominalVolts: circuit.nominalVolts,
    colourCodes: circuit.colourCodes,
    parts: circuit.parts.filter(({ id }) => chosen.has(id)).map(untied),
    wires,
    connectors,
    places: Object.fromEntries(
      Object.entries(circuit.placement.parts).flatMap(([id, { page: _, ...place }]) =>
        chosen.has(id) ? [[id, { ...place, x: place.x - x, y: place.y - y }] as const] : [],
      ),
    ),
    bends: Object.fromEntries(
      wires.flatMap(({ id }) => {
        const bends = circuit.placement.wires[id];
        return bends ? [[id, bends.map(([across, down]) => [across - x, down - y] as const)] as const] : [];
      }),
    ),
  };
}

/** A copy was not redrawn from a printed page. */
function untied<T extends Part | Wire>(thing: T): T {
  const { printed, seen, ...rest } = thing as T & Pick<Wire, "seen">;
  return printed || seen ? (rest as T) : thing;
}

/** The top left of the parts that stand on a page, in grid units; the page's own corner where none does. */
export function originOf(
  { placement }: Circuit,
  ids: readonly PartId[],
): { readonly x: GridUnits; readonly y: GridUnits } {
  const places = ids.flatMap((id) => placement.parts[id] ?? []);
  if (places.length === 0) return { x: 0, y: 0 };
  return { x: Math.min(...places.map(({ x }) => x)), y: Math.min(...places.map(({ y }) => y)) };
}

/** The face of an in-line joint goes with its part; another connector where all that it carries goes. */
function carriesOnly(circuit: Circuit, { id, cavities }: Connector, chosen: ReadonlySet<PartId>): boolean {
  if (!cavities) return chosen.has(id);
  const carried = Object.values(cavities);
  return carried.length > 0 && carried.every((terminal) => isOn(circuit, terminal, chosen));
}

function isOn(circuit: Circuit, terminal: PointId, chosen: ReadonlySet<PartId>): boolean {
  const point = pointAt(circuit, terminal);
  return point?.kind === "terminal" && chosen.has(point.part.id);
}

/** Where an end of a wire lies in the fragment; null where it leads out of it. */
function endOn(circuit: Circuit, end: PointId, chosen: ReadonlySet<PartId>, kept: ReadonlySet<string>): PointId | null {
  const point = pointAt(circuit, end);
  if (point?.kind !== "cavity") return isOn(circuit, end, chosen) ? end : null;
  if (point.carries === undefined || !isOn(circuit, point.carries, chosen)) return null;
  return kept.has(point.connector.id) ? end : point.carries;
}
