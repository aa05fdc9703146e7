import type { PointId } from "../base/ids.ts";
import type { Face, FacePlace } from "./face.ts";

/** The part of a face that is drawn, and on which sides it was cut off. */
export interface FaceBlock {
  readonly rows: readonly (readonly (FacePlace | null)[])[];
  readonly cutLeft: boolean;
  readonly cutRight: boolean;
  readonly cutTop: boolean;
  readonly cutBottom: boolean;
}

/**
 * The places round a point, at most this many across and down: a wide plug is cut to what a person needs to find the pin.
 * The other lead's place is kept in sight where the block can hold both.
 */
export function blockOf(face: Face, across: number, down: number, red: PointId, black: PointId): FaceBlock {
  const wide = Math.max(1, ...face.rows.map((row) => row.length));
  const pin = spotOf(face, red) ?? [0, 0];
  const other = spotOf(face, black) ?? pin;
  const [top, bottom] = span(pin[0], other[0], face.rows.length, down);
  const [left, right] = span(pin[1], other[1], wide, across);
  return {
    rows: face.rows
      .slice(top, bottom)
      .map((row) => Array.from({ length: right - left }, (_, i) => row[left + i] ?? null)),
    cutLeft: left > 0,
    cutRight: right < wide,
    cutTop: top > 0,
    cutBottom: bottom < face.rows.length,
  };
}

/** From where to where to cut: the pin one in from the start, moved so that the other lead is inside where it can be. */
function span(pin: number, other: number, count: number, most: number): readonly [number, number] {
  if (count <= most) return [0, count];
  const isNear = Math.abs(other - pin) < most;
  const wanted = isNear && other !== pin ? Math.min(pin, other) : pin - 1;
  const start = Math.max(0, Math.min(wanted, count - most));
  return [start, start + most];
}

function spotOf(face: Face, point: PointId): readonly [number, number] | undefined {
  for (const [row, places] of face.rows.entries()) {
    const column = places.findIndex((place) => place?.point === point);
    if (column >= 0) return [row, column];
  }
  return undefined;
}
