import type { Minutes, Share } from "../base/units.ts";
import { finenessOf } from "../diagnose/evidence.ts";
import { batchGreedy } from "../diagnose/plan/batch.ts";
import { distinct } from "../diagnose/plan/distinct.ts";
import { costOf } from "../diagnose/plan/greedy.ts";
import { tellsOf } from "../diagnose/plan/information.ts";
import { type Living, massOf, parted, type Stand } from "../diagnose/plan/problem.ts";
import { figureOf, type Probe, probeText } from "../diagnose/reading.ts";
import { shownTo } from "../diagnose/shown.ts";
import { clusters } from "../diagnose/weigh.ts";
import { type Attempt, evidentIn, readingsIn } from "./attempt.ts";
import type { Ground } from "./ground.ts";
import { NOTHING_BITS, nextRow, unread } from "./hint.ts";
import type { Replay } from "./replay.ts";
import { rowText } from "./rowText.ts";
import { type Sight, sightOf, standFor } from "./sight.ts";

/** Minutes by which a move must make the way to the end dearer to be a wrong turn (a guess). */
export const WRONG_TURN: Minutes = 2;
/** Share of one repair from which nobody need read on. */
const CERTAIN: Share = 0.95;

/** Classes that fit the planner's numbers: more are never seen. */
const MOST_CLASSES = 256;

/** The first move after which the cheapest way to the end was dearer than before it. */
export interface WrongTurn {
  /** Number of the move, from 1. */
  readonly move: number;
  /** Minutes that it was expected to cost more than the best. */
  readonly dearer: Minutes;
  /** What the planner would have read; null where nothing was left to read. */
  readonly better: string | null;
}

/** What is to be said of a route. */
export interface Course {
  /** Numbers of the moves whose reading told nothing that was not known. */
  readonly wasted: readonly number[];
  readonly wrongTurn: WrongTurn | null;
}

/**
 * Goes over a route move by move. What a move costs beyond the best is reckoned before its answer, over all that it might
 * have shown: bad luck is no wrong turn. Hints and the verdict are no turns, and after a part was renewed nothing is judged.
 */
export function courseOf(ground: Ground, whole: Replay): Course {
  const replay = untilRenewed(whole);
  const sights = new Map<number, Sight>();
  const sightBefore = (number: number): Sight => {
    // Only readings and checks change what is known.
    const told = replay[number - 1]!.route.filter(
      ({ answer }) => answer.shows !== null || Object.keys(answer.checks).length > 0,
    ).length;
    const sight = sights.get(told) ?? sightOf(ground, evidentIn(replay[number - 1]!));
    sights.set(told, sight);
    return sight;
  };
  return { wasted: wastedIn(ground, replay, sightBefore), wrongTurn: wrongTurnIn(ground, replay, sightBefore) };
}

/** Up to the first part that was renewed, that move included: from there on it is another vehicle that is read. */
function untilRenewed(replay: Replay): Replay {
  const route = replay.at(-1)?.route ?? [];
  const renewed = route.findIndex(({ move }) => move.do === "renew");
  return renewed < 0 ? replay : replay.slice(0, renewed + 2);
}

type Before = (number: number) => Sight;

/** Moves that read nothing new: leads that told nothing in all positions they were read in, and the same read again. */
function wastedIn(ground: Ground, replay: Replay, sightBefore: Before): readonly number[] {
  const wasted: number[] = [];
  for (const sweep of sweepsOf(replay)) {
    const [first] = sweep;
    const { problem, living } = sightBefore(first!.number);
    const told = tellsOf(problem).classes(living, joined(sweep.map(({ probe }) => labelsOf(ground, probe))));
    for (const { number, probe } of sweep)
      if (told < NOTHING_BITS || isAgain(replay[number - 1]!, probe)) wasted.push(number);
  }
  return wasted;
}

/** A move that read something, by its number from 1. */
interface Read {
  readonly number: number;
  readonly probe: Probe;
}

