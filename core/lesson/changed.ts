import type { ConnectorId, PartId, WireId } from "../base/ids.ts";
import type { Volts } from "../base/units.ts";
import { differencesOf } from "../live/differences.ts";
import type { Live } from "../live/live.ts";

/**
 * What is to be seen of a step from one live state to another: wires and parts that differ in state, volts or work, parts
 * whose contacts lie otherwise, and plugs and parts pulled or put back. All else may be dimmed.
 */
export function changedBetween(
  before: Live,
  after: Live,
  nominalVolts: Volts,
): ReadonlySet<WireId | PartId | ConnectorId> {
  const { wires, parts } = differencesOf(before, after, nominalVolts);
  const moved = [...after.parts].flatMap(([id, { closed }]) =>
    areSame(closed, before.parts.get(id)?.closed ?? closed) ? [] : [id],
  );
  return new Set([...wires, ...parts, ...moved, ...pulled(before, after)]);
}

function areSame(one: ReadonlySet<string>, other: ReadonlySet<string>): boolean {
  return one.size === other.size && [...one].every((key) => other.has(key));
}

/** Plugs and parts that are off in one of the two states and not in the other. */
function pulled({ condition: was }: Live, { condition: now }: Live): readonly string[] {
  const off = (condition: Live["condition"]): readonly string[] => [
    ...(condition.apart ?? []),
    ...(condition.out ?? []),
  ];
  const [before, after] = [new Set(off(was)), new Set(off(now))];
  return [...new Set([...before, ...after])].filter((id) => before.has(id) !== after.has(id));
}
