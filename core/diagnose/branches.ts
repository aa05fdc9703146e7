import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Minutes, Share } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { type Cut, cutAmong, summedUp } from "./branchCut.ts";
import type { Branches, BranchLine, BranchRow, BranchVerdict } from "./branchTable.ts";
import { firstMisled } from "./branchWalk.ts";
import { probeFor } from "./candidates.ts";
import { beforeFirst, complaintWords, type Known, suspicion } from "./order.ts";
import { otherVehicles } from "./otherVehicles.ts";
import { distinct } from "./plan/distinct.ts";
import { tellsOf } from "./plan/information.ts";
import { planner } from "./plan/next.ts";
import { after, allLiving, isOneRepair, type Living, massOf, minutesFrom, type Stand } from "./plan/problem.ts";
import { repairsOf } from "./repairs.ts";
import { type Rows, rowsFor } from "./rows.ts";
import { mayBeProbed } from "./scope.ts";
import { shownTo } from "./shown.ts";
import type { Suspect } from "./step.ts";
import { stepsOf } from "./stepsOf.ts";
import type { Observation } from "./suspects.ts";
import { type Tries, triesFor } from "./tries.ts";

/** What is known of the job, and how many rows deep the sheet may go. */
export interface BranchesKnown extends Known {
  readonly depth?: number;
}

const DEPTH = 5;
/** Rows and verdicts that a person can follow on paper. */
const MOST_ROWS = 40;
/** A branch lighter than this share of all is not followed any further: its verdict names who is left. */
const LEAST_SHARE: Share = 0.02;

interface Node {
  readonly column: number;
  readonly living: Living;
  readonly minutes: Minutes;
  readonly cut: readonly Cut[];
  readonly next: readonly (Node | Living)[];
}

/**
 * The branch sheet for a complaint. Each row is what the planner would take for the suspects that reach it, its limits
 * lie between what these suspects show, solved with the instrument in the circuit, on the vehicle as drawn and on others
 * (`otherVehicles`); and every suspect is walked through the printed limits on each before the table is given out. Refuses `over-60-volts`, `no-suspects`, `branches-one`, and `branches-misled` where a
 * suspect would not end at its own verdict.
 */
export function branchesFor(circuit: Circuit, complaint: Observation, known: BranchesKnown = {}): Outcome<Branches> {
  const open = mayBeProbed(circuit);
  if (!open.ok) return open;
  const { suspects } = suspicion(circuit, complaint, known);
  if (suspects.length === 0) return refuse("no-suspects");
  const tries = triesFor(circuit, complaint.check);
  const rows = rowsFor(circuit, complaint.check.condition, suspects, tries, known.readings ?? []);
  const root = grown(circuit, complaint, suspects, rows, known.depth ?? DEPTH);
  if (!isNode(root)) return refuse("branches-one");
  const branches = numbered(circuit, complaint, suspects, rows, tries, root);
  const misled = firstMisled(circuit, complaint, branches);
  return misled === null ? ok(branches) : refuse("branches-misled", { suspect: misled });
}

function isNode(node: Node | Living): node is Node {
  return !(node instanceof Uint16Array);
}

/** The tree of rows: the planner's next row for those that live, parted by what they show exactly. */
function grown(
  circuit: Circuit,
  complaint: Observation,
  suspects: readonly Suspect[],
  { columns, conditions, problem, stand }: Rows,
  depth: number,
): Node | Living {
  const tells = tellsOf(problem);
  const choose = planner(problem, tells, distinct(problem));
  const whole = massOf(problem, allLiving(problem));
  const known = new Map<string, Node>();
  const vehicles = [circuit, ...otherVehicles(circuit)];
  const grow = (living: Living, at: Stand, left: number, asked: readonly number[]): Node | Living => {
    const isLight = massOf(problem, living) < LEAST_SHARE * whole;
    if (left === 0 || isLight || isOneRepair(problem, living) || known.size >= MOST_ROWS) return living;
    const key = `${[...living].join()} ${at.open}`;
    const before = known.get(key);
    if (before) return before;
    const choice = choose(living, at);
    // A row that parts them no further, whatever the vehicle, is not asked again.
    if (!choice || asked.includes(choice.probe)) return living;
    const { candidate } = columns[choice.probe]!;
    // What is heard is heard on the way to the last setting.
    const settings = candidate.instrument === "listen" ? candidate.conditions.slice(-1) : candidate.conditions;
    const own = [...living].map((each) => suspects[each]!);
    const shows = settings.map((number) =>
      vehicles.flatMap((vehicle) =>
        shownTo(vehicle, complaint.check.condition, own, probeFor(candidate, conditions[number]!)),
      ),
    );
    const good = settings.map(
      (number) => shownTo(circuit, complaint.check.condition, [HEALTHY], probeFor(candidate, conditions[number]!))[0]!,
    );
    const cut = summedUp(living, cutAmong(living, candidate, shows, good), (each) => massOf(problem, each));
    if (cut.length < 2 || cut.every((each) => each.living.length === living.length)) return living;
    const probe = problem.probes[choice.probe]!;
    const then = after(at, probe);
    const node: Node = {
      column: choice.probe,
      living,
      minutes: minutesFrom(problem, probe, at),
      cut,
      next: cut.map((each) => grow(each.living, then, left - 1, [...asked, choice.probe])),
    };
    known.set(key, node);
    return node;
  };
  return grow(allLiving(problem), stand, depth, []);
}

