import type { PartId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { controlKey, partAt } from "../../circuit/points.ts";
import type { Part } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { editOf, nameOf } from "../editOf.ts";
import { benchAfter, followed } from "../following.ts";
import { partChanges } from "../partTerminals.ts";

/** What no position is called: a control that has nothing else is named by no condition. */
const NOWHERE = "=";

/**
 * Takes a control out of a panel, with what names its positions; terminals and wires stay. Refuses `part-unknown`,
 * `control-unknown`, and `control-last` for the only one.
 */
export function removeControl(bench: Bench, id: PartId, control: string): Outcome<Edit> {
  const { circuit } = bench;
  const part = partAt(circuit, id);
  if (!part) return refuse("part-unknown", { part: id });
  const controls = part.controls ?? [];
  if (controls.every(({ name }) => name !== control)) return refuse("control-unknown", { control: `${id}.${control}` });
  if (controls.length === 1) return refuse("control-last", { part: id });
  // First the control loses its positions, so that what names them goes; then the others may be named without it.
  const empty = controls.map((each) =>
    each.name === control ? { ...each, positions: [{ name: NOWHERE, joins: [] }] } : each,
  );
  const emptied: Part = { ...part, controls: empty };
  const now: Part = { ...part, controls: controls.filter(({ name }) => name !== control) };
  const changes = inTwoSteps(bench, part, emptied, now);
  if (!changes.ok) return changes;
  return editOf(bench, WIRING_NAMES.removeControl(nameOf(circuit, id), control), changes.value);
}

function inTwoSteps(bench: Bench, part: Part, emptied: Part, now: Part): Outcome<readonly Change[]> {
  const first = followed(bench, [], {}, partChanges(part, emptied));
  if (!first.ok) return first;
  const between = benchAfter(bench, first.value);
  if (!between.ok) return between;
  const keys = (now.controls ?? []).map((each) => [controlKey(part, each), controlKey(now, each)] as const);
  const second = followed(between.value, partChanges(emptied, now), { controls: new Map(keys) }, []);
  return second.ok ? ok([...first.value, ...second.value]) : second;
}
