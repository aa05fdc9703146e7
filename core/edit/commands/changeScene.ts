import type { Outcome } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { inOrder, type SceneTyped, sceneAt, sceneOf } from "../sceneFields.ts";

/** Changes some of the scene at a place, counted from 0. Refuses `no-scene`, `already-so`, and as `sceneOf`. */
export function changeScene(bench: Bench, place: number, given: Partial<SceneTyped>): Outcome<Edit> {
  const { circuit } = bench;
  const was = sceneAt(circuit, place);
  if (!was.ok) return was;
  const now = sceneOf(circuit, place, { ...was.value, ...given });
  if (!now.ok) return now;
  if (JSON.stringify(inOrder(was.value)) === JSON.stringify(now.value)) return alreadySo(`"${was.value.label}"`);
  const value = circuit.scenes.map((scene, index) => (index === place ? now.value : scene));
  return editOf(bench, WIRING_NAMES.changeScene(now.value.label), [{ change: "circuit", field: "scenes", value }]);
}
