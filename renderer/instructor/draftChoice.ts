import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Minutes } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { LEAST_PASSPHRASE } from "../../schemas/seal.ts";
import { type Draft, type Taken, typedMinutes } from "./cupboard.ts";
import type { MakeWanted } from "./deskQuestion.ts";

/** Most hints that an exercise allows. */
const MOST_HINTS = 100;

/**
 * What is to be made of what was typed. Refuses `exercise-words`, `exercise-instruments`, `whole-number`, `minutes-number`; the
 * first that is wrong is named.
 */
export function makeWanted(
  circuit: Circuit,
  draft: Draft,
  { fault, seed }: Taken,
  passphrase: string,
): Outcome<MakeWanted> {
  const { title, told, note, check, instruments, tellsAtOnce } = draft;
  for (const words of [title, told, note])
    if (words.length > LIMITS.labelLength)
      return refuse("exercise-words", { most: LIMITS.labelLength, length: words.length });
  if (instruments.length === 0) return refuse("exercise-instruments");
  const count = Number(draft.hints);
  if (!/^\d+$/.test(draft.hints.trim()) || count > MOST_HINTS)
    return refuse("whole-number", { option: "Hints allowed", typed: draft.hints || "nothing" });
  const minutes = typedMinutes(draft.hintMinutes);
  if (minutes === null) return refuse("minutes-number", { text: draft.hintMinutes || "nothing" });
  const access: Record<string, Minutes> = {};
  for (const { id } of circuit.access) {
    const typed = draft.access[id] ?? "";
    const own = typed.trim() === "" ? undefined : typedMinutes(typed);
    if (own === null) return refuse("minutes-number", { text: typed });
    if (own !== undefined) access[id] = own;
  }
  return ok({
    check,
    fault: fault.id,
    choice: {
      title: title.trim() || circuit.title,
      told: told.trim(),
      instruments,
      access,
      hints: { count, minutes },
      tellsAtOnce,
    },
    hidden: { seed, note: note.trim() },
    passphrase,
  });
}

/** Whether a passphrase that was typed twice may be taken. Refuses `passphrase-short`, `passphrase-twice`. */
export function passphraseTyped(first: string, second: string): Outcome<string> {
  if ([...first].length < LEAST_PASSPHRASE) return refuse("passphrase-short", { least: LEAST_PASSPHRASE });
  return first === second ? ok(first) : refuse("passphrase-twice");
}
