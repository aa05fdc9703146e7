import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Minutes } from "../base/units.ts";
import type { Condition } from "../circuit/circuit.ts";
import { feedingOf } from "../diagnose/feeding.ts";
import { type Reading, readingOf } from "../diagnose/reading.ts";
import { complaintOf } from "../diagnose/seen.ts";
import type { Observation } from "../diagnose/suspects.ts";
import { groupsToOpen } from "../diagnose/testPoint.ts";
import type { Verdict } from "../live/judge.ts";
import { isHighVoltage } from "../trade/limits.ts";
import { complaintIn, type Exercise } from "./exercise.ts";
import { groundFor } from "./ground.ts";
import { hintFor } from "./hint.ts";
import type { Answer, Move, ProbeMove, Recorded, VerdictMove } from "./move.ts";
import { minutesOf, modeAfter, placeAfter, type Standing } from "./moveMinutes.ts";
import { moveRefusal } from "./moveRules.ts";
import type { Renewed } from "./renewed.ts";
import type { Evident } from "./sight.ts";
import { checksIn, conditionAfter } from "./stand.ts";
import type { LoadSeen, Vehicle } from "./vehicle.ts";

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
 * noted. Refuses as `recordedMove`; nothing is lost then.
 */
export function moved(attempt: Attempt, vehicle: Vehicle, move: Move, time: string | null): Outcome<Attempt> {
  const recorded = recordedMove(attempt, vehicle, move, time);
  return recorded.ok ? ok(attemptAfter(attempt, recorded.value)) : recorded;
}

/** A move as it goes into the route, answered by the vehicle. Refuses `over-60-volts`, and as `refusalOf`. */
export function recordedMove(attempt: Attempt, vehicle: Vehicle, move: Move, time: string | null): Outcome<Recorded> {
  const refusal = refusalOf(attempt, move);
  if (refusal) return { ok: false, refusal };
  const condition = conditionAfter(attempt.exercise.circuit, attempt.condition, move);
  const answer = answerOf(attempt, vehicle, move, condition);
  const volts = answer.shows?.volts ?? 0;
  if (isHighVoltage(volts)) return refuse("over-60-volts", { volts: Math.round(volts) });
  return ok({ move, minutes: costOf(attempt, move), answer, time });
}

/** Why a move cannot be made now, `move-over` once the verdict is filed; null where it can. The vehicle is not asked. */
export function refusalOf(attempt: Attempt, move: Move): Refusal | null {
  if (verdictOf(attempt)) return refuse("move-over").refusal;
  const { exercise, route } = attempt;
  return moveRefusal(exercise, attempt, move, {
    readings: route.filter(({ answer }) => answer.shows).length,
    hints: hintsIn(attempt),
  });
}

/** What a move costs from where the person stands now. */
export function costOf(attempt: Attempt, move: Move): Minutes {
  return rounded(minutesOf(attempt.exercise, attempt, move));
}

/** How many hints were asked for. */
export function hintsIn({ route }: Pick<Attempt, "route">): number {
  return route.filter(({ move }) => move.do === "hint").length;
}

/** The attempt after a move that was made and answered. */
export function attemptAfter(attempt: Attempt, recorded: Recorded): Attempt {
  const { exercise, route } = attempt;
  const { circuit } = exercise;
  const { move, minutes } = recorded;
  const there = placeAfter(circuit, move);
  return {
    exercise,
    route: [...route, recorded],
    minutes: rounded(attempt.minutes + minutes),
    condition: conditionAfter(circuit, attempt.condition, move),
    open: move.do === "open" ? openedWith(attempt, move.access) : attempt.open,
    place: there === undefined ? attempt.place : there,
    mode: (move.do === "probe" ? modeAfter(circuit, move) : null) ?? attempt.mode,
  };
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
      return { ...NOTHING, shows: vehicle.shows(probeIn(attempt, move), renewedBy(attempt)) };
    case "hint":
      return { ...NOTHING, hint: hintFor(groundOf(exercise), attempt, evidentIn(attempt)) };
    case "open":
    case "verdict":
      return NOTHING;
    default: {
      const renewed = renewedBy(attempt, move);
      const checks = checksIn(circuit, condition).map((check) => [check.id, vehicle.tries(check, renewed)] as const);
      return { ...NOTHING, loads: vehicle.loads(condition, renewed), checks: Object.fromEntries(checks) };
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
  const seen = checksSeen({ route });
  return exercise.circuit.checks.flatMap((check) => {
    const word = check.id === exercise.complaint ? undefined : seen.get(check.id);
    return word === undefined ? [] : [complaintOf(exercise.circuit, check, word)];
  });
}

/**
 * All that a learner knows by now of the vehicle that is complained of, beside the complaint. What was read and seen after a part
 * was renewed is of another vehicle.
 */
export function evidentIn({ exercise, route }: Pick<Attempt, "exercise" | "route">): Evident {
  const renewed = route.findIndex(({ move }) => move.do === "renew");
  const before = { exercise, route: renewed < 0 ? route : route.slice(0, renewed) };
  return { others: othersIn(before), readings: readingsIn(before) };
}

/** Parts that were renewed, with how the vehicle stood since; one renewed twice counts from the second time. */
export function renewedBy({ exercise, route }: Attempt, next?: Move): readonly Renewed[] {
  const renewed = new Map<string, Condition[]>();
  let condition: Condition = {};
  for (const move of [...route.map((each) => each.move), ...(next ? [next] : [])]) {
    condition = conditionAfter(exercise.circuit, condition, move);
    if (move.do === "renew") renewed.set(move.part, []);
    for (const since of renewed.values()) if (since.at(-1) !== condition) since.push(condition);
  }
  return [...renewed].map(([part, since]) => ({ part, since }));
}

/** What the loads are seen to do as the vehicle stands now; nothing before the first throw. */
export function loadsNow({ route }: Pick<Attempt, "route">): readonly LoadSeen[] {
  return route.filter(({ move }) => STANDS_OTHERWISE.includes(move.do)).at(-1)?.answer.loads ?? [];
}

/** Moves after which the vehicle stands otherwise than before. */
const STANDS_OTHERWISE: readonly Move["do"][] = [
  "throw",
  "try",
  "engine",
  "unplug",
  "plug-in",
  "take-out",
  "put-in",
  "renew",
];

/** How the function checks came out that were tried, by id; the last of each counts. */
export function checksSeen({ route }: Pick<Attempt, "route">): ReadonlyMap<string, Verdict> {
  return new Map(route.flatMap(({ answer }) => Object.entries(answer.checks)));
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
