import type { PointId } from "../base/ids.ts";
import type { Minutes } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import { meltedIn } from "../diagnose/predict.ts";
import type { Fault } from "../live/fault.ts";
import { type Live, liveAfter, liveOf, workOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { answerWords } from "./answerWords.ts";
import { type Attempt, renewedBy } from "./attempt.ts";
import { complaintIn } from "./exercise.ts";
import { moveWords } from "./moveWords.ts";
import { faultsAfter } from "./renewed.ts";
import type { Replay } from "./replay.ts";
import { type RouteLine, routeLines } from "./routeText.ts";

/** How things stand after one move of a route: what an instructor sees of it. */
export interface RouteStep extends RouteLine {
  /** The move as a person says it, and what the vehicle showed of it; "" where nothing can be seen. */
  readonly words: string;
  readonly seen: string;
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
  const { circuit } = end.exercise;
  return routeLines(end).map((line, index) => {
    const { condition, minutes, open } = replay[index + 1]!;
    const recorded = end.route[index]!;
    const { move } = recorded;
    return {
      ...line,
      words: moveWords(circuit, move),
      seen: answerWords(circuit, recorded),
      condition,
      total: minutes,
      off: circuit.access.flatMap(({ id, label }) => (open.includes(id) ? [label] : [])),
      leads: move.do === "probe" ? [move.red, move.black] : [],
    };
  });
}

/** The live state of an exercise's circuit with its fault in it, as its vehicle stands in an attempt: the complaint was tried once. */
export function liveInside(attempt: Attempt, faults: readonly Fault[]): Live {
  const { exercise, condition } = attempt;
  const { circuit } = exercise;
  const renewed = renewedBy(attempt);
  const complaint = complaintIn(exercise).check.condition;
  if (renewed.length > 0) return liveOf(circuit, condition, faultsAfter(circuit, faults, complaint, renewed));
  const rig = new Rig(circuit, faults);
  const melted = meltedIn(rig, complaint);
  reach(rig, {}, undefined, melted);
  return liveAfter(rig, condition, workOf(circuit, condition));
}
