import type { Circuit, Condition, Scene } from "../../core/circuit/circuit.ts";
import { AT_START, type Play } from "../../core/lesson/play.ts";
import type { Predict } from "../../core/lesson/predict.ts";
import { conditionText } from "../../core/live/condition.ts";
import type { Focus } from "./focus.ts";

/** What a class is shown of the open circuit, and how. */
export interface Lesson {
  /** Where the scenes are in their playing. */
  readonly play: Play;
  readonly focus: Focus;
  /** Whether the caption of the scene stands on the wall. */
  readonly hasCaption: boolean;
  /** Whether the states are covered up for the class while nothing is asked, and in this window too while they are. */
  readonly isCovered: boolean;
  readonly isCoveredHere: boolean;
  /** The question that is put to the class; null for none. While it is, nothing is wrong with the circuit. */
  readonly asked: Predict | null;
  /** Seed of the next question that the circuit asks by itself, and the texts of those that were asked. */
  readonly seed: number;
  readonly known: readonly string[];
  /** Whether the states show what the faults put in do to them; else the class sees the circuit with nothing wrong. */
  readonly showsFaults: boolean;
}

/** A lesson that has not begun. */
export const FIRST_LESSON: Lesson = {
  play: AT_START,
  focus: { is: "scene" },
  hasCaption: true,
  isCovered: false,
  isCoveredHere: false,
  asked: null,
  seed: 1,
  known: [],
  showsFaults: false,
};

/** What is shown to a class, whatever circuit is open. */
export interface Classroom {
  /** Where it is seen: in a window of its own, over this one, or nowhere. */
  readonly where: "window" | "here" | null;
  readonly isBlank: boolean;
  /** Light washes out less in a lit room: dark is a choice, whatever the look of this window. */
  readonly isDark: boolean;
}

/** Nothing is shown to anybody. */
export const EMPTY_CLASSROOM: Classroom = { where: null, isBlank: false, isDark: false };

/**
 * Place of the scene that is shown, counted from 0; -1 while the drawing stands as none says. Several scenes may look at
 * different things of one setting: the one that was chosen is the one that is shown.
 */
export function placeOfScene({ scenes }: Circuit, condition: Condition, { at }: Play): number {
  const now = conditionText(condition);
  const isSetSo = (scene: Scene | undefined): boolean => scene !== undefined && conditionText(scene.condition) === now;
  return isSetSo(scenes[at]) ? at : scenes.findIndex(isSetSo);
}

/** Where the scenes are: at the one that is shown, also where it was thrown by hand; else at the one that was shown last. */
export function playNow(circuit: Circuit, condition: Condition, play: Play): Play {
  const at = placeOfScene(circuit, condition, play);
  return at < 0 || at === play.at ? play : { ...play, at, shown: 0 };
}

/** Whether the states are covered up now: while a question waits for its answers, or by choice. */
export function isCoveredNow({ asked, isCovered }: Lesson): boolean {
  return asked ? !asked.isRevealed : isCovered;
}
