import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import { INSTRUMENT_NAMES } from "../../../core/base/words/exercise.ts";
import type { Circuit, FunctionCheck } from "../../../core/circuit/circuit.ts";
import { INSTRUMENTS } from "../../../core/diagnose/reading.ts";
import type { Instrument } from "../../../core/diagnose/step.ts";
import { type ExerciseFile, readExercise } from "../../../schemas/exercise.ts";
import { readBytes } from "../../files.ts";
import { need } from "../console.ts";

/** A passphrase as typed. */
export interface PassphraseTyped {
  readonly passphrase?: string;
  readonly passphraseFile?: string;
}

/** The passphrase that was typed, or that stands in a file without the line's end; undefined where none was given. */
export async function passphraseOf({ passphrase, passphraseFile }: PassphraseTyped): Promise<string | undefined> {
  if (passphrase !== undefined || passphraseFile === undefined) return passphrase;
  return new TextDecoder().decode(need(await readBytes(passphraseFile))).replace(/\r?\n$/, "");
}

/** The exercise in a file. */
export async function exerciseIn(path: string): Promise<ExerciseFile> {
  return need(readExercise(need(await readBytes(path))));
}

/** The function check typed after --complaint. */
export function checkNamed({ checks }: Circuit, id: string): FunctionCheck {
  const check = checks.find((each) => each.id === id);
  return check ?? need(refuse("check-unknown", { check: id, checks: checks.map((each) => each.id).join(", ") }));
}

/** Instruments as typed with commas, by their own names or those of the moves; all where nothing was typed. */
export function instrumentsOf(typed: string | undefined): readonly Instrument[] {
  if (typed === undefined) return INSTRUMENTS;
  return typed.split(",").map((each) => need(instrumentOf(each.trim())));
}

function instrumentOf(typed: string): Outcome<Instrument> {
  const found = INSTRUMENTS.find((each) => each === typed || INSTRUMENT_NAMES[each] === typed);
  return found ? ok(found) : refuse("instrument-unknown", { typed, known: INSTRUMENTS.join(", ") });
}

/** A whole number from 0 on as typed after an option. */
export function wholeOf(option: string, typed: string): number {
  return /^\d{1,9}$/.test(typed) ? Number(typed) : need(refuse("whole-number", { option, typed }));
}

/** Minutes as typed after an option. */
export function minutesOf(typed: string): number {
  const minutes = Number(typed);
  return typed.trim() !== "" && minutes >= 0 && minutes <= 1_000
    ? minutes
    : need(refuse("minutes-number", { text: typed }));
}
