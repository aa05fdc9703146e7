import { bound } from "../../core/edit/keys/ownKeys.ts";
import type { KeyPress } from "../../core/edit/keys/press.ts";
import type { KeyIdOf } from "../../core/edit/keys/rows.ts";
import { actionOf, classActFor } from "../class/acts.ts";
import type { Action } from "./action.ts";
import type { AppState } from "./state.ts";

const ACTIONS: Readonly<Record<KeyIdOf<"window">, Action>> = {
  undo: { do: "undo" },
  redo: { do: "redo" },
  find: { do: "open-find" },
  print: { do: "open-print" },
  "save-file": { do: "save-file" },
  "open-file": { do: "choose-file" },
  library: { do: "close" },
  "full-size": { do: "wish", want: { zoom: "full-size" } },
  "whole-page": { do: "wish", want: { zoom: "fit" } },
  nearer: { do: "wish", want: { zoom: "in" } },
  farther: { do: "wish", want: { zoom: "out" } },
  class: { do: "open-class", where: "any" },
  help: { do: "open-help" },
  keys: { do: "open-keys" },
};

/** What a key of the keyboard does in the whole window; null where it is left to whatever has the focus. */
export function actionForKey(press: KeyPress, state: AppState): Action | null {
  if (state.classroom.where === "here") {
    const act = classActFor(press, state.settings.keys);
    return act && actionOf(act, state);
  }
  const id = bound("window", press, state.settings.keys);
  if (id === null) return null;
  if (id === "help") return state.help === null ? ACTIONS.help : null;
  const isCovered =
    state.help !== null || state.isPrinting || state.isExporting || state.isShowingKeys || state.isShowingReport;
  // The desk lies over the bench, which no key may change unseen.
  if (state.bringing !== null || state.handins.isShown) return null;
  const isOpen = state.open !== null || (state.learning !== null && OF_A_LEARNER.includes(id));
  const isMeant = id === "open-file" || (id === "keys" ? !isCovered : isOpen && !isCovered);
  return isMeant ? ACTIONS[id] : null;
}

/** What a learner's bench has too. */
const OF_A_LEARNER: readonly KeyIdOf<"window">[] = [
  "find",
  "save-file",
  "library",
  "full-size",
  "whole-page",
  "nearer",
  "farther",
];

/**
 * Whether a key that has the whole window is left to what has the focus: in a field it edits the text, or is a sign of it; a
 * button is pressed by it.
 */
export function isOfTheField({ key, ctrlKey, metaKey, target }: KeyboardEvent, { do: done }: Action): boolean {
  if (target instanceof HTMLButtonElement) return key === " " || key === "Enter";
  if (!isTyping(target)) return false;
  if (done === "undo" || done === "redo") return !isEmptied(target);
  return key.length === 1 && !ctrlKey && !metaKey;
}

/** A field that is emptied by what it gave the bench has nothing of its own to undo: the last edit of the bench is meant. */
function isEmptied(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.dataset.whenEmpty === "bench" && target.value === "";
}

/** Keys that edit the text of a field stay with the field. */
function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || (target.matches("input, textarea") && !target.matches('[type="checkbox"]'));
}
