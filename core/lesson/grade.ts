import { assert } from "../base/outcome.ts";
import type { Minutes } from "../base/units.ts";
import { type Attempt, evidentIn, groundOf, readingsIn, verdictOf } from "./attempt.ts";
import { type Course, courseOf } from "./course.ts";
import type { Exercise, Hidden } from "./exercise.ts";
import { alikeTo, suspectFor, wayTo } from "./ground.ts";
import { plantOf } from "./plant.ts";
import { type Proof, proofOf } from "./proof.ts";
import type { Replay } from "./replay.ts";
import type { Evident } from "./sight.ts";

/** What an instructor reads of one route. */
export interface Grade extends Course {
  /** The suspect that was named, in words; null where no verdict was filed. */
  readonly verdict: string | null;
  /** "alike": wrong, but what is named reads like what was hidden wherever it may be read. */
  readonly is: "right" | "wrong" | "alike" | "open";
  /** How far the readings named prove the verdict; null unless it is right. A right verdict that is not proven was lucky. */
  readonly proof: Proof | null;
  readonly minutes: Minutes;
  /** What the planner needs to this fault; null where no suspect stands for it. */
  readonly plannersMinutes: Minutes | null;
  readonly readings: number;
  readonly hints: number;
}

/**
 * Grades a route that was made again on the vehicle. The grade is on the proof: what the readings that the verdict names, and the
 * other checks that were tried, leave of the other suspects.
 */
export function gradeOf(exercise: Exercise, hidden: Hidden, replay: Replay): Grade {
  const ground = groundOf(exercise);
  const end = replay.at(-1)!;
  const planted = plantOf(exercise.circuit, hidden.fault);
  assert(planted.ok, "the hidden fault was planted before the route was made again");
  const verdict = verdictOf(end);
  const named = verdict && plantOf(exercise.circuit, verdict.suspect);
  const isRight = named?.ok === true && named.value.repair === planted.value.repair;
  const suspect = suspectFor(ground, planted.value);
  const other = named?.ok ? suspectFor(ground, named.value) : -1;
  const isAlike = suspect >= 0 && alikeTo(ground, suspect).includes(other);
  return {
    verdict: named?.ok ? named.value.title : null,
    is: verdict === null ? "open" : isRight ? "right" : isAlike ? "alike" : "wrong",
    proof: isRight && suspect >= 0 ? proofOf(ground, proving(end, verdict?.proof ?? []), end, suspect) : null,
    minutes: end.minutes,
    plannersMinutes: suspect < 0 ? null : wayTo(ground, suspect).minutes,
    readings: readingsIn(end).length,
    hints: end.route.filter(({ move }) => move.do === "hint").length,
    ...courseOf(ground, replay),
  };
}

/** What a verdict is proved by: the readings it names, all where it names none, and every check that was tried. */
function proving(end: Attempt, proof: readonly number[]): Evident {
  const { others, readings } = evidentIn(end);
  return { others, readings: readings.filter((_, index) => proof.length === 0 || proof.includes(index + 1)) };
}
