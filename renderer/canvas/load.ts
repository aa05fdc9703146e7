import type { PartId, PointId, WireId } from "../../core/base/ids.ts";
import type { GridUnits } from "../../core/base/units.ts";
import { wireSideOf } from "../../core/circuit/points.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import { segmentMoved } from "../../core/edit/setBends.ts";
import { pathOf } from "../../core/edit/wirePath.ts";
import { isSameThing } from "./halos.ts";
import { nearestPiece } from "./places.ts";
import type { Hit } from "./sheetIndex.ts";
import type { Calls, Shown } from "./shown.ts";
import { standingOnOthers } from "./standsOn.ts";
import type { Carried } from "./underWay.ts";

/** What is taken up from the drawing: parts, a straight piece of a wire, or an end of one. `at` is where it was taken. */
export type Load = { readonly at: Spot } & (
  | { readonly is: "parts"; readonly parts: readonly PartId[] }
  | { readonly is: "piece"; readonly wire: WireId; readonly path: readonly Spot[]; readonly piece: number }
  | { readonly is: "end"; readonly wire: WireId; readonly end: "from" | "to"; readonly path: readonly Spot[] }
);

/**
 * What a drag from here takes: a part with all that is chosen beside it; of a wire that is chosen its end at a pin, or the
 * piece under the pointer. Null where it takes nothing and so moves the drawing.
 */
export function loadOf({ circuit, selection, also }: Shown, { thing }: Hit, at: Spot): Load | null {
  if (thing.is === "part") {
    const chosen = selection ? [selection, ...also] : [];
    const parts = chosen.flatMap((each) => (each.is === "part" ? [each.id] : []));
    return { is: "parts", at, parts: parts.includes(thing.id) ? parts : [thing.id] };
  }
  const wire = circuit.wires.find(({ id }) => selection?.is === "wire" && id === selection.id);
  const path = wire ? pathOf(circuit, wire) : null;
  if (!wire || !path) return null;
  const { corners } = path;
  if (thing.is === "point") {
    const [from, to] = [wire.from, wire.to].map((point) => wireSideOf(circuit, point));
    if (from !== thing.id && to !== thing.id) return null;
    const end = from === thing.id ? "from" : "to";
    return { is: "end", at: end === "from" ? corners[0]! : corners.at(-1)!, wire: wire.id, end, path: corners };
  }
  if (!isSameThing(thing, selection)) return null;
  return { is: "piece", at, wire: wire.id, path: corners, piece: nearestPiece(corners, at) };
}

/** A load carried so far, in whole grid units, over a point where one lies under it. */
export function shownLoad(
  { circuit, page }: Shown,
  load: Load,
  dx: GridUnits,
  dy: GridUnits,
  point: PointId | null,
): Carried {
  switch (load.is) {
    case "parts": {
      const { parts } = load;
      return { is: "parts", parts, dx, dy, standsOn: standingOnOthers(circuit, page, parts, dx, dy) };
    }
    case "piece": {
      const { path, piece, wire } = load;
      const by = path[piece]!.y === path[piece + 1]!.y ? dy : dx;
      const bends = by === 0 ? null : segmentMoved(path, piece, by);
      const inner = (bends ?? []).map(([x, y]): Spot => ({ x, y }));
      return { is: "piece", wire, bends, line: bends ? [path[0]!, ...inner, path.at(-1)!] : path };
    }
    case "end": {
      const { at, end, path, wire } = load;
      const free = { x: at.x + dx, y: at.y + dy };
      const fixed = end === "from" ? path.at(-1)! : path[0]!;
      return { is: "end", wire, end, point, line: [fixed, free] };
    }
  }
}

/** Asks for what putting a load down here comes to. */
export function putLoad(carried: Carried, calls: Calls): void {
  switch (carried.is) {
    case "parts":
      if (carried.dx !== 0 || carried.dy !== 0) calls.onMove(carried.parts, carried.dx, carried.dy);
      break;
    case "piece":
      if (carried.bends) calls.onBend(carried.wire, carried.bends);
      break;
    case "end":
      if (carried.point !== null) calls.onReattach(carried.wire, carried.end, carried.point);
      break;
  }
}
