import type { Minutes, Share, Volts } from "../base/units.ts";
import { WIGGLE_WORDS as WORDS } from "../base/words/wiggle.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { partAt, terminalPoint, terminalsOf, wireSideOf } from "../circuit/points.ts";
import { liveOf } from "../live/live.ts";
import { type Circumstance, comesAndGoes, happensIn } from "./comesAndGoes.ts";
import { ELSEWHERE } from "./evidence.ts";
import { expectedOf } from "./expected.ts";
import { complaintWords } from "./order.ts";
import type { Expected } from "./step.ts";
import { type Observation, suspectsFor } from "./suspects.ts";
import { groupsToOpen, MINUTES, minutesToOpen, testPointsOf } from "./testPoint.ts";
import { turningIn } from "./turning.ts";
import { placeFor, type WigglePlace } from "./wigglePlaces.ts";

/** The lowest and the highest that the meter kept while one place was moved. */
export interface Wiggled {
  /** Id of the place. */
  readonly place: string;
  readonly min: Volts;
  readonly max: Volts;
  /** What was done when it swung, as the person wrote it; "" where nothing was. */
  readonly when: string;
}

/** One place to move. */
export interface WiggleRow {
  readonly place: WigglePlace;
  readonly number: number;
  /** How to move it, then what heat, water or bumps are put to it. */
  readonly how: readonly string[];
  /** How likely the fault sits here, after all that was moved. */
  readonly share: Share;
  /** What may be wrong here, likeliest first. */
  readonly suspects: readonly string[];
  readonly minutes: Minutes;
  readonly read: Wiggled | null;
  /** What was read goes beyond the good range; null where nothing was read. */
  readonly swings: boolean | null;
}

/** Where the meter stays while places are moved, and what it shows of a good circuit. */
export interface Watched {
  readonly red: string;
  readonly black: string;
  readonly expect: Expected;
  /** Trim that comes off to clip the leads on, in order; empty where the load lies free. */
  readonly trim: readonly string[];
}

/** A wiggle sheet: places to move in the order of suspicion per minute. */
export interface WiggleSheet {
  readonly complaint: string;
  readonly condition: Condition;
  /** Null where no probe goes to the load: then it is watched itself. */
  readonly watched: Watched | null;
  readonly load: string;
  readonly rows: readonly WiggleRow[];
  /** The place that convicts itself, or null. */
  readonly guilty: string | null;
  readonly cautions: readonly string[];
}

/** Minutes to move one place well, beside the trim before it (a guess). */
const MOVING: Minutes = 1;
/** How often moving one place shakes the fault in another; and how often the guilty one, well moved, stays still (guesses). */
const NEIGHBOUR: Share = 0.02;
const STAYS_STILL: Share = 0.4;
/** A place convicts itself from this share on. */
const CONVICTS: Share = 0.6;
const MOST_PLACES = 24;
const MOST_NAMED = 3;
/** Half the last figure of the meter. */
const ROUNDING: Volts = 0.05;

/**
 * The wiggle sheet for what fails sometimes. `when` it shows raises the faults that heat, water or bumps
 * are guessed to bring on. What was wiggled counts for or against its place; nothing ever weighs nought.
 */
