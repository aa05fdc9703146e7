import { liveNow } from "../../core/edit/liveNow.ts";
import { changedBetween } from "../../core/lesson/changed.ts";
import { inFocus } from "../../core/lesson/scene.ts";
import { type Desk, sceneShown } from "./desk.ts";

/**
 * Ids of the wires and parts that are drawn in full; null for all. What changed, where that is asked for and anything did, goes
 * before a scene's focus.
 */
export function drawnInFull(desk: Desk): ReadonlySet<string> | null {
  const { bench, before, showsChanged } = desk;
  if (showsChanged && before !== null) {
    const changed = changedBetween(before, liveNow(bench).shown, bench.circuit.nominalVolts);
    if (changed.size > 0) return changed;
  }
  const scene = sceneShown(desk);
  return scene && inFocus(bench.circuit, scene);
}
