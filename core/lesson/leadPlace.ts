import type { PointId } from "../base/ids.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { pointAt, wireSideOf } from "../circuit/points.ts";

/** Where a lead goes for a point: a terminal is probed at the back of the plug that carries it, while that is home. */
export function leadPlace(circuit: Circuit, point: PointId, { apart = [] }: Condition): PointId {
  const behind = wireSideOf(circuit, point);
  const plug = pointAt(circuit, behind);
  return plug?.kind === "cavity" && apart.includes(plug.connector.id) ? point : behind;
}
