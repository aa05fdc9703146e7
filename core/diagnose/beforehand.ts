import { remember } from "../base/memo.ts";
import type { Minutes } from "../base/units.ts";
import type { AccessGroup, Circuit } from "../circuit/circuit.ts";
import { bladesOf } from "./inPlace.ts";
import { groupsToOpen, minutesToOpen, testPointsOf } from "./testPoint.ts";

/** A fuse behind more minutes of trim than this is not laid open on the chance that it is wanted (a guess). */
const MOST_MINUTES: Minutes = 3;

/**
 * What is taken off fuses before a vehicle falls asleep: it has to be off before the first row whatever is read then, and
 * there is time while one waits. Outermost first.
 */
export const openedBeforehand = remember((circuit: Circuit): readonly AccessGroup[] => {
  const fuses = circuit.parts.filter(({ kind }) => kind === "fuse");
  const blades = new Set(fuses.flatMap(({ id }) => bladesOf(circuit, id)));
  const groups = testPointsOf(circuit).flatMap(({ point, access, doNotProbe }) => {
    if (access === null || doNotProbe !== null || !blades.has(point)) return [];
    return minutesToOpen(circuit, access, new Set()) <= MOST_MINUTES ? groupsToOpen(circuit, access) : [];
  });
  return [...new Set(groups)];
});
