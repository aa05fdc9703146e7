import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Minutes } from "../base/units.ts";
import { accessLoops } from "../circuit/checkReach.ts";
import type { AccessGroup, Circuit, Reach } from "../circuit/circuit.ts";
import { cautionsOf, labelNeeded } from "./typed.ts";

/** Longest minutes of work, as a circuit file takes them. */
const MOST_MINUTES: Minutes = 10_000;

/** What a person says of an access group. */
export type AccessGiven = Omit<AccessGroup, "id">;

/**
 * An access group as it is written. Refuses `label-empty`, `label-long`, `minutes-limits`, `hands-count`, wrong cautions,
 * `access-unknown` for a group that it comes after, and `access-loop` where it would come after itself.
 */
export function accessGroup(circuit: Circuit, id: string, given: AccessGiven): Outcome<AccessGroup> {
  const label = labelNeeded(given.label);
  if (!label.ok) return label;
  const fields = workFields(given);
  if (!fields.ok) return fields;
  const after = [...new Set(given.after ?? [])];
  const lost = after.find((each) => each !== id && circuit.access.every((group) => group.id !== each));
  if (lost !== undefined) return refuse("access-unknown", { access: lost });
  const { minutes = 0, ...rest } = fields.value;
  const group: AccessGroup = {
    id,
    label: label.value,
    minutes,
    ...rest,
    ...(given.after && { after }),
    ...(given.photo && { photo: given.photo }),
  };
  const others = circuit.access.filter((each) => each.id !== id);
  return accessLoops({ ...circuit, access: [...others, group] }).includes(id)
    ? refuse("access-loop", { access: id })
    : ok(group);
}

/** Minutes, hands and cautions of a group or a place. Refuses `minutes-limits`, `hands-count` and wrong cautions. */
export function workFields({
  minutes,
  hands,
  cautions,
}: Pick<Reach, "minutes" | "hands" | "cautions">): Outcome<Pick<Reach, "minutes" | "hands" | "cautions">> {
  if (minutes !== undefined && !(minutes >= 0 && minutes <= MOST_MINUTES)) {
    return refuse("minutes-limits", { most: MOST_MINUTES, minutes });
  }
  if (hands !== undefined && hands !== 1 && hands !== 2) return refuse("hands-count", { hands });
  const read = cautionsOf(cautions ?? []);
  if (!read.ok) return read;
  return ok({
    ...(minutes !== undefined && { minutes }),
    ...(hands !== undefined && { hands }),
    ...(cautions && { cautions: read.value }),
  });
}
