import type { ControlKey } from "../../core/base/ids.ts";
import { bound, type OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import type { KeyPress } from "../../core/edit/keys/press.ts";
import type { KeyIdOf } from "../../core/edit/keys/rows.ts";
import { paused, played, stepped } from "../../core/lesson/play.ts";
import { secondsOf } from "../../core/lesson/scene.ts";
import { CLASS_WORDS } from "../../core/lesson/wall.ts";
import type { Action } from "../state/action.ts";
import type { AppState, Open } from "../state/state.ts";
import { playNow } from "./lesson.ts";

/** What can be done in front of what a class sees: a hand goes up for a choice, counted from 0, or a control is thrown. */
export type ClassAct =
  | { readonly act: "class-throw"; readonly control: ControlKey; readonly position: string }
  | { readonly act: Exclude<KeyIdOf<"class">, "class-hand"> }
  | { readonly act: "class-hand"; readonly choice: number };

/** What a key means there; null where it means nothing. */
export function classActFor(press: KeyPress, own: OwnKeys): ClassAct | null {
  const act = bound("class", press, own);
  if (act === null) return null;
  return act === "class-hand" ? { act, choice: Number(press.key) - 1 } : { act };
}

/** What an act comes to in the window of the instructor; null where there is nothing to do. */
export function actionOf(asked: ClassAct, state: AppState): Action | null {
  const { classroom, settings, open } = state;
  switch (asked.act) {
    case "class-next":
      return toScene(state, 1);
    case "class-back":
      return toScene(state, -1);
    case "class-play":
      return playedOrPaused(state);
    case "class-blank":
      return { do: "class", classroom: { isBlank: !classroom.isBlank } };
    case "class-cover":
      return open && { do: "teach", lesson: { isCovered: !open.lesson.isCovered } };
    case "class-ask":
      return { do: "ask-next" };
    case "class-hand":
      return { do: "hand", choice: asked.choice };
    case "class-hand-back":
      return { do: "hand-back" };
    case "class-reveal":
      return open?.lesson.asked?.isRevealed ? { do: "ask", question: null } : { do: "reveal" };
    case "class-throw":
      return { do: "throw", control: asked.control, position: asked.position };
    case "class-larger":
      return larger(settings.classWords, 1);
    case "class-smaller":
      return larger(settings.classWords, -1);
    case "class-leave":
      return { do: "close-class" };
  }
}

function toScene({ open }: AppState, by: 1 | -1): Action | null {
  if (!open) return null;
  const { lengths, play } = scenesOf(open);
  return lengths.length === 0 ? null : { do: "play-scenes", play: stepped(play, by, lengths), isAnew: true };
}

function playedOrPaused({ open }: AppState): Action | null {
  if (!open) return null;
  const { lengths, play } = scenesOf(open);
  if (lengths.length === 0) return null;
  return play.isPlaying
    ? { do: "play-scenes", play: paused(play) }
    : { do: "play-scenes", play: played(play, lengths), isAnew: true };
}

function scenesOf({ desk: { bench }, lesson }: Open) {
  const { circuit, condition } = bench;
  return { lengths: circuit.scenes.map(secondsOf), play: playNow(circuit, condition, lesson.play) };
}

function larger(now: number, by: 1 | -1): Action {
  const { least, most, step } = CLASS_WORDS;
  return { do: "set", settings: { classWords: Math.min(Math.max(now + by * step, least), most) } };
}
