import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { sceneAt } from "../sceneFields.ts";

/** Puts the scene at a place at another one, both counted from 0. Refuses `no-scene`, `edit-place` and `already-so`. */
export function reorderScene(bench: Bench, from: number, to: number): Outcome<Edit> {
  const { scenes } = bench.circuit;
  const scene = sceneAt(bench.circuit, from);
  if (!scene.ok) return scene;
  if (!Number.isInteger(to) || to < 0 || to >= scenes.length) return refuse("edit-place", { what: "scene", at: to });
  if (from === to) return alreadySo(`"${scene.value.label}"`);
  const others = scenes.filter((_, index) => index !== from);
  const value = [...others.slice(0, to), scene.value, ...others.slice(to)];
  return editOf(bench, WIRING_NAMES.reorderScene(scene.value.label), [{ change: "circuit", field: "scenes", value }]);
}
