import type { PartId, PointId } from "../base/ids.ts";
import type { Amps, Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { kindOf } from "../parts/catalogue.ts";
import { BUDGET_LIMITS, type BudgetLimits, type DropLimit } from "../trade/limits.ts";
import type { Branch, BranchRow } from "./branch.ts";

/** Volts lost along one piece of a load's branch, against what is allowed there. */
export interface BudgetRow {
  /** Id of the wire or part, place of an in-line joint. */
  readonly name: string;
  readonly side: "feed" | "return";
  /** Where the meter's leads go; null inside a body. */
  readonly red: PointId | null;
  readonly black: PointId | null;
  /** Of the good circuit and as it is with the faults shown; null where an end floats. */
  readonly goodDrop: Volts | null;
  readonly drop: Volts | null;
  readonly allowed: DropLimit;
}

/** Both sides of a load: what its feed and its return lose together, against what is allowed. */
export interface BudgetSide {
  readonly side: "feed" | "return";
  readonly goodDrop: Volts;
  readonly drop: Volts | null;
  readonly allowed: DropLimit;
}

/** Where the volts of a load go, biggest overspend first. */
export interface DropBudget {
  readonly load: PartId;
  readonly condition: Condition;
  /** Amps of the load in the good circuit: a drop says nothing without them. */
  readonly amps: Amps;
  readonly rows: readonly BudgetRow[];
  readonly sides: readonly BudgetSide[];
}

/**
 * The drop budget of a load's branch: every wire, contact, joint and ground that its whole current passes, from the battery
 * through the load and back. The limits of published sheets disagree; each row says which one it is held to.
 */
export function budgetOf(circuit: Circuit, branch: Branch, limits: BudgetLimits = BUDGET_LIMITS): DropBudget {
  const rows = branch.lines[0]?.rows ?? [];
  const at = rows.findIndex((row) => row.is === "part" && row.isLoad);
  const isSource = (row: BranchRow): boolean =>
    row.is === "part" && kindOf(partAt(circuit, row.part)?.kind ?? "")?.role === "source";
  const priced = rows.flatMap((row, index): readonly BudgetRow[] => {
    if (index === at || isSource(row) || row.is === "link") return [];
    return [rowOf(circuit, row, index < at ? "feed" : "return", limits)];
  });
  const harness = rows.filter((row) => !isSource(row));
  return {
    load: branch.load,
    condition: branch.condition,
    amps: branch.goodAmps,
    rows: [...priced].sort((one, other) => shareOf(other) - shareOf(one)),
    sides: [
      sideOf("feed", harness[0]?.entry, rows[at]?.entry, limits.feedSide),
      sideOf("return", rows[at]?.exit, harness.at(-1)?.exit, limits.returnSide),
    ],
  };
}

/** Share of what is allowed that a row spends; one that floats has nothing to spend and stands last. */
function shareOf({ drop, allowed }: BudgetRow): number {
  return drop === null ? -1 : Math.abs(drop) / Math.max(allowed.volts, LEAST_ALLOWED);
}

/** A joint that may lose nothing at all is held to what a meter can tell from nothing. */
const LEAST_ALLOWED: Volts = 0.01;

type End = BranchRow["entry"];

function dropBetween(one: Volts | null | undefined, other: Volts | null | undefined): Volts | null {
  return one == null || other == null ? null : one - other;
}

function rowOf(circuit: Circuit, row: BranchRow, side: BudgetRow["side"], limits: BudgetLimits): BudgetRow {
  return {
    name: row.name,
    side,
    red: row.entry.point,
    black: row.exit.point,
    goodDrop: dropBetween(row.entry.goodVolts, row.exit.goodVolts),
    drop: dropBetween(row.entry.volts, row.exit.volts),
    allowed: limitFor(circuit, row, limits),
  };
}

function limitFor(circuit: Circuit, row: BranchRow, limits: BudgetLimits): DropLimit {
  if (row.is === "wire") return limits.wire;
  if (row.is === "ground") return limits.ground;
  if (row.is === "part" && kindOf(partAt(circuit, row.part)?.kind ?? "")?.role === "control") return limits.contact;
  return limits.connection;
}

function sideOf(side: BudgetSide["side"], from: End | undefined, to: End | undefined, allowed: DropLimit): BudgetSide {
  return {
    side,
    goodDrop: dropBetween(from?.goodVolts, to?.goodVolts) ?? 0,
    drop: dropBetween(from?.volts, to?.volts),
    allowed,
  };
}
