import type { PartId } from "../../core/base/ids.ts";
import { remember } from "../../core/base/memo.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { type Branch, branchFrom, branchOf, checksOf, loadsOf } from "../../core/live/branch.ts";
import type { Live } from "../../core/live/live.ts";
import { straightLoad } from "../state/printing.ts";
import { type AppState, benchOf } from "../state/state.ts";
import { coveredHere } from "../state/views.ts";

/** The load whose branch is followed; null where the circuit has none. */
export function loadNow({ open }: AppState): PartId | null {
  if (!open) return null;
  const load = straightLoad(open.desk.bench, open.printing);
  return load === "" ? null : load;
}

const branchesOf = remember((_: Live) => new Map<PartId, Branch | null>());

/**
 * The branch of that load where the bench stands, as it is shown; null where it carries no current with nothing wrong, and
 * while the states are covered up in this window: that it carries any is what a class is to say.
 */
export function branchNow(state: AppState): Branch | null {
  const bench = benchOf(state);
  const load = loadNow(state);
  if (!bench || load === null || coveredHere(state)) return null;
  const { shown, after } = liveNow(bench);
  const known = branchesOf(shown);
  const before = known.get(load);
  if (before !== undefined) return before;
  const good = { condition: bench.condition, states: after.good };
  const branch = branchFrom(wiringOf(bench.circuit), load, good, shown);
  known.set(load, branch);
  return branch;
}

/** Loads in the order of the list: what is chosen on the drawing first. */
export function loadsListed(circuit: Circuit, chosen: PartId | null): readonly PartId[] {
  const loads = loadsOf(wiringOf(circuit));
  return chosen !== null && loads.includes(chosen) ? [chosen, ...loads.filter((id) => id !== chosen)] : loads;
}

/** A way to have a load carry current: a condition, and the label of the check it comes from. */
export interface Working {
  readonly label: string | null;
  readonly condition: Condition;
}

const workingOf = remember((_: Circuit) => new Map<PartId, Working | null>());

/** How the drawing can be set so that a load carries current: its complaint first, then its own checks; null where nothing does. */
export function workingFor(circuit: Circuit, load: PartId, complaint: string | null): Working | null {
  const own = checksOf(circuit, load).find(({ id }) => id === complaint);
  if (own) return own;
  const known = workingOf(circuit).get(load);
  if (known !== undefined) return known;
  const branch = branchOf(circuit, { load });
  const text = branch.ok ? JSON.stringify(branch.value.condition) : "";
  const label = circuit.checks.find((check) => JSON.stringify(check.condition) === text)?.label ?? null;
  const working = branch.ok ? { label, condition: branch.value.condition } : null;
  workingOf(circuit).set(load, working);
  return working;
}
