import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Minutes } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import { feedingOf } from "../diagnose/feeding.ts";
import { type Reading, readingOf } from "../diagnose/reading.ts";
import { complaintOf } from "../diagnose/seen.ts";
import type { Observation } from "../diagnose/suspects.ts";
import { groupsToOpen } from "../diagnose/testPoint.ts";
import { isHighVoltage } from "../trade/limits.ts";
import { complaintIn, type Exercise } from "./exercise.ts";
import { groundFor } from "./ground.ts";
import { hintFor } from "./hint.ts";
import type { Answer, Move, ProbeMove, Recorded, VerdictMove } from "./move.ts";
import { minutesOf, modeAfter, placeAfter, type Standing } from "./moveMinutes.ts";
import { moveRefusal } from "./moveRules.ts";
import type { Evident } from "./sight.ts";
import { checksIn, conditionAfter } from "./stand.ts";
import type { Vehicle } from "./vehicle.ts";

/** A learner at work on an exercise: how things stand, and the route so far. A value; each move gives the next one. */
export interface Attempt extends Standing {
  readonly exercise: Exercise;
  readonly route: readonly Recorded[];
  readonly minutes: Minutes;
}

/** An exercise that nobody has laid a hand on: everything at rest, all trim on. */
export function begun(exercise: Exercise): Attempt {
  return { exercise, route: [], minutes: 0, condition: {}, open: [], place: undefined, mode: null };
}

/**
 * The attempt after one more move, answered by the vehicle; the answer is the last of the route. `time` in ISO 8601 is only
 * noted. Refuses `move-over` once the verdict is filed, `over-60-volts`, and as `moveRefusal`; nothing is lost then.
 */
export function moved(attempt: Attempt, vehicle: Vehicle, move: Move, time: string | null): Outcome<Attempt> {
  if (verdictOf(attempt)) return refuse("move-over");
  const { exercise, route } = attempt;
  const { circuit } = exercise;
  const refusal = moveRefusal(exercise, attempt, move, {
    readings: readingsIn(attempt).length,
    hints: route.filter((each) => each.move.do === "hint").length,
  });
  if (refusal) return { ok: false, refusal };
  const condition = conditionAfter(circuit, attempt.condition, move);
  const answer = answerOf(attempt, vehicle, move, condition);
  const volts = answer.shows?.volts ?? 0;
  if (isHighVoltage(volts)) return refuse("over-60-volts", { volts: Math.round(volts) });
  const minutes = rounded(minutesOf(exercise, attempt, move));
  const there = placeAfter(circuit, move);
  return ok({
    exercise,
    route: [...route, { move, minutes, answer, time }],
    minutes: rounded(attempt.minutes + minutes),
    condition,
    open: move.do === "open" ? openedWith(attempt, move.access) : attempt.open,
    place: there === undefined ? attempt.place : there,
    mode: (move.do === "probe" ? modeAfter(circuit, move) : null) ?? attempt.mode,
  });
}

/** Minutes to the hundredth: sums of tenths stay what they are on paper. */
function rounded(minutes: Minutes): Minutes {
  return Math.round(minutes * 100) / 100;
}

function openedWith({ exercise, open }: Attempt, access: string): readonly string[] {
  const needed = groupsToOpen(exercise.circuit, access).map(({ id }) => id);
  return [...open, ...needed.filter((id) => !open.includes(id))];
}

const NOTHING: Answer = { shows: null, loads: [], checks: {}, hint: null };

function answerOf(attempt: Attempt, vehicle: Vehicle, move: Move, condition: Condition): Answer {
  const { exercise } = attempt;
  const { circuit } = exercise;
  switch (move.do) {
    case "probe":
      return { ...NOTHING, shows: vehicle.shows(probeIn(attempt, move)) };
    case "hint":
      return { ...NOTHING, hint: hintFor(groundOf(exercise), attempt, evidentIn(attempt)) };
    case "open":
    case "verdict":
      return NOTHING;
    default: {
      const checks = checksIn(circuit, condition).map((check) => [check.id, vehicle.tries(check)] as const);
      return { ...NOTHING, loads: vehicle.loads(condition), checks: Object.fromEntries(checks) };
    }
  }
}

/** What a probe is read in: as the vehicle stands; a load that is fed by itself has its plug apart and all else at rest. */
function probeIn({ exercise, condition }: Attempt, { red, black, instrument, lampTo }: ProbeMove) {
  const isFed = instrument === "fed direct" || instrument === "fed loose";
  const plug = isFed ? feedingOf(exercise.circuit)(red)?.plug : undefined;
  return { red, black, instrument, lampTo, condition: plug === undefined ? condition : { apart: [plug] } };
}

/** The ground of an exercise: its complaint, for the instruments it allows. */
export function groundOf(exercise: Exercise) {
  return groundFor(exercise.circuit, complaintIn(exercise), exercise.instruments);
}

/** The readings of a route, in order; a verdict names them by their numbers from 1. */
export function readingsIn(attempt: Pick<Attempt, "exercise" | "route">): readonly Reading[] {
  const { circuit } = attempt.exercise;
  let now = begun(attempt.exercise);
  return attempt.route.flatMap(({ move, answer, time }) => {
    const condition = now.condition;
    now = { ...now, condition: conditionAfter(circuit, condition, move) };
    if (move.do !== "probe" || !answer.shows) return [];
    return [{ ...readingOf(probeIn({ ...now, condition }, move), answer.shows), time }];
  });
}

/** What was seen of other function checks than the one complained of; the last of each counts. */
export function othersIn({ exercise, route }: Pick<Attempt, "exercise" | "route">): readonly Observation[] {
  const seen = new Map(route.flatMap(({ answer }) => Object.entries(answer.checks)));
  return exercise.circuit.checks.flatMap((check) => {
    const word = check.id === exercise.complaint ? undefined : seen.get(check.id);
    return word === undefined ? [] : [complaintOf(exercise.circuit, check, word)];
  });
}

/** All that a learner knows by now beside the complaint. */
export function evidentIn(attempt: Pick<Attempt, "exercise" | "route">): Evident {
  return { others: othersIn(attempt), readings: readingsIn(attempt) };
}

/** The verdict, once it is filed. */
export function verdictOf({ route }: Pick<Attempt, "route">): VerdictMove | null {
  const last = route.at(-1)?.move;
  return last?.do === "verdict" ? last : null;
}

/** What is told of a verdict, where the exercise tells it at once; null before the verdict, and where it does not. */
export function toldOf(attempt: Attempt, vehicle: Vehicle) {
  const verdict = verdictOf(attempt);
  return verdict && attempt.exercise.tellsAtOnce ? vehicle.tells(verdict.suspect) : null;
}
