import type { Action } from "./action.ts";
import type { AppState } from "./state.ts";

/** What a key of the keyboard does in the whole window; null where it is left to whatever has the focus. */
export function actionForKey(
  {
    key,
    ctrlKey,
    metaKey,
    shiftKey,
    altKey,
  }: Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "shiftKey" | "altKey">,
  state: AppState,
): Action | null {
  if (altKey || !(ctrlKey || metaKey)) return null;
  if (state.bringing) return null;
  if (!state.open || state.isPrinting) return key.toLowerCase() === "o" ? { do: "choose-file" } : null;
  switch (key.toLowerCase()) {
    case "z":
      return { do: shiftKey ? "redo" : "undo" };
    case "y":
      return { do: "redo" };
    case "f":
      return { do: "open-find" };
    case "p":
      return { do: "open-print" };
    case "s":
      return { do: "save-file" };
    case "o":
      return { do: "choose-file" };
    case "w":
      return { do: "close" };
    case "0":
      return { do: "wish", want: { zoom: "full-size" } };
    case "9":
      return { do: "wish", want: { zoom: "fit" } };
    case "+":
    case "=":
      return { do: "wish", want: { zoom: "in" } };
    case "-":
      return { do: "wish", want: { zoom: "out" } };
    default:
      return null;
  }
}

/** Keys that edit the text of a field stay with the field. */
export function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || (target.matches("input, textarea") && !target.matches('[type="checkbox"]'));
}
