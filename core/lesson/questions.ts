import { remember } from "../base/memo.ts";
import { type Lots, lotsFrom } from "../base/seed.ts";
import { QUESTION_WORDS as WORDS } from "../base/words/question.ts";
import type { Asked, Circuit, Condition, Scene } from "../circuit/circuit.ts";
import { conditionSaid } from "../diagnose/flow/words.ts";
import type { Possible } from "../diagnose/possible.ts";
import { readWith } from "../diagnose/reads.ts";
import { spreadAt } from "../diagnose/spread.ts";
import { standsFor } from "../diagnose/tablePositions.ts";
import { wiresAt } from "../diagnose/testPoint.ts";
import { conditionText } from "../live/condition.ts";
import type { Fault } from "../live/fault.ts";
import { whyOf } from "../live/why.ts";
import { whyPath } from "../live/whyWords.ts";
import { IDEAS, type Idea } from "./ideas.ts";
import type { Question } from "./question.ts";
import { type Draft, questionPool } from "./questionPool.ts";

/** What questions are made for. */
export interface QuestionsAsked {
  readonly seed: number;
  readonly count: number;
  /** The conditions to ask in; without it, those of the position table, the scenes, and checks with one plug apart. */
  readonly conditions?: readonly Condition[];
  /** What is wrong, and said in the question. */
  readonly faults?: readonly Possible[];
}

/** Conditions that are asked in at most: more make the choice no richer. */
const MOST_CONDITIONS = 30;
/** Open places that a reason names at most: the first are the nearest. */
const MOST_STOPS = 3;
/** Every so manieth question shows no wrong idea, so that nobody learns to answer against the grain. */
export const PLAIN_EVERY = 5;

/**
 * Questions made from a circuit: any point, in any position, by state, volts or lamp. The same seed gives the same ones. They
 * take turns among the wrong ideas that the circuit can show, each point but once, and every fifth shows none.
 */
export function questionsFor(
  circuit: Circuit,
  { seed, count, conditions, faults = [] }: QuestionsAsked,
): readonly Question[] {
  const lots = lotsFrom(seed);
  const asked = conditions ?? shuffled(conditionsOf(circuit), lots).slice(0, MOST_CONDITIONS);
  const planted = faults.flatMap((possible) => possible.faults);
  const pool = shuffled(questionPool(circuit, asked, planted), lots);
  const drafts = spread(pool, shuffled(IDEAS, lots), count, (draft) => isExact(circuit, planted, draft));
  return drafts.map((draft) => worded(circuit, draft, faults));
}

/** A question that a scene keeps, in words, and as the circuit answers it now; null where it cannot. */
export interface KeptQuestion {
  readonly asked: Asked;
  readonly text: string;
  readonly question: Question | null;
}

/**
 * What a scene keeps to ask, answered by the circuit as it is now, in its order. There is no answer any more where a point is not
 * to be probed, or is neither powered, grounded, between nor floating.
 */
export function keptBy(
  circuit: Circuit,
  { condition, questions = [] }: Pick<Scene, "condition" | "questions">,
): readonly KeptQuestion[] {
  if (questions.length === 0) return [];
  const pool = new Map(questionPool(circuit, [condition], []).map((draft) => [askedKey(draft.asked), draft]));
  return questions.map((asked) => {
    const draft = pool.get(askedKey(asked));
    const question = draft && isExact(circuit, [], draft) ? worded(circuit, draft, []) : null;
    return { asked, text: askedWords(circuit, asked), question };
  });
}

/** Those that the circuit can answer, in their order. */
export function questionsOf(circuit: Circuit, scene: Pick<Scene, "condition" | "questions">): readonly Question[] {
  return keptBy(circuit, scene).flatMap(({ question }) => question ?? []);
}

/** What can be asked in a condition with nothing wrong, point by point; where a meter would change what it reads is not tried yet. */
export function askable(circuit: Circuit, condition: Condition): readonly Asked[] {
  return questionPool(circuit, [condition], []).map(({ asked }) => asked);
}

function askedKey(asked: Asked): string {
  const { asks, point } = asked;
  const more = asks === "volts" ? [asked.black] : asks === "lamp" ? [asked.lampTo, asked.lamp] : [];
  return [asks, point, ...more].join(" ");
}

