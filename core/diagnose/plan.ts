import type { Minutes } from "../base/units.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import type { Rig } from "../live/rig.ts";
import { type Candidate, candidatesFor, triesFor } from "./candidates.ts";
import { type Column, columnOf } from "./outcomes.ts";
import { predict, type Shown } from "./predict.ts";
import type { Suspect } from "./step.ts";
import { groupsToOpen, MINUTES, minutesToOpen, testPointsOf } from "./testPoint.ts";
import { bitsLeft } from "./weigh.ts";

/** A row worth less than this many bits is not offered. */
const LEAST_BITS = 0.03;
const MOST_ROWS = 24;

/** A row that was chosen, with what it costs after those before it and what it tells. */
export interface Chosen {
  readonly column: Column;
  readonly minutes: Minutes;
  readonly bits: number;
}

/** What the planner worked from: conditions tried, and what healthy circuit and suspects show in them. */
export interface Plan {
  readonly chosen: readonly Chosen[];
  readonly tries: ReturnType<typeof triesFor>;
}

/**
 * Chooses rows for a complaint (a lamp only where a good circuit lights it) by information about the repair for each further minute: opened trim counts once, and a
 * row is weighed with the rows before it already read. Greedy on marginal cost; stops when no row tells anything more.
 */
export function planFor(
  circuit: Circuit,
  check: FunctionCheck,
  suspects: readonly Suspect[],
  minutes = Number.POSITIVE_INFINITY,
): Plan {
  const tries = triesFor(circuit, check);
  const points = testPointsOf(circuit);
  const all = predictAll(circuit, check, suspects, tries.conditions);
  const columns = candidatesFor(circuit, tries)
    .map((candidate) => columnOf(candidate, points.indexOf(candidate.at), all, circuit.nominalVolts))
    .filter((column) => column.labels.some((label) => label !== column.labels[0]))
    .filter(({ candidate, labels }) => candidate.lampTo === null || labels[0]!.endsWith("bright"));
  return { chosen: choose(circuit, columns, suspects, minutes), tries };
}

function predictAll(
  circuit: Circuit,
  check: FunctionCheck,
  suspects: readonly Suspect[],
  conditions: ReturnType<typeof triesFor>["conditions"],
): readonly (readonly Shown[])[] {
  const points = testPointsOf(circuit);
  let rig: Rig | undefined;
  return [null, ...suspects.map((suspect) => suspect.fault)].map((fault) => {
    const predicted = predict(circuit, fault, check.condition, conditions, points, rig);
    rig = predicted.rig;
    return predicted.shown;
  });
}

function choose(
  circuit: Circuit,
  columns: readonly Column[],
  suspects: readonly Suspect[],
  budget: Minutes,
): readonly Chosen[] {
  const groups = suspects.map((suspect) => suspect.repairGroup);
  const weights = suspects.map((suspect) => suspect.probability);
  const open = new Set<string>();
  let place: string | null | undefined;
  const chosen: Chosen[] = [];
  let labels: readonly string[] = suspects.map(() => "");
  let left = bitsLeft(labels, groups, weights);
  let spent = 0;
  while (chosen.length < MOST_ROWS) {
    let best: (Chosen & { readonly joined: readonly string[]; readonly after: number }) | null = null;
    for (const column of columns) {
      const minutes = minutesOf(circuit, column.candidate, open, place);
      if (spent + minutes > budget) continue;
      const joined = labels.map((label, index) => `${label};${column.labels[index + 1]}`);
      const after = bitsLeft(joined, groups, weights);
      const bits = left - after;
      if (bits >= LEAST_BITS && (!best || bits / minutes > best.bits / best.minutes))
        best = { column, minutes, bits, joined, after };
    }
    if (!best) return chosen;
    chosen.push({ column: best.column, minutes: best.minutes, bits: best.bits });
    labels = best.joined;
    left = best.after;
    spent += best.minutes;
    const { access } = best.column.candidate.at;
    place = access;
    if (access !== null) for (const group of groupsToOpen(circuit, access)) open.add(group.id);
  }
  return chosen;
}

/**
 * Minutes a row adds: the probe, the throws, the lamp, a second person, trim that is still shut, and the way from the place
 * of the row before; undefined for the first.
 */
export function minutesOf(
  circuit: Circuit,
  candidate: Candidate,
  open: ReadonlySet<string>,
  before?: string | null,
): Minutes {
  const lamp = candidate.instrument === "meter volts" ? 0 : MINUTES.lamp;
  const throws = candidate.conditions.length * MINUTES.throwControl;
  const second = candidate.hands === 2 ? MINUTES.secondPerson : 0;
  const way = before === undefined || before === candidate.at.access ? 0 : MINUTES.changePlace;
  return candidate.at.minutes + throws + lamp + second + way + minutesToOpen(circuit, candidate.at.access, open);
}