/** Nothing wrong, as a suspect. */
const HEALTHY: Pick<Suspect, "id" | "faults"> = { id: "", faults: [] };

/** Rows numbered place by place from where the tree begins, verdicts lettered in the order of the rows. */
function numbered(
  circuit: Circuit,
  complaint: Observation,
  suspects: readonly Suspect[],
  rows: Rows,
  tries: Tries,
  root: Node,
): Branches {
  const nodes = inPlaces(rows, root);
  const numbers = new Map(nodes.map((node, index) => [node, index + 1]));
  const leaves = new Leaves(suspects);
  const whole = massOf(rows.problem, root.living);
  const list = nodes.map(({ column, minutes }) => ({ probe: column, minutes, bits: 0 }));
  const steps = stepsOf(circuit, suspects, rows, list, tries);
  const printed = nodes.map((node, index): BranchRow => {
    const lines = node.cut.map(({ word, windows, drawn }, line): BranchLine => {
      const next = node.next[line]!;
      const goes = isNode(next) ? { row: numbers.get(next)! } : { verdict: leaves.letterFor(next) };
      return { word, windows, share: massOf(rows.problem, drawn) / whole, goes };
    });
    return { step: steps[index]!, lines };
  });
  return {
    complaint: complaintWords(complaint),
    before: beforeFirst(circuit, complaint),
    rows: printed,
    verdicts: leaves.verdicts(),
    minutes: nodes.reduce((sum, node) => sum + (node.minutes * massOf(rows.problem, node.living)) / whole, 0),
    suspects,
  };
}

/** Every row of the tree once, those of one place side by side, places in the order they are come to. */
function inPlaces({ columns }: Rows, root: Node): readonly Node[] {
  const nodes = new Set<Node>();
  const walk = (node: Node | Living): void => {
    if (!isNode(node) || nodes.has(node)) return;
    nodes.add(node);
    for (const next of node.next) walk(next);
  };
  walk(root);
  const placeOf = ({ column }: Node): string | null => columns[column]!.candidate.at.access;
  const places = [...new Set([...nodes].map(placeOf))];
  return places.flatMap((place) => [...nodes].filter((node) => placeOf(node) === place));
}

/** Leaves with the same repairs share a letter. */
class Leaves {
  private readonly suspects: readonly Suspect[];
  private readonly own = new Map<string, { readonly letter: string; readonly ids: Set<number> }>();

  constructor(suspects: readonly Suspect[]) {
    this.suspects = suspects;
  }

  letterFor(living: Living): string {
    const key = [...new Set([...living].map((each) => this.suspects[each]!.repairGroup))].sort().join("\n");
    const leaf = this.own.get(key) ?? { letter: letterOf(this.own.size), ids: new Set<number>() };
    this.own.set(key, leaf);
    for (const each of living) leaf.ids.add(each);
    return leaf.letter;
  }

  verdicts(): readonly BranchVerdict[] {
    return [...this.own.values()].map(({ letter, ids }) => {
      const repairs = repairsOf([...ids].sort((one, other) => one - other).map((each) => this.suspects[each]!));
      return { letter, repairs, share: repairs.reduce((sum, { share }) => sum + share, 0) };
    });
  }
}

/** A to Z without I and O, which read as figures; then AA, AB. */
function letterOf(index: number): string {
  const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  const last = letters[index % letters.length]!;
  return index < letters.length ? last : `${letterOf(Math.floor(index / letters.length) - 1)}${last}`;
}
