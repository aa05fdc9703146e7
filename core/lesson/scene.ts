import type { PartId, WireId } from "../base/ids.ts";
import type { Seconds } from "../base/units.ts";
import type { Circuit, Scene } from "../circuit/circuit.ts";
import { partOfPoint } from "../circuit/points.ts";

/** How long a scene stands that does not say so: two lines of caption read at leisure (our own number). */
export const SCENE_SECONDS: Seconds = 8;

/** How long a scene stands when the scenes are played. */
export function secondsOf({ seconds = SCENE_SECONDS }: Scene): Seconds {
  return seconds;
}

/** How many questions the scenes of a circuit ask. One that asks any is a lesson. */
export function questionsIn({ scenes }: Pick<Circuit, "scenes">): number {
  return scenes.reduce((sum, { questions = [] }) => sum + questions.length, 0);
}

/**
 * What a scene shows in full: its parts in focus, and every wire that has both ends on them. Null where it has none, and
 * all is shown.
 */
export function inFocus(circuit: Circuit, { focus }: Scene): ReadonlySet<PartId | WireId> | null {
  if (focus === undefined) return null;
  const parts = new Set(focus);
  const isOn = (end: string): boolean => parts.has(partOfPoint(circuit, end)?.part.id ?? "");
  const wires = circuit.wires.filter(({ from, to }) => isOn(from) && isOn(to));
  return new Set([...focus, ...wires.map(({ id }) => id)]);
}