export function wiggleSheet(
  circuit: Circuit,
  complaint: Observation,
  others: readonly Observation[],
  when: readonly Circumstance[],
  wiggled: readonly Wiggled[],
): WiggleSheet {
  const { condition, load } = complaint.check;
  const watched = watchedAt(circuit, load, condition);
  const found = new Map<string, { place: WigglePlace; weight: number; faults: Map<string, number> }>();
  for (const { possible, weight } of suspectsFor(circuit, complaint, others)) {
    const [fault] = possible.faults;
    if (!fault) continue;
    const place = placeFor(circuit, fault.target);
    const own = weight * comesAndGoes(fault, when);
    const at = found.get(place.id) ?? { place, weight: 0, faults: new Map() };
    at.weight += own;
    const name = possible.title.replace(/, [\d.]+ \S+( added| in every place)?$/, "");
    at.faults.set(name, (at.faults.get(name) ?? 0) + own);
    found.set(place.id, at);
  }
  const read = new Map(wiggled.map((each) => [each.place, each]));
  const swingOf = ({ min, max }: Wiggled): boolean => swings(watched, circuit.nominalVolts, min, max);
  const weighed = [...found.values()].map((at) => {
    const weight = [...read.values()].reduce((product, each) => {
      const isHere = each.place === at.place.id;
      if (swingOf(each)) return product * (isHere ? 1 - STAYS_STILL : NEIGHBOUR);
      return product * (isHere ? STAYS_STILL : 1 - NEIGHBOUR);
    }, at.weight);
    return { ...at, weight };
  });
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0) / (1 - ELSEWHERE) || 1;
  const ordered = perMinute(circuit, weighed).slice(0, MOST_PLACES);
  const rows = ordered.map(({ place, weight, faults, minutes }, index): WiggleRow => {
    const was = read.get(place.id) ?? null;
    return {
      place,
      number: index + 1,
      how: [WORDS.move[place.moved], ...happensIn(when).map((each) => WORDS[each])],
      share: weight / total,
      suspects: [...faults]
        .sort(([, one], [, other]) => other - one)
        .slice(0, MOST_NAMED)
        .map(([name]) => name),
      minutes,
      read: was,
      swings: was && swingOf(was),
    };
  });
  const guilty = rows.find(({ swings: isSwinging, share }) => isSwinging === true && share >= CONVICTS);
  return {
    complaint: complaintWords(complaint),
    condition,
    watched,
    load,
    rows,
    guilty: guilty?.place.id ?? null,
    cautions: cautionsOf(circuit, condition, ordered),
  };
}

/** Whether a lowest and a highest leave the good range; without a meter a fifth of nominal volts is a swing. */
function swings(watched: Watched | null, nominalVolts: Volts, min: Volts, max: Volts): boolean {
  if (!watched) return max - min > nominalVolts / 5;
  return min < watched.expect.low - ROUNDING || max > watched.expect.high + ROUNDING;
}

interface Weighed {
  readonly place: WigglePlace;
  readonly weight: number;
  readonly faults: ReadonlyMap<string, number>;
}

/** Places by suspicion per minute, trim opened once: the best one next, again and again. */
function perMinute(circuit: Circuit, places: readonly Weighed[]): readonly (Weighed & { readonly minutes: Minutes })[] {
  const left = [...places];
  const open = new Set<string>();
  const ordered: (Weighed & { minutes: Minutes })[] = [];
  const minutesOf = ({ place }: Weighed): Minutes =>
    MOVING + MINUTES.changePlace + minutesToOpen(circuit, place.access, open);
  while (left.length > 0) {
    const best = left.reduce((one, other) =>
      other.weight / minutesOf(other) > one.weight / minutesOf(one) ? other : one,
    );
    ordered.push({ ...best, minutes: minutesOf(best) });
    left.splice(left.indexOf(best), 1);
    if (best.place.access !== null) for (const { id } of groupsToOpen(circuit, best.place.access)) open.add(id);
  }
  return ordered;
}

/** The load's highest and lowest terminal in a good circuit, where a probe may go to both. */
function watchedAt(circuit: Circuit, load: string, condition: Condition): Watched | null {
  const part = partAt(circuit, load);
  if (!part) return null;
  const { points } = liveOf(circuit, condition);
  const open = new Set(testPointsOf(circuit).flatMap(({ point, doNotProbe }) => (doNotProbe === null ? [point] : [])));
  const ends = terminalsOf(circuit, part)
    .map((terminal) => wireSideOf(circuit, terminalPoint(part, terminal)))
    .filter((point) => open.has(point))
    .sort((one, other) => (points.get(other)?.volts ?? 0) - (points.get(one)?.volts ?? 0));
  const [red, black] = [ends[0], ends.at(-1)];
  if (red === undefined || black === undefined || red === black) return null;
  const leads = { red, black, instrument: "meter volts", lampTo: null, condition, fineness: "volts" } as const;
  const behind = testPointsOf(circuit).flatMap(({ point, access }) =>
    access !== null && (point === red || point === black) ? groupsToOpen(circuit, access) : [],
  );
  return { red, black, expect: expectedOf(circuit, leads), trim: [...new Set(behind.map(({ label }) => label))] };
}

function cautionsOf(circuit: Circuit, condition: Condition, rows: readonly Weighed[]): readonly string[] {
  const turning = turningIn(circuit, condition);
  const trim = rows.flatMap(({ place }) => (place.access === null ? [] : groupsToOpen(circuit, place.access)));
  const own = trim.flatMap(({ cautions = [] }) => cautions);
  return [...new Set([...(turning.length > 0 ? [WORDS.clear(turning.join(", "))] : []), ...own])];
}