/** The position table's conditions, the scenes, and every check with each plug apart: there grounds and feeds are lost. */
export const conditionsOf = remember((circuit: Circuit): readonly Condition[] => {
  const table = standsFor(circuit, "").filter(({ plugged }) => plugged);
  const apart = circuit.checks.flatMap(({ condition }) =>
    circuit.connectors.map(({ id }) => ({ ...condition, apart: [...(condition.apart ?? []), id] })),
  );
  const all = [...table, ...circuit.scenes].map(({ condition }) => condition);
  return [...new Map([...all, ...apart].map((each) => [conditionText(each), each])).values()];
});

/** A list in an order by lot (Fisher and Yates, as Durstenfeld shuffles, 1964). */
export function shuffled<T>(list: readonly T[], lots: Lots): readonly T[] {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = Math.floor(lots() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other]!, mixed[last]!];
  }
  return mixed;
}

/** So many drafts, idea after idea as long as there are any; no point twice while others are left. */
function spread(
  pool: readonly Draft[],
  ideas: readonly Idea[],
  count: number,
  isSure: (draft: Draft) => boolean,
): readonly Draft[] {
  const taken: Draft[] = [];
  const unsure = new Set<Draft>();
  const points = new Set<string>();
  const take = (fits: (draft: Draft) => boolean): boolean => {
    const left = pool.filter((draft) => fits(draft) && !taken.includes(draft) && !unsure.has(draft));
    const next = left.find(({ asked }) => !points.has(asked.point)) ?? left[0];
    if (!next) return false;
    if (!isSure(next)) {
      unsure.add(next);
      return take(fits);
    }
    taken.push(next);
    points.add(next.asked.point);
    return true;
  };
  for (let turn = 0, dry = 0; taken.length < count && dry <= ideas.length; turn++) {
    const idea = ideas[turn % ideas.length]!;
    const isPlain = (taken.length + 1) % PLAIN_EVERY === 0;
    const found = isPlain
      ? take((draft) => draft.ideas.length === 0) || take((draft) => draft.ideas.includes(idea))
      : take((draft) => draft.ideas.includes(idea));
    dry = found ? 0 : dry + 1;
  }
  return taken;
}

/**
 * Whether the right answer holds with the instrument itself in the circuit: the pool takes a circuit behind a point for its open
 * volts and ohms, which is not so where lamps hang in a row.
 */
export function isExact(
  circuit: Circuit,
  faults: readonly Fault[],
  { asked, condition, choices, right }: Draft,
): boolean {
  if (asked.asks === "state") return true;
  const probe =
    asked.asks === "lamp"
      ? { black: "battery -", instrument: asked.lamp, lampTo: asked.lampTo }
      : { black: asked.black, instrument: "meter volts" as const, lampTo: null };
  const { shows } = readWith(circuit, faults, {}, { red: asked.point, ...probe, condition });
  const { answer, volts } = choices[right]!;
  return volts === null ? shows.word === answer : Math.abs((shows.volts ?? 0) - volts) <= spreadAt(volts);
}

/** A question in words, with the reason of its right answer. */
export function worded(
  circuit: Circuit,
  { asked, condition, choices, right, ideas }: Draft,
  faults: readonly Possible[],
): Question {
  const planted = faults.flatMap((possible) => possible.faults);
  const stands = conditionSaid(circuit, condition);
  const why = whyOf(circuit, asked.point, condition, planted);
  const wrong = faults.map(({ title }) => title).join("; ");
  return {
    asked,
    condition,
    text: `${WORDS.when(stands, wrong)} ${askedWords(circuit, asked)}`,
    choices,
    right,
    reason: [
      WORDS.answer(choices[right]!.answer),
      ...whyPath(circuit, { ...why, stops: why.stops.slice(0, MOST_STOPS) }),
      ...ideas.map((idea) => WORDS.against[idea]),
    ],
  };
}

/** What is asked, in words, without how the circuit stands. */
export function askedWords(circuit: Circuit, asked: Asked): string {
  const wire = wiresAt(circuit, asked.point)[0];
  const place = WORDS.place(asked.point, wire?.id ?? null, wire?.colour ?? null);
  if (asked.asks === "state") return WORDS.state(place);
  if (asked.asks === "lamp") return WORDS.lamp(asked.lamp, place, asked.lampTo);
  return WORDS.volts(place, asked.black);
}
