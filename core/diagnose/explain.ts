import { capital } from "../base/capital.ts";
import type { PartId } from "../base/ids.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt, pointAt } from "../circuit/points.ts";
import type { Candidate } from "./candidates.ts";
import { figureText, limitText } from "./figureText.ts";
import { type Column, outcomeWord } from "./outcomes.ts";
import { isBySense, type OutcomeOf, type Suspect, type Window } from "./step.ts";
import { groupsToOpen } from "./testPoint.ts";
import { clusterOf, windowOf } from "./windows.ts";

/** What a row's readings would say, likeliest first: suspects that read alike stand together. */
export function outcomesOf(column: Column, suspects: readonly Suspect[]): readonly OutcomeOf[] {
  const byLabel = new Map<number, number[]>();
  suspects.forEach((_, index) => {
    const label = column.labels[index + 1]!;
    const others = byLabel.get(label);
    if (others) others.push(index + 1);
    else byLabel.set(label, [index + 1]);
  });
  const outcomes = [...byLabel.values()].map((circuits) => {
    const leaves = circuits.map((circuit) => suspects[circuit - 1]!);
    const probability = leaves.reduce((sum, suspect) => sum + suspect.probability, 0);
    const windows = windowsOf(column, circuits);
    return {
      word: wordOf(column, circuits[0]!),
      limit: limitOf(column, windows),
      probability,
      leaves,
      windows,
      circuits,
    };
  });
  const isTwice = (word: string): boolean => outcomes.filter((outcome) => outcome.word === word).length > 1;
  return outcomes
    .map(({ circuits, ...outcome }) =>
      isTwice(outcome.word) ? { ...outcome, word: withFigure(outcome.word, figureAt(column, circuits)) } : outcome,
    )
    .sort((one, other) => other.probability - one.probability);
}

/** The figure stands with what it was read in: a sweep names the settings that differ, the first of them first. */
function withFigure(word: string, figure: string): string {
  const [first, ...rest] = word.split(", ");
  return [`${first} at ${figure}`, ...rest].join(", ");
}

/** The figure that parts outcomes of the same name: in the first setting that is not as in the good circuit. */
function figureAt({ figures, classes, candidate }: Column, circuits: readonly number[]): string {
  const setting = Math.max(
    0,
    classes.findIndex((numbers) => numbers[circuits[0]!] !== numbers[0]),
  );
  const reads = circuits.map((circuit) => figures[setting]![circuit]!);
  const mean = reads.reduce((sum, read) => sum + read, 0) / reads.length;
  return figureText(mean, candidate);
}

/** The word for what one circuit reads: of a sweep, the positions that differ from the good circuit. */
function wordOf({ candidate, figures, classes, words }: Column, circuit: number): string {
  if (isBySense(candidate.instrument)) return words.at(-1)![circuit]!;
  if (candidate.lampTo === "black") return `lamp ${words[0]![circuit]}`;
  const named = candidate.conditions.map((_, setting) => {
    const isSame = classes[setting]![circuit] === classes[setting]![0];
    return outcomeWord(figures[setting]![circuit]!, figures[setting]![0]!, isSame, candidate.fineness);
  });
  if (candidate.sweepOf === null) {
    const lamp = words[0]![circuit]!;
    return lamp === "" || lamp === words[0]![0] ? named[0]! : `${named[0]}, lamp ${lamp}`;
  }
  const differing = named.flatMap((word, setting) =>
    word === "right" ? [] : [`${candidate.positions[setting]} ${word}`],
  );
  return differing.length === 0 ? "right" : differing.join(", ");
}

/** Between what a reading lies for an outcome, by setting: half way to the next cluster of any suspect on either side. */
function windowsOf({ figures, classes, words }: Column, circuits: readonly number[]): readonly Window[] {
  const [one] = circuits as [number];
  return figures.map((reads, setting) => {
    const own = classes[setting]!;
    return windowOf(clusterOf(reads, own, own[one]!), words[setting]![one]!, (low, high) => (low + high) / 2);
  });
}

/** The limits in words; empty for a sweep and where nothing is measured. */
function limitOf({ candidate }: Column, windows: readonly Window[]): string {
  if (candidate.sweepOf !== null || isBySense(candidate.instrument)) return "";
  return limitText(windows[0]!, candidate);
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
function nameIn(shown: readonly OutcomeOf[], suspect: Suspect): string {
  const [fault, ...others] = suspect.faults;
  if (!fault || others.length > 0) return suspectName(suspect);
  const holding = shown.filter(({ leaves }) => leaves.some(({ faults }) => faults[0]?.target === fault.target));
  return holding.length > 1 ? `${fault.target} ${modeWords(fault.mode)}` : suspectName(suspect);
}

/** What a suspect sits on; of several faults with one cause its title. */
export function suspectName({ faults, title }: Pick<Suspect, "faults" | "title">): string {
  return faults.length === 1 ? faults[0]!.target : title;
}

/** A mode in words: "stuck-open-4-6" is "stuck open 4-6", the contact's own dash kept. */
function modeWords(mode: string): string {
  return mode.replace(/(?<=[a-z])-/g, " ");
}

/**
 * Caution lines of a row: its place's own, and one for whatever it moves, loads or touches. `turning` names the motors
 * that run in each condition tried.
 */
export function cautionsFor(
  circuit: Circuit,
  { at, alsoOpen, instrument, lampTo, conditions }: Candidate,
  turning: readonly (readonly PartId[])[],
): readonly string[] {
  const trim = [at.access, alsoOpen].flatMap((access) =>
    access === null ? [] : groupsToOpen(circuit, access).flatMap((group) => group.cautions ?? []),
  );
  const lines = [...at.cautions, ...trim];
  const moved = new Set(conditions.flatMap((index) => turning[index]!));
  if (moved.size > 0) lines.push(`Hands and tools clear of ${[...moved].join(", ")} and all it moves.`);
  if (instrument === "fed direct" || instrument === "fed loose") lines.push(...fedCautions(circuit, at.point));
  if (lampTo === "black") lines.push("The lamp in place of the fuse may move what hangs on it, and gets hot.");
  else if (instrument === "4 A lamp") lines.push("The lamp loads the wire, may move what hangs on it, and gets hot.");
  else if (instrument === "0.25 A lamp") lines.push("Small lamp only: the wire is thin.");
  if (instrument === "meter ohms")
    lines.push("Ohms only while the plug is apart and nothing is fed: volts harm the meter.");
  const point = pointAt(circuit, at.point);
  if (point?.kind === "terminal" && point.part.kind === "battery") lines.push("Eye protection at the battery.");
  return [...new Set(lines)];
}

/** What feeding a load past its switches and modules asks for. */
function fedCautions(circuit: Circuit, load: string): readonly string[] {
  const moves = partAt(circuit, load)?.kind === "motor";
  const minded = moves ? [`Fed direct, ${load} minds no end stop and no pinch protection: hands and tools clear.`] : [];
  return [...minded, "Jumper with a fuse no larger than the branch's own, and only for a moment."];
}
