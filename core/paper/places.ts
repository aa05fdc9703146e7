import type { Minutes } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { AccessGroup, Circuit } from "../circuit/circuit.ts";
import { parsePoint } from "../circuit/points.ts";
import type { ProbeOrder, Step } from "../diagnose/step.ts";
import { groupsToOpen } from "../diagnose/testPoint.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import { placedLead } from "./leads.ts";
import { listed } from "./listed.ts";

/** Things named on the bar of a place. */
const MOST_THINGS = 3;

/** Rows that follow each other behind one piece of trim. */
export interface PlaceRun {
  readonly letter: string;
  readonly name: string;
  /** Trim that comes off here, in order; empty where the place lies free or is open already. */
  readonly opens: readonly AccessGroup[];
  readonly group: AccessGroup | null;
  readonly minutes: Minutes;
  /** True where an earlier run was at this place. */
  readonly isAgain: boolean;
  readonly steps: readonly Step[];
}

/** The places of an order, in the order of its rows; each letter and its minutes come once. */
export function placesOf(circuit: Circuit, order: ProbeOrder): readonly PlaceRun[] {
  const letters = new Map<string | null, string>();
  const open = new Set(order.beforehand);
  return runsOf(order.steps).map((steps) => {
    const access = steps[0]!.access;
    const isAgain = letters.has(access);
    if (!isAgain) letters.set(access, letterOf(letters.size));
    const groups = access === null ? [] : groupsToOpen(circuit, access);
    const opens = groups.filter(({ id }) => !open.has(id));
    for (const { id } of opens) open.add(id);
    return {
      letter: letters.get(access)!,
      name: nameOf(
        circuit,
        order.steps.filter((step) => step.access === access),
      ),
      opens,
      group: groups.at(-1) ?? null,
      minutes: opens.reduce((sum, group) => sum + group.minutes, 0),
      isAgain,
      steps,
    };
  });
}

function runsOf(steps: readonly Step[]): readonly (readonly Step[])[] {
  const runs: Step[][] = [];
  for (const step of steps) {
    const last = runs.at(-1);
    if (last && last[0]!.access === step.access) last.push(step);
    else runs.push([step]);
  }
  return runs;
}

/** A to Z, then AA, AB and so on. */
function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letterOf(Math.floor(index / 26) - 1)}${last}`;
}

/** What stands at a place: "Middle vent switch S5, plug X5". */
function nameOf(circuit: Circuit, steps: readonly Step[]): string {
  return listed([...new Set(steps.map((step) => thingAt(circuit, step)))], "; ", MOST_THINGS);
}

function thingAt(circuit: Circuit, step: Step): string {
  const point = placedLead(step);
  const parsed = parsePoint(circuit, point);
  if (!parsed.ok) return point;
  if (parsed.value.kind === "terminal") return partName(parsed.value.part);
  const { connector } = parsed.value;
  const carried = Object.values(connector.cavities ?? {})[0];
  const of = carried === undefined ? null : parsePoint(circuit, carried);
  if (!of?.ok || of.value.kind !== "terminal") return `${connector.label ?? ""} ${connector.id}`.trim();
  return `${partName(of.value.part)}, ${WORDS.plug(connector.id)}`;
}

/** A part in words: its label, or what it is, and its designator. */
export function partName(part: Part): string {
  return `${part.label ?? kindOf(part.kind)?.title ?? ""} ${part.id}`.trim();
}
