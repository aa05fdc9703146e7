import { type Question, type Tally, tallied } from "./question.ts";

/** A question put to a class: what was answered so far, and whether the answer is shown. */
export interface Predict {
  readonly question: Question;
  /** Hands that went up for each choice; one learner alone is one hand. */
  readonly hands: readonly number[];
  /** Choices in the order in which hands were counted, to take the last back. */
  readonly counted: readonly number[];
  readonly isRevealed: boolean;
}

/** Most hands that one choice counts: no class is larger. */
const MOST_HANDS = 200;

/** A question that nobody has answered yet. */
export function put(question: Question): Predict {
  return { question, hands: question.choices.map(() => 0), counted: [], isRevealed: false };
}

/** One hand more for a choice, counted from 0. Once the answer is shown, and where there is no such choice, nothing changes. */
export function raised(predict: Predict, choice: number): Predict {
  const { hands, counted, isRevealed } = predict;
  const count = hands[choice];
  if (isRevealed || count === undefined || count >= MOST_HANDS) return predict;
  return { ...predict, hands: changed(hands, choice, 1), counted: [...counted, choice] };
}

/** Without the hand that was counted last. */
export function takenBack(predict: Predict): Predict {
  const last = predict.counted.at(-1);
  if (predict.isRevealed || last === undefined) return predict;
  const { hands, counted } = predict;
  return { ...predict, hands: changed(hands, last, -1), counted: counted.slice(0, -1) };
}

function changed(hands: readonly number[], choice: number, by: 1 | -1): readonly number[] {
  return hands.map((count, at) => (at === choice ? count + by : count));
}

/** With the answer shown; not before anybody has committed to one. */
export function revealed(predict: Predict): Predict {
  return answersOf(predict) === 0 ? predict : { ...predict, isRevealed: true };
}

/** How many have answered. */
export function answersOf({ hands }: Predict): number {
  return hands.reduce((sum, count) => sum + count, 0);
}

/** What came of it: hands by choice, and by wrong idea. */
export function outcomeOf({ question, hands }: Predict): Tally {
  return tallied(question, hands);
}
