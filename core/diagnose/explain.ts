import { figure } from "../base/figure.ts";
import type { PartId } from "../base/ids.ts";
import type { Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { pointAt } from "../circuit/points.ts";
import type { Candidate } from "./candidates.ts";
import { type Column, outcomeWord } from "./outcomes.ts";
import type { OutcomeOf, Suspect } from "./step.ts";
import { groupsToOpen } from "./testPoint.ts";

/** What a row's readings would say, likeliest first: suspects that read alike stand together. */
export function outcomesOf(column: Column, suspects: readonly Suspect[]): readonly OutcomeOf[] {
  const byLabel = new Map<string, number[]>();
  suspects.forEach((_, index) => {
    const label = column.labels[index + 1]!;
    byLabel.set(label, [...(byLabel.get(label) ?? []), index + 1]);
  });
  const outcomes = [...byLabel.values()].map((circuits) => {
    const leaves = circuits.map((circuit) => suspects[circuit - 1]!);
    const probability = leaves.reduce((sum, suspect) => sum + suspect.probability, 0);
    return { word: wordOf(column, circuits[0]!), limit: limitOf(column, circuits), probability, leaves, circuits };
  });
  const isTwice = (word: string): boolean => outcomes.filter((outcome) => outcome.word === word).length > 1;
  return outcomes
    .map(({ circuits, ...outcome }) =>
      isTwice(outcome.word) ? { ...outcome, word: `${outcome.word} at ${voltsAt(column, circuits)}` } : outcome,
    )
    .sort((one, other) => other.probability - one.probability);
}

/** Volts that part outcomes of the same name: in the first setting that is not as in the good circuit. */
function voltsAt({ volts, classes }: Column, circuits: readonly number[]): string {
  const setting = Math.max(
    0,
    classes.findIndex((numbers) => numbers[circuits[0]!] !== numbers[0]),
  );
  const reads = circuits.map((circuit) => volts[setting]![circuit]!);
  return `${figure(reads.reduce((sum, read) => sum + read, 0) / reads.length, 1)} V`;
}

/** The word for what one circuit reads: of a sweep, the positions that differ from the good circuit. */
function wordOf({ candidate, volts, classes, labels }: Column, circuit: number): string {
  const words = candidate.conditions.map((_, setting) => {
    const isSame = classes[setting]![circuit] === classes[setting]![0];
    return outcomeWord(volts[setting]![circuit]!, volts[setting]![0]!, isSame);
  });
  if (candidate.sweepOf === null) {
    const lampOf = (index: number): string => labels[index]!.replace(/^\d+/, "");
    const lamp = lampOf(circuit);
    return lamp === "" || lamp === lampOf(0) ? words[0]! : `${words[0]}, lamp ${lamp}`;
  }
  const differing = words.flatMap((word, setting) =>
    word === "right" ? [] : [`${candidate.positions[setting]} ${word}`],
  );
  return differing.length === 0 ? "right" : differing.join(", ");
}

/** Volts between which an outcome lies: half way to the next cluster on either side; empty for a sweep. */
function limitOf({ candidate, volts, classes }: Column, circuits: readonly number[]): string {
  if (candidate.sweepOf !== null) return "";
  const reads = volts[0]!;
  const inside = new Set(circuits.map((circuit) => classes[0]![circuit]!));
  const own = reads.filter((_, circuit) => inside.has(classes[0]![circuit]!));
  const low = Math.min(...own);
  const high = Math.max(...own);
  const below = Math.max(...reads.filter((read) => read < low));
  const above = Math.min(...reads.filter((read) => read > high));
  const half = (one: Volts, other: Volts): string => figure((one + other) / 2, 1);
  if (!Number.isFinite(below) && !Number.isFinite(above)) return "";
  if (!Number.isFinite(below)) return `below ${half(high, above)}`;
  if (!Number.isFinite(above)) return `above ${half(low, below)}`;
  return `${half(low, below)} to ${half(high, above)}`;
}

const OUTCOMES = 2;
const NAMES = 2;

/** Why a row is worth reading: what each of its two likeliest outcomes would leave, in one or two lines. */
export function whyOf(outcomes: readonly OutcomeOf[]): string {
  const shown = outcomes.slice(0, OUTCOMES);
  return shown
    .map(({ word, leaves, probability }) => {
      const names = [...new Set(leaves.map((suspect) => nameIn(shown, suspect)))];
      const more = names.length > NAMES ? ` and ${names.length - NAMES} more` : "";
      return `${capital(word)}: ${names.slice(0, NAMES).join(", ")}${more}, ${Math.round(probability * 100)} %.`;
    })
    .join(" ");
}

/** A suspect by what it sits on; with its mode where the same thing stands in several outcomes. */
function nameIn(shown: readonly OutcomeOf[], { fault }: Suspect): string {
  const holding = shown.filter(({ leaves }) => leaves.some((other) => other.fault.target === fault.target));
  return holding.length > 1 ? `${fault.target} ${modeWords(fault.mode)}` : fault.target;
}

/** A mode in words: "stuck-open-4-6" is "stuck open 4-6", the contact's own dash kept. */
function modeWords(mode: string): string {
  return mode.replace(/(?<=[a-z])-/g, " ");
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}

/**
 * Caution lines of a row: its place's own, and one for whatever it moves, loads or touches. `turning` names the motors
 * that run in each condition tried.
 */
export function cautionsFor(
  circuit: Circuit,
  { at, instrument, conditions }: Candidate,
  turning: readonly (readonly PartId[])[],
): readonly string[] {
  const trim = at.access === null ? [] : groupsToOpen(circuit, at.access).flatMap((group) => group.cautions ?? []);
  const lines = [...at.cautions, ...trim];
  const moved = new Set(conditions.flatMap((index) => turning[index]!));
  if (moved.size > 0) lines.push(`Hands and tools clear of ${[...moved].join(", ")} and all it moves.`);
  if (instrument === "4 A lamp") lines.push("The lamp loads the wire, may move what hangs on it, and gets hot.");
  if (instrument === "0.25 A lamp") lines.push("Small lamp only: the wire is thin.");
  const point = pointAt(circuit, at.point);
  if (point?.kind === "terminal" && point.part.kind === "battery") lines.push("Eye protection at the battery.");
  return [...new Set(lines)];
}