/** Readings on a route, those together that were taken one after the other with the leads left where they were. */
function sweepsOf(replay: Replay): readonly (readonly Read[])[] {
  const sweeps: Read[][] = [];
  let leads = "";
  for (const [number, attempt] of replay.entries()) {
    const probe = probeAt(attempt);
    if (!probe) continue;
    const here = probeText({ ...probe, condition: {} });
    if (here === leads) sweeps.at(-1)!.push({ number, probe });
    else sweeps.push([{ number, probe }]);
    leads = here;
  }
  return sweeps;
}

/** What the last move of an attempt read; null where it read nothing. */
function probeAt(attempt: Attempt): Probe | null {
  return attempt.route.at(-1)?.move.do === "probe" ? readingsIn(attempt).at(-1)! : null;
}

function isAgain(before: Attempt, probe: Probe): boolean {
  return readingsIn(before).some((reading) => probeText(reading) === probeText(probe));
}

function wrongTurnIn(ground: Ground, replay: Replay, sightBefore: Before): WrongTurn | null {
  for (let number = 1; number < replay.length; number++) {
    const [before, after] = [replay[number - 1]!, replay[number]!];
    const { move, minutes } = after.route[number - 1]!;
    if (move.do === "hint" || move.do === "verdict") continue;
    const sight = sightBefore(number);
    const probe = probeAt(after);
    const classes = probe && joined([labelsOf(ground, probe)]);
    // What was read already tells no more, however cheap it was.
    const pool = distinct(sight.problem, unread(ground, evidentIn(before)));
    const now = toGo(pool, sight, sight.living, standFor(ground, before));
    const then = minutes + toGoAfter(pool, sight, classes, standFor(ground, after));
    if (then - now <= WRONG_TURN) continue;
    const row = nextRow(ground, before, evidentIn(before));
    return { move: number, dearer: then - now, better: row === null ? null : rowText(ground, row) };
  }
  return null;
}

/** What each suspect shows at a probe, as one word for each class of readings. */
function labelsOf({ circuit, complaint, suspects }: Ground, probe: Probe): readonly string[] {
  const shows = shownTo(circuit, complaint.check.condition, suspects, probe);
  const numbers = clusters(
    shows.map((each) => figureOf(each) ?? 0),
    finenessOf(circuit, probe),
  );
  return shows.map(({ word }, suspect) => `${numbers[suspect]} ${word ?? ""}`);
}

/** The class of each suspect by what it shows in several readings together. */
function joined(readings: readonly (readonly string[])[]): Uint8Array {
  const numbers = new Map<string, number>();
  return Uint8Array.from(readings[0]!, (_, suspect) => {
    const spelled = readings.map((labels) => labels[suspect]).join("|");
    const number = numbers.get(spelled) ?? Math.min(numbers.size, MOST_CLASSES - 1);
    numbers.set(spelled, number);
    return number;
  });
}

/** Minutes expected from here to the end on the greedy way, which looks behind the trim; none once one repair is certain. */
function toGo(pool: readonly number[], { problem }: Sight, living: Living, stand: Stand): Minutes {
  const whole = massOf(problem, living);
  const repairs = new Map<number, number>();
  for (const each of living) {
    const repair = problem.repairs[each]!;
    repairs.set(repair, (repairs.get(repair) ?? 0) + problem.weights[each]!);
  }
  if (living.length === 0 || Math.max(...repairs.values()) >= CERTAIN * whole) return 0;
  return costOf(problem, batchGreedy(problem, tellsOf(problem)), living, stand, pool, { whole }) / whole;
}

/** The same after a move: over all that its reading can show, each as often as it is expected. */
function toGoAfter(pool: readonly number[], sight: Sight, classes: Uint8Array | null, stand: Stand): Minutes {
  const { problem, living } = sight;
  if (!classes) return toGo(pool, sight, living, stand);
  const whole = massOf(problem, living);
  return parted(living, classes).reduce(
    (sum, part) => sum + (massOf(problem, part) / whole) * toGo(pool, sight, part, stand),
    0,
  );
}
