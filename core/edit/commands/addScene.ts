import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { type SceneTyped, sceneOf } from "../sceneFields.ts";

/** What a new scene is given; without a condition it shows the present one. */
export type SceneGiven = Omit<SceneTyped, "condition"> & Partial<Pick<SceneTyped, "condition">>;

/** Adds a scene, after all others unless a place is said. Refuses `edit-place`, and as `sceneOf` does. */
export function addScene(bench: Bench, given: SceneGiven, place: number = bench.circuit.scenes.length): Outcome<Edit> {
  const { scenes } = bench.circuit;
  const scene = sceneOf(bench.circuit, -1, { ...given, condition: given.condition ?? bench.condition });
  if (!scene.ok) return scene;
  if (!Number.isInteger(place) || place < 0 || place > scenes.length) {
    return refuse("edit-place", { what: "scene", at: place });
  }
  const value = [...scenes.slice(0, place), scene.value, ...scenes.slice(place)];
  return editOf(bench, WIRING_NAMES.addScene(scene.value.label), [{ change: "circuit", field: "scenes", value }]);
}
