import type { PointId } from "../base/ids.ts";
import type { Minutes } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import { meltedIn } from "../diagnose/predict.ts";
import type { Fault } from "../live/fault.ts";
import { type Live, liveAfter, workOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { complaintIn, type Exercise } from "./exercise.ts";
import type { Replay } from "./replay.ts";
import { type RouteLine, routeLines } from "./routeText.ts";

/** How things stand after one move of a route: what an instructor sees of it. */
export interface RouteStep extends RouteLine {
  readonly condition: Condition;
  /** Minutes of the whole route so far. */
  readonly total: Minutes;
  /** Labels of the trim that is off. */
  readonly off: readonly string[];
  /** Points that the leads are on, red first; what is looked at or fed, by its own name. None where nothing was read. */
  readonly leads: readonly PointId[];
}

/** The steps of a route that was made again, one for each move. */
export function routeSteps(replay: Replay): readonly RouteStep[] {
  const end = replay.at(-1)!;
  const { access } = end.exercise.circuit;
  return routeLines(end).map((line, index) => {
    const { condition, minutes, open } = replay[index + 1]!;
    const { move } = end.route[index]!;
    return {
      ...line,
      condition,
      total: minutes,
      off: access.flatMap(({ id, label }) => (open.includes(id) ? [label] : [])),
      leads: move.do === "probe" ? [move.red, move.black] : [],
    };
  });
}

/** The live state of an exercise's circuit with its fault in it, in a condition, once the complaint was tried: as its vehicle is. */
export function liveInside(exercise: Exercise, faults: readonly Fault[], condition: Condition): Live {
  const { circuit } = exercise;
  const rig = new Rig(circuit, faults);
  const melted = meltedIn(rig, complaintIn(exercise).check.condition);
  reach(rig, {}, undefined, melted);
  return liveAfter(rig, condition, workOf(circuit, condition));
}
