import type { Circuit, Condition, FunctionCheck } from "../circuit/circuit.ts";
import { controlAt, springsBack } from "../circuit/points.ts";
import type { TestLamp } from "../trade/instruments.ts";
import type { Instrument } from "./step.ts";
import { reachOf, type TestPoint, testPointsOf } from "./testPoint.ts";

/** A row that could be read, before anything is known of what it would tell. */
export interface Candidate {
  readonly at: TestPoint;
  readonly instrument: Instrument;
  readonly lampTo: "battery +" | "battery -" | null;
  readonly sweepOf: string | null;
  /** Indices into the conditions tried, one for each setting. */
  readonly conditions: readonly number[];
  readonly positions: readonly string[];
  readonly hands: 1 | 2;
}

/** The test lamp an instrument hangs on the point, or null for the meter alone. */
export function lampOf(instrument: Instrument): TestLamp | null {
  if (instrument === "meter volts") return null;
  return instrument === "4 A lamp" ? "heavy" : "small";
}

/** The conditions worth probing in for a complaint, and the control whose positions are swept. */
export interface Tries {
  readonly conditions: readonly Condition[];
  readonly sweepOf: string | null;
  /** Positions of the swept control, one for each condition from the first on. */
  readonly positions: readonly string[];
}

/** Conditions of a complaint: every position of the control it throws last, all else as in the check. */
export function triesFor(circuit: Circuit, check: FunctionCheck): Tries {
  const thrown = Object.entries(check.condition.set ?? {});
  const last = thrown.at(-1);
  const control = last && controlAt(circuit, last[0]);
  if (!last || !control) return { conditions: [check.condition], sweepOf: null, positions: [""] };
  const before = Object.fromEntries(thrown.slice(0, -1));
  const positions = control.control.positions.map((position) => position.name);
  const conditions = positions.map((position) => ({
    ...check.condition,
    set: position === control.rest ? before : { ...before, [last[0]]: position },
  }));
  return { conditions, sweepOf: last[0], positions };
}

/** Every row that could be read: sweeps, single volts, and the lamp both ways round, where a probe may go. */
export function candidatesFor(circuit: Circuit, tries: Tries): readonly Candidate[] {
  return testPointsOf(circuit)
    .filter((at) => at.doNotProbe === null)
    .flatMap((at) => rowsAt(circuit, at, tries));
}

function rowsAt(circuit: Circuit, at: TestPoint, { sweepOf, positions, conditions }: Tries): readonly Candidate[] {
  const held = conditions.map((_, index) => sweepOf !== null && springsBack(circuit, sweepOf, positions[index]!));
  const near = isWithinReach(circuit, at, sweepOf);
  const plain = { at, instrument: "meter volts", lampTo: null, sweepOf: null } as const;
  const hands = (index: number, busy: boolean): 1 | 2 => (at.hands === 2 || (held[index] && (busy || !near)) ? 2 : 1);
  const single = (index: number) => ({ conditions: [index], positions: [positions[index]!] });
  // With the probe on the point, every position of the control costs a moment: one position alone is read only at rest.
  const rows: Candidate[] = [{ ...plain, ...single(0), hands: hands(0, false) }];
  if (conditions.length > 1) {
    const all = conditions.map((_, index) => index);
    rows.push({
      ...plain,
      sweepOf,
      conditions: all,
      positions,
      hands: all.some((index) => hands(index, false) === 2) ? 2 : 1,
    });
  }
  const { lamp } = at;
  if (lamp === null) return rows;
  conditions.forEach((_, index) => {
    for (const lampTo of ["battery -", "battery +"] as const) {
      rows.push({ at, instrument: lamp, lampTo, sweepOf: null, ...single(index), hands: hands(index, true) });
    }
  });
  return rows;
}

/** Whether one person can hold the control and reach the point: they lie behind the same trim. */
function isWithinReach(circuit: Circuit, at: TestPoint, key: string | null): boolean {
  const control = key === null ? undefined : controlAt(circuit, key);
  if (!control) return true;
  return (reachOf(circuit, control.part.id).access ?? null) === at.access;
}
