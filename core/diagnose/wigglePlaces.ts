import type { PointId } from "../base/ids.ts";
import type { Minutes } from "../base/units.ts";
import { WIGGLE_WORDS as WORDS } from "../base/words/wiggle.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt, pointAt } from "../circuit/points.ts";
import { targetOf } from "../live/fault.ts";
import { kindOf } from "../parts/catalogue.ts";
import { minutesToOpen, reachOf } from "./testPoint.ts";

/** How a place is moved. */
export type Moved = keyof typeof WORDS.move;

/** Something that is taken in the hand and moved while the meter is watched. */
export interface WigglePlace {
  /** A plug `X5`, a part `SP1`, or the run between two of them `X5/X30`: as it is typed. */
  readonly id: string;
  /** As it is printed: "Run X5 to X30: W13, W14". */
  readonly title: string;
  readonly moved: Moved;
  readonly access: string | null;
}

/** The place that a fault's target is moved at: its plug, itself, or the run its wire lies in. */
export function placeFor(circuit: Circuit, target: string): WigglePlace {
  const found = targetOf(circuit, target);
  if (found?.is === "cavity") return whole(circuit, found.connector, "plug");
  if (found?.is === "wire") return runOf(circuit, target);
  return whole(circuit, target, movedAs(circuit, target));
}

function whole(circuit: Circuit, id: string, moved: Moved): WigglePlace {
  return { id, title: id, moved, access: reachOf(circuit, id).access ?? null };
}

function movedAs(circuit: Circuit, part: string): Moved {
  const kind = kindOf(partAt(circuit, part)?.kind ?? "");
  switch (kind?.name) {
    case "splice":
    case "ground":
    case "relay":
    case "fuse":
      return kind.name;
    case "connector":
      return "plug";
    default:
      return kind?.role === "control" ? "control" : "part";
  }
}

/** All wires between the same two things are one run: they lie in one harness, as far as the drawing tells. */
function runOf(circuit: Circuit, wire: string): WigglePlace {
  const endsOf = ({ from, to }: { readonly from: PointId; readonly to: PointId }): readonly string[] =>
    [ownerOf(circuit, from), ownerOf(circuit, to)].sort();
  const own = circuit.wires.find(({ id }) => id === wire);
  const ends = own ? endsOf(own) : [wire, wire];
  const wires = circuit.wires.filter((each) => endsOf(each).join() === ends.join()).map(({ id }) => id);
  const minutes = (access: string | null): Minutes => minutesToOpen(circuit, access, new Set());
  const [access = null] = ends
    .map((end) => reachOf(circuit, end).access ?? null)
    .sort((one, other) => minutes(one) - minutes(other));
  return {
    id: ends.join("/"),
    title: WORDS.run(ends[0]!, ends[1]!, wires.join(", ")),
    moved: "run",
    // A run is reached at either of its ends.
    access,
  };
}

/** The plug or the part that a wire ends on. */
function ownerOf(circuit: Circuit, point: PointId): string {
  const end = pointAt(circuit, point);
  return end?.kind === "terminal" ? end.part.id : point.replace(/-[^-]+$/, "");
}
