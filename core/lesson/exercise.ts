import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Minutes } from "../base/units.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import type { Possible } from "../diagnose/possible.ts";
import { INSTRUMENTS } from "../diagnose/reading.ts";
import { mayBeProbed } from "../diagnose/scope.ts";
import { complaintOf } from "../diagnose/seen.ts";
import type { Instrument } from "../diagnose/step.ts";
import type { Observation } from "../diagnose/suspects.ts";
import { type Failing, verdictWith } from "./cupboard.ts";
import { travelling } from "./travelling.ts";

/** What hints an exercise allows, and what each costs. */
export interface HintsAllowed {
  readonly count: number;
  readonly minutes: Minutes;
}

/** What a learner may know of an exercise: the circuit, what is complained of, and the rules. Nothing here tells the fault. */
export interface Exercise {
  readonly title: string;
  /** As it travels: without pictures, and with the minutes that trim takes in this exercise. */
  readonly circuit: Circuit;
  /** Id of the function check that fails, and how it fails. */
  readonly complaint: string;
  readonly word: Failing;
  /** The complaint in the words of whoever brings it; "" where nothing is added. */
  readonly told: string;
  readonly instruments: readonly Instrument[];
  readonly hints: HintsAllowed;
  /** Whether the learner is told at once if the verdict is right. */
  readonly tellsAtOnce: boolean;
}

/** What only the instructor may see: the fault, and how it came to be chosen. */
export interface Hidden {
  /** Text of the fault, as `plantOf` reads it. */
  readonly fault: string;
  /** Seed it was drawn by; null where it was chosen by hand. */
  readonly seed: number | null;
  readonly note: string;
}

/** What an instructor sets of an exercise. */
export interface ExerciseChoice {
  readonly check: FunctionCheck;
  readonly fault: Possible;
  readonly title?: string;
  readonly told?: string;
  readonly instruments?: readonly Instrument[];
  /** Minutes of access groups where they are not the circuit's own. */
  readonly access?: Readonly<Record<string, Minutes>>;
  readonly hints?: HintsAllowed;
  readonly tellsAtOnce?: boolean;
}

/** Minutes of a hint where nobody says (a guess: a look at the book). */
export const HINT_MINUTES: Minutes = 5;

/**
 * An exercise with this fault in it. Refuses `exercise-works` where the check works in spite of the fault, `exercise-access` for
 * an access group that the circuit does not have, `exercise-instruments` without any, and as `mayBeProbed`.
 */
export function exerciseFor(circuit: Circuit, choice: ExerciseChoice): Outcome<Exercise> {
  const probed = mayBeProbed(circuit);
  if (!probed.ok) return probed;
  const { check, fault, access = {}, instruments = INSTRUMENTS } = choice;
  if (instruments.length === 0) return refuse("exercise-instruments");
  const word = verdictWith(circuit, check, fault.faults);
  if (word === "works") return refuse("exercise-works", { fault: fault.id, check: check.label });
  const stray = Object.keys(access).find((id) => !circuit.access.some((group) => group.id === id));
  if (stray !== undefined)
    return refuse("exercise-access", { group: stray, groups: circuit.access.map(({ id }) => id).join(", ") || "none" });
  return ok({
    title: choice.title ?? circuit.title,
    circuit: travelling(circuit, access),
    complaint: check.id,
    word,
    told: choice.told ?? "",
    instruments: INSTRUMENTS.filter((each) => instruments.includes(each)),
    hints: choice.hints ?? { count: 0, minutes: HINT_MINUTES },
    tellsAtOnce: choice.tellsAtOnce ?? true,
  });
}

/** What an exercise complains of. The check must be there, as it is once the file was read. */
export function complaintIn({ circuit, complaint, word }: Exercise): Observation {
  const check = circuit.checks.find(({ id }) => id === complaint)!;
  return complaintOf(circuit, check, word);
}
