import type { PointId } from "../base/ids.ts";
import type { Circuit, Connector } from "../circuit/circuit.ts";
import { isInLine, partOfPoint, pointAt } from "../circuit/points.ts";
import { wireBetween } from "./wireEnds.ts";

/** What wires can be led to as one: a plug, or one half of an in-line joint. */
export interface ConnectorSide {
  /** `X5`, or `X30-a` for a half. */
  readonly id: string;
  /** Id of the connector or joint. */
  readonly connector: string;
  readonly label?: string;
  /** Where its wires end, in the order of its face; empty places are left out. */
  readonly points: readonly PointId[];
}

const HALVES = ["a", "b"] as const;

/** Every plug and both halves of every in-line joint, in the order of the circuit. */
export function connectorSides(circuit: Circuit): readonly ConnectorSide[] {
  const joints = new Set(circuit.parts.filter(isInLine).map(({ id }) => id));
  const labels = new Map(circuit.parts.map(({ id, label }) => [id, label]));
  return circuit.connectors.flatMap((connector) => {
    const { id, label = labels.get(id) } = connector;
    const about = { connector: id, ...(label !== undefined && { label }) };
    if (!joints.has(id)) return [{ ...about, id, points: pointsOn(circuit, connector, "") }];
    return HALVES.map((half) => ({ ...about, id: `${id}-${half}`, points: pointsOn(circuit, connector, half) }));
  });
}

function pointsOn(circuit: Circuit, { id, rows, cavities }: Connector, half: string): readonly PointId[] {
  return rows.flat().flatMap((cavity) => {
    const point = `${id}-${cavity}${half}`;
    const isFilled = cavity !== "" && (cavities === undefined || Object.hasOwn(cavities, cavity));
    return isFilled && pointAt(circuit, point) ? [point] : [];
  });
}

/** The pages on which the ends of some wires would stand, each once. */
export function pagesOfPairs(circuit: Circuit, pairs: readonly Pair[]): readonly string[] {
  const pages = pairs.flatMap(({ from, to }) =>
    [from, to].flatMap((point) => circuit.placement.parts[partOfPoint(circuit, point)?.part.id ?? ""]?.page ?? []),
  );
  return [...new Set(pages)];
}

/** Two points between which a wire is wanted. */
export interface Pair {
  readonly from: PointId;
  readonly to: PointId;
}

/**
 * Place by place from one side to the other: by their numbers where the shorter side has none that the other lacks, else
 * in order. Pairs between which a wire runs already are left out.
 */
export function pairsAcross(circuit: Circuit, one: ConnectorSide, other: ConnectorSide): readonly Pair[] {
  const [names, others] = [one, other].map(({ points }) => new Map(points.map((point) => [placeIn(point), point])));
  const [fewer, more] = names!.size <= others!.size ? [names!, others!] : [others!, names!];
  const isByNumber = [...fewer.keys()].every((name) => more.has(name));
  const pairs = one.points.flatMap((from, index): readonly Pair[] => {
    const to = isByNumber ? others!.get(placeIn(from)) : other.points[index];
    return to === undefined ? [] : [{ from, to }];
  });
  return pairs.filter(({ from, to }) => from !== to && !wireBetween(circuit, from, to));
}

/** The number of a place, the half of a joint left out: `1` of `X5-1` and of `X30-1a`. */
function placeIn(point: PointId): string {
  const place = point.slice(point.indexOf("-") + 1);
  return /^\d+[ab]$/.test(place) ? place.slice(0, -1) : place;
}
