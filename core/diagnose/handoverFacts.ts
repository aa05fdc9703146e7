import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Amps, Volts } from "../base/units.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { type BranchLine, type BranchRow, branchOf } from "../live/branch.ts";
import { conditionText } from "../live/condition.ts";
import { measuredScale, restVoltsOf } from "../live/restVolts.ts";
import { kindOf } from "../parts/catalogue.ts";
import { isRowOf } from "./masked.ts";
import type { ProofAsk } from "./proofRun.ts";
import type { Reading } from "./reading.ts";

/** A figure of the handover page: what was read on the vehicle, or what the drawing gives. */
export interface HandoverFigure {
  readonly value: Volts | Amps;
  readonly unit: "V" | "A";
  readonly isRead: boolean;
}

/**
 * What an owner is shown: three parts in the order of the current, the found one in the middle or last, and the two
 * figures that prove the fault with the one after it. `shown` says of what: the two sides of the found part, volts and
 * amps of a load that is at fault itself, or battery and load where the fault lies beside their path.
 */
export interface HandoverFacts {
  readonly line: BranchLine;
  readonly rows: readonly [BranchRow, BranchRow, BranchRow];
  /** Which of the rows was found; null where the fault lies beside this path. */
  readonly found: 0 | 1 | 2 | null;
  readonly shown: "sides" | "load" | "supply";
  /** True where the found part lies behind the load: what arrives there should go to nothing. */
  readonly isReturn: boolean;
  readonly one: HandoverFigure;
  readonly other: HandoverFigure;
  readonly after: HandoverFigure;
}

/** What the page is asked of: the fault with its complaint, readings before and after the repair. */
export interface HandoverAsk extends ProofAsk {
  readonly readings?: readonly Reading[];
  readonly after?: readonly Reading[];
}

/** The three parts and three figures of a handover page. Refuses `proof-no-load`. */
export function handoverFacts(ask: HandoverAsk): Outcome<HandoverFacts> {
  const { circuit, complaint, found } = ask;
  const branch = branchOf(circuit, { load: complaint.load, condition: complaint.condition, faults: found.faults });
  if (!branch.ok) return refuse("proof-no-load", { load: complaint.load });
  const { lines, controls, amps, goodAmps } = branch.value;
  const isFound = (row: BranchRow): boolean => found.faults.some(({ target }) => isRowOf(circuit, row, target));
  const all = [...lines, ...controls.flatMap((control) => control.lines)];
  const line = all.find(({ rows }) => rows.some(isFound)) ?? lines[0]!;
  const at = line.rows.findIndex(isFound);
  const load = loadIn(line);
  const figures = { ask, scale: measuredScale(circuit, ask.batteryVolts ?? null) };
  if (at < 0) return ok(bySupply(circuit, figures, line, load));
  const picked = threeOf(circuit, line, load, at);
  if (at === load) {
    const arrives = sideFigure(figures, line.rows[at]!, "entry");
    const amp = (value: Amps): HandoverFigure => ({ value: value * figures.scale, unit: "A", isRead: false });
    return ok({
      line,
      ...picked,
      shown: "load",
      isReturn: false,
      one: arrives.before,
      other: amp(amps),
      after: amp(goodAmps),
    });
  }
  const row = line.rows[at]!;
  const [one, other] = [sideFigure(figures, row, "entry"), sideFigure(figures, row, "exit")];
  const isReturn = at > load;
  if (Math.abs(one.before.value - other.before.value) < LEAST_STEP)
    return ok(bySupply(circuit, figures, line, load, picked));
  return ok({
    line,
    ...picked,
    shown: "sides",
    isReturn,
    one: one.before,
    other: other.before,
    after: isReturn ? one.after : other.after,
  });
}

/** A step from one side to the other that an owner sees; a smaller one proves nothing to them. */
const LEAST_STEP: Volts = 0.3;

type Picked = Pick<HandoverFacts, "rows" | "found">;

interface Figures {
  readonly ask: HandoverAsk;
  readonly scale: number;
}

/** Row of the load of a line; the last part of one that has none, such as the coil a contact is moved by. */
function loadIn({ rows }: BranchLine): number {
  const own = rows.findIndex((row) => row.is === "part" && row.isLoad);
  return own >= 0 ? own : Math.max(0, rows.map(({ is }) => is).lastIndexOf("part"));
}

function roleOf(circuit: Circuit, row: BranchRow): string {
  return row.is === "part" ? (kindOf(partAt(circuit, row.part)?.kind ?? "")?.role ?? "") : "";
}

/** Feed, found part and load; load, found part and ground; or feed, load and ground where the load itself was found. */
function threeOf(circuit: Circuit, { rows }: BranchLine, load: number, at: number): Picked {
  const found = rows[at]!;
  const [first, last] = [rows[0]!, rows.at(-1)!];
  const ground = rows.slice(Math.max(load, at) + 1).find(({ is }) => is === "ground") ?? last;
  if (at > load) return { rows: [rows[load]!, found, ground === found ? last : ground], found: 1 };
  const before = rows.slice(0, at).reverse();
  const feed =
    before.find((row) => roleOf(circuit, row) === "control") ??
    before.find((row) => roleOf(circuit, row) === "protection") ??
    first;
  return { rows: [feed, found, at === load ? ground : rows[load]!], found: 1 };
}

/** Volts of one side of a row to battery negative, before and after: what was read there, else what the drawing gives. */
function sideFigure(
  { ask, scale }: Figures,
  row: BranchRow,
  side: "entry" | "exit",
): { readonly before: HandoverFigure; readonly after: HandoverFigure } {
  const { point, volts, goodVolts } = row[side];
  const figure = (readings: readonly Reading[], solved: Volts | null): HandoverFigure => {
    const read = point === null ? undefined : readAt(readings, point, ask.complaint);
    return read === undefined
      ? { value: scale * (solved ?? 0), unit: "V", isRead: false }
      : { value: read, unit: "V", isRead: true };
  };
  return { before: figure(ask.readings ?? [], volts), after: figure(ask.after ?? [], goodVolts) };
}

/** The last plain volts read from a point to battery negative with the circuit set as the complaint says. */
function readAt(readings: readonly Reading[], point: string, { condition }: FunctionCheck): Volts | undefined {
  const own = readings.filter(
    (each) =>
      each.red === point &&
      each.black === "battery -" &&
      each.lampTo === null &&
      each.standing === "taken" &&
      conditionText(each.condition) === conditionText(condition),
  );
  return own.at(-1)?.volts ?? undefined;
}

/** Battery and load: what the battery has, what reaches the load with the fault, and what does after. */
function bySupply(
  circuit: Circuit,
  { scale }: Figures,
  line: BranchLine,
  load: number,
  picked?: Picked,
): HandoverFacts {
  const { rows } = line;
  const row = rows[load]!;
  const figure = (value: Volts): HandoverFigure => ({ value: scale * value, unit: "V", isRead: false });
  const across = (one: Volts | null, other: Volts | null): Volts => Math.abs((one ?? 0) - (other ?? 0));
  const feed =
    rows
      .slice(0, load)
      .reverse()
      .find((each) => roleOf(circuit, each) === "control") ?? rows[0]!;
  return {
    line,
    rows: [rows[0]!, feed === rows[0] ? rows[Math.max(0, load - 1)]! : feed, row],
    found: null,
    ...picked,
    shown: "supply",
    isReturn: false,
    one: figure(restVoltsOf(circuit)),
    other: figure(across(row.entry.volts, row.exit.volts)),
    after: figure(across(row.entry.goodVolts, row.exit.goodVolts)),
  };
}
