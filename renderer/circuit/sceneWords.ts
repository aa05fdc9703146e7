import type { Scene } from "../../core/circuit/circuit.ts";
import type { SceneTyped } from "../../core/edit/sceneFields.ts";

/** What a person writes of a scene, as it is typed. */
export interface SceneWords {
  readonly label: string;
  readonly caption: string;
  /** For the instructor alone. */
  readonly notes: string;
  /** Designators with commas or spaces between; empty for all parts. */
  readonly focus: string;
  /** Seconds it stands when played; empty for those of every scene. */
  readonly seconds: string;
}

/** A scene as its form shows it; without one, a new scene of this label. */
export function wordsOf({
  label,
  caption = "",
  notes = "",
  focus = [],
  seconds,
}: Omit<Scene, "condition">): SceneWords {
  return { label, caption, notes, focus: focus.join(", "), seconds: seconds === undefined ? "" : String(seconds) };
}

/** What was typed, for the command that takes it: that refuses what is no number and what the circuit does not have. */
export function typedScene({ label, caption, notes, focus, seconds }: SceneWords): Omit<SceneTyped, "condition"> {
  return {
    label,
    caption,
    notes,
    focus: focus.split(/[\s,;]+/).filter((id) => id !== ""),
    seconds: seconds.trim() === "" ? null : Number(seconds.replace(",", ".")),
  };
}
