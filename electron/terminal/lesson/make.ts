import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Minutes } from "../../../core/base/units.ts";
import { EXERCISE_SAYS as SAY } from "../../../core/base/words/exercise.ts";
import type { Circuit, FunctionCheck } from "../../../core/circuit/circuit.ts";
import type { Possible } from "../../../core/diagnose/possible.ts";
import { mayBeProbed } from "../../../core/diagnose/scope.ts";
import type { Instrument } from "../../../core/diagnose/step.ts";
import { groundOf } from "../../../core/lesson/attempt.ts";
import { gradedFaults } from "../../../core/lesson/difficulty.ts";
import { drawnCheck, drawnFrom } from "../../../core/lesson/draw.ts";
import { type ExerciseChoice, exerciseFor, HINT_MINUTES } from "../../../core/lesson/exercise.ts";
import { DIFFICULTIES, type Difficulty } from "../../../core/lesson/graded.ts";
import { alikeTo, suspectFor } from "../../../core/lesson/ground.ts";
import { plantOf } from "../../../core/lesson/plant.ts";
import { formatExercise } from "../../../schemas/exercise.ts";
import { LIMITS } from "../../../schemas/limits.ts";
import { readCircuitFile, writeFileWhole } from "../../files.ts";
import { type Console, EXIT, need } from "../console.ts";
import { checkNamed, instrumentsOf, minutesOf, type PassphraseTyped, passphraseOf, wholeOf } from "./given.ts";

/** What may be typed of a new exercise. */
export interface MakeTyped extends PassphraseTyped {
  readonly out: string;
  readonly complaint?: string;
  readonly fault?: string;
  readonly seed?: string;
  readonly difficulty?: string;
  readonly instruments?: string;
  readonly access?: readonly string[];
  readonly hints?: string;
  readonly hintMinutes?: string;
  readonly title?: string;
  readonly told?: string;
  readonly note?: string;
  readonly tellLater?: boolean;
}

/** `exercise make FILE`: a fault chosen by hand or drawn by seed, sealed into a file for learners. */
export async function make(console: Console, file: string, typed: MakeTyped): Promise<number> {
  const { out, title, told, note = "" } = typed;
  if (!out.toLowerCase().endsWith(".exercise.json")) need(refuse("exercise-ending", { file: out }));
  const circuit = need(mayBeProbed(need(await readCircuitFile(file))));
  const passphrase = (await passphraseOf(typed)) ?? need<string>(refuse("passphrase-missing"));
  for (const words of [title, told, note]) need(shortEnough(words));
  const instruments = instrumentsOf(typed.instruments);
  const { check, fault, seed } = chosen(circuit, typed, instruments);
  const exercise = need(
    exerciseFor(circuit, {
      check,
      fault,
      instruments,
      access: accessOf(typed.access ?? []),
      hints: {
        count: wholeOf("--hints", typed.hints ?? "0"),
        minutes: minutesOf(typed.hintMinutes ?? `${HINT_MINUTES}`),
      },
      tellsAtOnce: typed.tellLater !== true,
      ...(title !== undefined && { title }),
      ...(told !== undefined && { told }),
    }),
  );
  need(await writeFileWhole(out, need(await formatExercise(exercise, { fault: fault.id, seed, note }, passphrase))));
  console.write(
    `${out}: ${exercise.title}\n${check.label}: ${exercise.word}. The fault is sealed; exercise open shows it to whoever has the passphrase.\n`,
  );
  // Of a drawn fault nothing is said: whoever draws it may want to find it.
  if (seed !== null) return EXIT.fine;
  const ground = groundOf(exercise);
  const alike = alikeTo(ground, suspectFor(ground, fault)).map((each) => ground.suspects[each]!.title);
  if (alike.length > 0) console.write(`${SAY.alike(alike)}\n`);
  return EXIT.fine;
}

function shortEnough(words: string | undefined): Outcome<null> {
  const length = words?.length ?? 0;
  return length <= LIMITS.labelLength ? ok(null) : refuse("exercise-words", { most: LIMITS.labelLength, length });
}

function accessOf(typed: readonly string[]): NonNullable<ExerciseChoice["access"]> {
  const entries = typed.map((text): readonly [string, Minutes] => {
    const [, group, minutes] = /^([^=]+)=(.+)$/.exec(text) ?? [];
    return group && minutes ? [group, minutesOf(minutes)] : need(refuse("access-spelling", { text }));
  });
  return Object.fromEntries(entries);
}

interface Chosen {
  readonly check: FunctionCheck;
  readonly fault: Possible;
  readonly seed: number | null;
}

function chosen(circuit: Circuit, typed: MakeTyped, instruments: readonly Instrument[]): Chosen {
  if ((typed.fault === undefined) === (typed.seed === undefined)) return need(refuse("exercise-choice"));
  const checks = circuit.checks.map(({ id }) => id).join(", ");
  if (circuit.checks.length === 0) return need(refuse("order-no-checks"));
  if (typed.fault !== undefined) {
    const check = checkNamed(circuit, typed.complaint ?? need(refuse("order-complaint", { checks })));
    return { check, fault: need(plantOf(circuit, typed.fault)), seed: null };
  }
  const seed = wholeOf("--seed", typed.seed ?? "");
  const check = typed.complaint === undefined ? drawnCheck(circuit, seed) : checkNamed(circuit, typed.complaint);
  const graded = gradedFaults(circuit, check, instruments);
  const drawn =
    drawnFrom(circuit, graded, seed, difficultyOf(typed.difficulty)) ??
    need<{ readonly possible: Possible }>(refuse("exercise-none", { check: check.label }));
  return { check, fault: drawn.possible, seed };
}

function difficultyOf(typed: string | undefined): Difficulty | undefined {
  if (typed === undefined || isDifficulty(typed)) return typed;
  return need(refuse("print-choice", { option: "--difficulty", choices: DIFFICULTIES.join(", "), value: typed }));
}

function isDifficulty(typed: string): typed is Difficulty {
  return (DIFFICULTIES as readonly string[]).includes(typed);
}
