import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { sceneAt } from "../sceneFields.ts";

/** Takes out the scene at a place, counted from 0. Refuses `no-scene`. */
export function removeScene(bench: Bench, place: number): Outcome<Edit> {
  const scene = sceneAt(bench.circuit, place);
  if (!scene.ok) return scene;
  const value = bench.circuit.scenes.filter((_, index) => index !== place);
  return editOf(bench, WIRING_NAMES.removeScene(scene.value.label), [{ change: "circuit", field: "scenes", value }]);
}
