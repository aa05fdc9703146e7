import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit, Scene } from "../circuit/circuit.ts";
import { conditionRefusal } from "../live/condition.ts";
import { trimmed } from "./editOf.ts";
import { labelNeeded } from "./typed.ts";

/** Most characters of a caption, as a circuit file takes it. */
const MOST_CAPTION = 1_000;

/**
 * A scene as it is written at this place, -1 for a new one. Refuses `label-empty`, `label-long`, `label-taken` where another
 * scene has the label, `caption-long`, and a condition that the circuit cannot be brought to.
 */
export function sceneOf(circuit: Circuit, place: number, { label, condition, caption = "" }: Scene): Outcome<Scene> {
  const read = labelNeeded(label);
  if (!read.ok) return read;
  if (circuit.scenes.some((scene, index) => index !== place && scene.label === read.value)) {
    return refuse("label-taken", { label: read.value });
  }
  const text = caption.trim();
  if (text.length > MOST_CAPTION) return refuse("caption-long", { most: MOST_CAPTION, length: text.length });
  const refusal = conditionRefusal(circuit, condition);
  if (refusal) return { ok: false, refusal };
  return ok({ label: read.value, condition: trimmed(condition), ...(text !== "" && { caption: text }) });
}

/** The scene at this place, counted from 0, or the refusal `no-scene`. */
export function sceneAt({ scenes }: Circuit, place: number): Outcome<Scene> {
  const scene = scenes[place];
  return scene ? ok(scene) : refuse("no-scene", { scene: place + 1 });
}
