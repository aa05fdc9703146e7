import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Seconds } from "../base/units.ts";
import { type Circuit, SCENE_LIMITS, type Scene } from "../circuit/circuit.ts";
import { conditionRefusal } from "../live/condition.ts";
import { trimmed } from "./editOf.ts";
import { focusRefusal } from "./sceneFocus.ts";
import { questionsRefusal } from "./sceneQuestions.ts";
import { labelNeeded } from "./typed.ts";

/** Most characters of a caption and of notes, as a circuit file takes them. */
const MOST_CAPTION = 1_000;

/** A scene as it is typed: no part in focus is all parts, and null seconds are those of every scene. */
export interface SceneTyped extends Omit<Scene, "seconds"> {
  readonly seconds?: Seconds | null;
}

/**
 * A scene as it is written at this place, -1 for a new one. Refuses `label-empty`, `label-long`, `label-taken` where another
 * scene has the label, `caption-long`, `notes-long`, a condition that the circuit cannot be brought to, `part-unknown` in the focus,
 * `point-spelling` in a question, `questions-many` and `scene-seconds`.
 */
export function sceneOf(circuit: Circuit, place: number, typed: SceneTyped): Outcome<Scene> {
  const read = labelNeeded(typed.label);
  if (!read.ok) return read;
  if (circuit.scenes.some((scene, index) => index !== place && scene.label === read.value)) {
    return refuse("label-taken", { label: read.value });
  }
  const caption = (typed.caption ?? "").trim();
  if (caption.length > MOST_CAPTION) return refuse("caption-long", { most: MOST_CAPTION, length: caption.length });
  const notes = (typed.notes ?? "").trim();
  if (notes.length > MOST_CAPTION) return refuse("notes-long", { most: MOST_CAPTION, length: notes.length });
  const { condition, focus = [], seconds = null, questions = [] } = typed;
  const refusal =
    conditionRefusal(circuit, condition) ??
    focusRefusal(circuit, focus) ??
    secondsRefusal(seconds) ??
    questionsRefusal(circuit, questions);
  if (refusal) return { ok: false, refusal };
  return ok(
    inOrder({
      label: read.value,
      condition: trimmed(condition),
      caption,
      notes,
      focus: [...new Set(focus)],
      seconds,
      questions,
    }),
  );
}

/** Fields in their order, without those that say nothing: two scenes that say the same then read the same. */
export function inOrder({
  label,
  condition,
  caption = "",
  notes = "",
  focus = [],
  seconds = null,
  questions = [],
}: SceneTyped): Scene {
  return {
    label,
    condition,
    ...(caption !== "" && { caption }),
    ...(notes !== "" && { notes }),
    ...(focus.length > 0 && { focus }),
    ...(seconds !== null && { seconds }),
    ...(questions.length > 0 && { questions }),
  };
}

function secondsRefusal(seconds: Seconds | null): Refusal | null {
  const { least, most } = SCENE_LIMITS;
  const isFit = seconds === null || (seconds >= least && seconds <= most);
  return isFit ? null : refuse("scene-seconds", { least, most }).refusal;
}

/** The scene at this place, counted from 0, or the refusal `no-scene`. */
export function sceneAt({ scenes }: Circuit, place: number): Outcome<Scene> {
  const scene = scenes[place];
  return scene ? ok(scene) : refuse("no-scene", { scene: place + 1 });
}
