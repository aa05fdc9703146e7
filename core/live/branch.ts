import type { PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { assert, type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Amps } from "../base/units.ts";
import type { Circuit, Condition, FunctionCheck } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { kindOf } from "../parts/catalogue.ts";
import { controlsOfLines } from "./branchControls.ts";
import { type BranchPaths, pathsOf } from "./branchPaths.ts";
import type { BranchControl, BranchLine } from "./branchRow.ts";
import { placeName, type RowField, rowsOf } from "./branchRows.ts";
import { tapField } from "./branchTaps.ts";
import { type Currents, currentsOf } from "./branchWays.ts";
import type { Fault } from "./fault.ts";
import { judge } from "./judge.ts";
import { type Live, liveOf } from "./live.ts";
import { Rig } from "./rig.ts";
import { moveTo, reach } from "./settle.ts";
import { snapshotOf } from "./snapshot.ts";
import { resume, type Standing } from "./standing.ts";

export type { BranchControl, BranchEnd, BranchLine, BranchPart, BranchRow, BranchWire } from "./branchRow.ts";

/**
 * What carries a load's current and what controls that, in the good circuit, with the states that are shown. The first
 * line leads from a source through the load back to it; others part from it and join it again.
 */
export interface Branch {
  readonly load: PartId;
  readonly condition: Condition;
  /** Amps of the load in the good circuit, and as shown. */
  readonly goodAmps: Amps;
  readonly amps: Amps;
  readonly lines: readonly BranchLine[];
  readonly controls: readonly BranchControl[];
}

/** What a branch is asked for. */
export interface BranchRequest {
  readonly load: PartId;
  /** Counts where the load carries current in it; else the first function check does in which the load works. */
  readonly condition?: Condition;
  readonly faults?: readonly Fault[];
}

/**
 * The branch of a load in a condition reached from rest. With faults it is what would carry the current in the good
 * circuit. Refuses `branch-load` for a part that is not there, and `branch-no-current`.
 */
export function branchOf(circuit: Circuit, { load, condition, faults = [] }: BranchRequest): Outcome<Branch> {
  if (!partAt(circuit, load)) return refuse("branch-load", { part: load, loads: loadsOf(circuit).join(", ") });
  const tried = [...(condition ? [condition] : []), ...conditionsFor(circuit, load)];
  for (const each of tried) {
    const rig = rigOf(circuit);
    reach(rig, each);
    const currents = currentsOf(rig);
    const paths = pathsOf(currents, load);
    if (paths) return ok(branchIn(currents, paths, load, liveOf(circuit, each, faults)));
  }
  return refuse("branch-no-current", { part: load });
}

/**
 * The branch of a load where a good circuit stands, shown as it is in `live`; null where the load carries no current
 * there.
 */
export function branchFrom(circuit: Circuit, load: PartId, good: Standing, live: Live): Branch | null {
  if (!partAt(circuit, load)) return null;
  const rig = rigOf(circuit);
  resume(rig, good);
  moveTo(rig, good.condition);
  const currents = currentsOf(rig);
  const paths = pathsOf(currents, load);
  return paths && branchIn(currents, paths, load, live);
}

/** One rig for each circuit: it is brought to where it is wanted each time, and only saves laying it out anew. */
const rigOf = remember((circuit: Circuit) => new Rig(circuit));

/** Parts that a branch can be asked of: loads, and whatever a function check judges. In the circuit's order. */
export const loadsOf = remember((circuit: Circuit): readonly PartId[] => {
  const judged = new Set(circuit.checks.map(({ load }) => load));
  return circuit.parts.flatMap(({ id, kind }) => (kindOf(kind)?.role === "load" || judged.has(id) ? [id] : []));
});

/** Conditions in which a load is meant to work, those of its own function checks first; other checks and scenes after. */
export function conditionsFor(circuit: Circuit, load: PartId): readonly Condition[] {
  const own = checksOf(circuit, load);
  const others = circuit.checks.filter((check) => !own.includes(check));
  return [...own, ...others, ...circuit.scenes].map(({ condition }) => condition);
}

/** The function checks in which a load should do something, and in the good circuit does. */
export function checksOf(circuit: Circuit, load: PartId): readonly FunctionCheck[] {
  return circuit.checks.filter(
    (check) =>
      check.load === load &&
      check.expect !== "off" &&
      judge(check, liveOf(circuit, check.condition).parts.get(load)) === "works",
  );
}

function branchIn(currents: Currents, paths: BranchPaths, load: PartId, shown: Live): Branch {
  const field = fieldOf(currents, load, shown);
  const lines = linesIn(paths, { ...field, work: new Set(paths.work.map(({ placed }) => placed)) });
  const linesOf = (part: PartId, own: RowField): readonly BranchLine[] => {
    const other = pathsOf(currents, part);
    assert(other, `${part} carries current`);
    return linesIn(other, own);
  };
  return {
    load,
    condition: shown.condition,
    goodAmps: paths.amps,
    amps: ampsShown(shown, load, lines),
    lines,
    controls: controlsOfLines({ currents, rows: field, linesOf }, lines),
  };
}

/** Amps of a load as shown: what it draws, or the wire beside it carries where the part itself measures none. */
function ampsShown(shown: Live, load: PartId, lines: readonly BranchLine[]): Amps {
  const now = shown.parts.get(load);
  if (now && now.doing !== null) return Math.abs(now.amps);
  const rows = lines[0]?.rows ?? [];
  const at = rows.findIndex((row) => row.is === "part" && row.isLoad);
  const beside = [rows[at - 1], rows[at + 1]].find((row) => row?.is === "wire");
  return beside?.is === "wire" ? Math.abs(beside.amps) : 0;
}

function fieldOf({ rig, places }: Currents, load: PartId, shown: Live): RowField {
  const moment = snapshotOf(rig);
  const good: RowField["good"] = (node) => {
    const state = moment.nodes.state[node]!;
    return { state, volts: state === "floating" ? null : moment.volts[node]! };
  };
  return { ...tapField(rig, places), shown, good, load, work: new Set() };
}

function linesIn({ paths }: BranchPaths, field: RowField): readonly BranchLine[] {
  const elements = new Set(paths.flatMap(({ ways }) => ways.map(({ placed }) => placed)));
  return paths.map(({ ways, shares }, index): BranchLine => {
    const rows = rowsOf(field, ways, shares, elements);
    if (index === 0) return { rows, from: null, to: null };
    return { rows, from: placeName(field, ways[0]!.from), to: placeName(field, ways.at(-1)!.to) };
  });
}
