import type { PointId, WireId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { Standing } from "./standing.ts";
import type { LeadTool } from "./tool.ts";
import type { PenEnd } from "./underWay.ts";

/**
 * Where a lead is clipped that ends here: at a terminal, or on a wire at its nearer end; jaws go round a wire, at a terminal
 * round the only one that leads there. Null on bare paper.
 */
export function leadPlace(
  { lead }: LeadTool,
  { point, wire, spot }: PenEnd,
  { wires }: Circuit,
  standing: Standing,
): PointId | WireId | null {
  if (lead === "jaws") return wire ?? onlyWireAt(wires, point);
  if (point !== null) return point;
  const along = wires.find(({ id }) => id === wire);
  return along ? nearer([along.from, along.to], spot, standing) : null;
}

/** The wire that ends at a point; null where several do: which one the jaws are to go round is for the hand to say. */
function onlyWireAt(wires: Circuit["wires"], point: PointId | null): WireId | null {
  const [only, another] = wires.filter(({ from, to }) => from === point || to === point);
  return only !== undefined && another === undefined ? only.id : null;
}

/** The one of these points that lies nearer to a spot; null where none is on the page. */
function nearer(points: readonly PointId[], { x, y }: Spot, { spots }: Standing): PointId | null {
  const off = (point: PointId): number => {
    const spot = spots.get(point);
    return spot ? Math.hypot(spot.x - x, spot.y - y) : Number.POSITIVE_INFINITY;
  };
  const [near] = points.filter((point) => spots.has(point)).sort((one, other) => off(one) - off(other));
  return near ?? null;
}
