import { answerWords } from "../../core/lesson/answerWords.ts";
import { attemptAfter } from "../../core/lesson/attempt.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import type { AppState } from "../state/state.ts";
import { succeeded } from "../state/succeeded.ts";
import { minutesText } from "../words/figures.ts";
import type { LearnerAction } from "./action.ts";
import { type Learning, learningOf } from "./learning.ts";

/** The state after an action of a learner. */
export function reduceLearner(state: AppState, action: LearnerAction): AppState {
  switch (action.do) {
    case "attempts-listed":
      return { ...state, attempts: action.attempts };
    case "attempt-opened": {
      const { kept, exercise, told } = action;
      const learning = learningOf(kept.id, exercise, { ...kept, told });
      const brought = state.brought + 1;
      return { ...succeeded(state, "open"), open: null, learning, brought, isFinding: false, said: "" };
    }
    case "open-exercise":
    case "open-attempt":
    case "restart-attempt":
    case "remove-attempt":
    case "restore-attempt":
    case "save-handin":
      return state;
    default:
      return state.learning ? withLearning(state, state.learning, action) : state;
  }
}

type OfLearning = Extract<
  LearnerAction,
  { do: "make-moves" | "name-learner" | "learner-sees" | "move-made" | "moves-ended" | "attempt-kept" }
>;

function withLearning(state: AppState, learning: Learning, action: OfLearning): AppState {
  switch (action.do) {
    case "make-moves":
      return { ...state, learning: { ...learning, isAsking: true } };
    case "moves-ended":
      return { ...state, learning: { ...learning, isAsking: false } };
    case "name-learner":
      return { ...state, learning: { ...learning, learner: action.learner } };
    case "learner-sees":
      return { ...state, learning: { ...learning, sight: { ...learning.sight, ...action.sees } } };
    case "attempt-kept":
      return action.id === learning.id ? { ...state, learning: { ...learning, kept: action.moves } } : state;
    case "move-made": {
      const attempt = attemptAfter(learning.attempt, action.recorded);
      const made = { ...learning, attempt, told: action.told };
      return { ...succeeded(state, "edit"), learning: made, said: saidOf(made) };
    }
  }
}

/** The last move for whoever listens: what was done, what it cost, what was seen. */
function saidOf({ attempt }: Learning): string {
  const { circuit } = attempt.exercise;
  const last = attempt.route.at(-1)!;
  const shown = answerWords(circuit, last);
  const words = `${moveWords(circuit, last.move)}, ${minutesText(last.minutes)}`;
  return shown === "" ? `${words}.` : `${words}: ${shown}.`;
}
