import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Mark, Spot } from "../../core/drawing/mark.ts";
import type { Thing } from "../state/state.ts";
import { wireRuns } from "./places.ts";
import type { Standing } from "./standing.ts";

/** Parts that lie whole in the box between two spots, and wires whose every corner does. */
export function thingsIn(
  { parts }: Standing,
  marks: readonly Mark[],
  { wires }: Circuit,
  one: Spot,
  other: Spot,
): readonly Thing[] {
  const [left, right] = [Math.min(one.x, other.x), Math.max(one.x, other.x)];
  const [top, bottom] = [Math.min(one.y, other.y), Math.max(one.y, other.y)];
  const isIn = ({ x, y }: Spot): boolean => x >= left && x <= right && y >= top && y <= bottom;
  const inParts = [...parts.values()].flatMap(({ part, box }): readonly Thing[] =>
    isIn({ x: box.left, y: box.top }) && isIn({ x: box.right, y: box.bottom }) ? [{ is: "part", id: part.id }] : [],
  );
  const inWires = wires.flatMap(({ id }): readonly Thing[] => {
    const spots = wireRuns(marks, id).flat();
    return spots.length > 0 && spots.every(isIn) ? [{ is: "wire", id }] : [];
  });
  return [...inParts, ...inWires];
}
