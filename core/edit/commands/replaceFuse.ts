import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { partAt } from "../../circuit/points.ts";
import { faultModes } from "../../live/fault.ts";
import { LEFT_BY_HAND } from "../../live/standing.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, nameOf, without } from "../editOf.ts";
import { liveNow } from "../liveNow.ts";

/**
 * Puts a good fuse in the place of a melted one, or resets a tripped breaker; a fault of the fuse itself goes with it. What
 * melted it may melt it again at once. Refuses `part-unknown` and `fuse-whole`.
 */
export function replaceFuse(bench: Bench, part: PartId): Outcome<Edit> {
  const { circuit, faults } = bench;
  if (!partAt(circuit, part)) return refuse("part-unknown", { part });
  const { after, good, now } = liveNow(bench);
  const state = [now, good]
    .map(({ parts }) => parts.get(part)?.state ?? "")
    .find((each) => LEFT_BY_HAND.includes(each));
  if (state === undefined) return refuse("fuse-whole", { part });
  const modes = faultModes(circuit, { is: "part", id: part });
  const isCured = (mode: string): boolean => modes.some((each) => each.mode === mode && each.repair === "replace");
  const left = faults.filter(({ target, mode }) => target !== part || !isCured(mode));
  const name = state === "tripped" ? EDIT_NAMES.resetBreaker : EDIT_NAMES.replaceFuse;
  const before = { condition: bench.condition, good: without(after.good, part), now: without(after.now, part) };
  return editOf(bench, name(nameOf(circuit, part)), [
    { change: "bench", field: "before", value: before },
    ...(left.length < faults.length ? [{ change: "bench", field: "faults", value: left } as const] : []),
  ]);
}
