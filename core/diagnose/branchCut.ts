import { printedPosition } from "../circuit/positionWords.ts";
import type { Candidate } from "./candidates.ts";
import { outcomeWord } from "./outcomes.ts";
import type { Living } from "./plan/problem.ts";
import { figureOf, type Shows } from "./reading.ts";
import { type Fineness, gapAt } from "./spread.ts";
import { isBySense, type Window } from "./step.ts";
import { clusters } from "./weigh.ts";
import { clusterOf, windowOf } from "./windows.ts";

/** Suspects that show the same in a row, and the limits between which they do, as they are printed. */
export interface Cut {
  /** All that may show it, on this vehicle or on one that differs as much as others do. */
  readonly living: Living;
  /** Those that show it on the vehicle as it is drawn: each suspect stands in one part. */
  readonly drawn: Living;
  readonly windows: readonly Window[];
  readonly word: string;
}

/**
 * Parts the living by what a row shows with each, exactly: `shows` by setting, then in the order of the living, as drawn and
 * then on each other vehicle. Limits lie between the clusters of all these; a suspect that falls in several of them on other
 * vehicles stands in each. The heaviest part is not known here, so parts come in the order of the living.
 */
export function cutAmong(
  living: Living,
  candidate: Candidate,
  shows: readonly (readonly Shows[])[],
  good: readonly Shows[],
): readonly Cut[] {
  const { fineness } = candidate;
  const classes = shows.map((each) =>
    clusters(
      each.map((shown) => figureOf(shown) ?? 0),
      fineness,
    ),
  );
  const parts = new Map<string, number[]>();
  shows[0]!.forEach((_, at) => {
    const label = shows.map((each, setting) => `${classes[setting]![at]}${each[at]!.word ?? ""}`).join("|");
    const part = parts.get(label);
    if (part) part.push(at);
    else parts.set(label, [at]);
  });
  return [...parts.values()].map((own) => ({
    living: suspectsAt(living, own),
    drawn: suspectsAt(
      living,
      own.filter((at) => at < living.length),
    ),
    windows: shows.map((each, setting) => {
      const cluster = clusterOf(
        each.map((shown) => figureOf(shown) ?? 0),
        classes[setting]!,
        classes[setting]![own[0]!]!,
      );
      return windowOf(cluster, each[own[0]!]!.word ?? "", (low, high) => between(low, high, fineness));
    }),
    word: wordFor(
      candidate,
      shows.map((each) => each[own[0]!]!),
      good,
    ),
  }));
}

/** The suspects of some columns, each once, in the order of the living. */
function suspectsAt(living: Living, columns: readonly number[]): Living {
  const own = new Set(columns.map((at) => at % living.length));
  return living.filter((_, at) => own.has(at));
}

/** Lines of a row that a person compares with: more are summed up in the last. */
const MOST_LINES = 6;

/** Parts heaviest first; where there are many, the light ones become one, "anything else", that every reading fits. */
export function summedUp(living: Living, cuts: readonly Cut[], massOf: (living: Living) => number): readonly Cut[] {
  const sorted = [...cuts].sort((one, other) => massOf(other.drawn) - massOf(one.drawn));
  if (sorted.length <= MOST_LINES) return sorted;
  const rest = sorted.slice(MOST_LINES - 1);
  // In the order of the living, those of one repair stand side by side.
  const all = (of: (cut: Cut) => Living): Living => {
    const others = new Set(rest.flatMap((each) => [...of(each)]));
    return living.filter((each) => others.has(each));
  };
  const windows = rest[0]!.windows.map(() => ({
    low: Number.NEGATIVE_INFINITY,
    high: Number.POSITIVE_INFINITY,
    word: "",
  }));
  return [
    ...sorted.slice(0, MOST_LINES - 1),
    { living: all((each) => each.living), drawn: all((each) => each.drawn), windows, word: ANYTHING_ELSE },
  ];
}

/** The word of the line that fits where no other does. */
const ANYTHING_ELSE = "anything else";

/** Decimals that limits are rounded to, the fewest first. */
const DIGITS = {
  volts: [1, 2],
  millivolts: [3],
  tenths: [3, 4],
  ohms: [0, 1],
  amps: [1, 2],
} as const satisfies Readonly<Record<Fineness, readonly number[]>>;

/** A number between two others with as few decimals as will do: tenths of volts, whole millivolts, whole ohms. */
function between(one: number, other: number, fineness: Fineness): number {
  const middle = (one + other) / 2;
  // What a meter shows at last: a limit nearer than that to either would be missed by rounding.
  const least = fineness === "tenths" ? 0.00005 : 0.005;
  for (const digits of DIGITS[fineness]) {
    const rounded = Number(middle.toFixed(digits));
    if (rounded - one > least && other - rounded > least) return rounded;
  }
  return middle;
}

function wordFor(candidate: Candidate, shows: readonly Shows[], good: readonly Shows[]): string {
  if (isBySense(candidate.instrument)) return shows.at(-1)!.word ?? "";
  const named = shows.map((shown, setting) => {
    const { word } = shown;
    const [read, healthy] = [figureOf(shown) ?? 0, figureOf(good[setting]!) ?? 0];
    const isSame = Math.abs(read - healthy) <= gapAt(Math.max(read, healthy), candidate.fineness);
    const lamp = word === null || word === good[setting]!.word ? "" : `, lamp ${word}`;
    return `${outcomeWord(read, healthy, isSame, candidate.fineness)}${lamp}`;
  });
  if (candidate.sweepOf === null) return named[0]!;
  const differing = named.flatMap((word, setting) =>
    word === "right" ? [] : [`${printedPosition(candidate.positions[setting]!)} ${word}`],
  );
  return differing.length === 0 ? "right" : differing.join(", ");
}
