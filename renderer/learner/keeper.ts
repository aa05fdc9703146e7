import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { type Attempt, attemptAfter, begun, recordedMove, toldOf } from "../../core/lesson/attempt.ts";
import type { Move, Recorded } from "../../core/lesson/move.ts";
import type { Told } from "../../core/lesson/vehicle.ts";
import { type Opened, openForLearner, readExercise } from "../../schemas/exercise.ts";
import { formatHandin } from "../../schemas/handin.ts";

/** What is asked of whoever keeps the vehicle of an exercise. */
export type VehicleQuestion =
  /** Whether an exercise's file can be opened at all. */
  | { readonly ask: "try"; readonly text: string }
  /** Opens an exercise's file and goes on behind the moves that were made on it before. */
  | { readonly ask: "open"; readonly text: string; readonly route: readonly Recorded[] }
  /** Makes a move on the exercise of this id, which was opened before. */
  | { readonly ask: "move"; readonly id: string; readonly move: Move; readonly time: string | null }
  /** The text of the hand-in of all moves made by now. */
  | { readonly ask: "hand-in"; readonly id: string; readonly learner: string };

/** What comes back: never the fault or its place, unless a verdict is filed and the exercise tells it then. */
export interface VehicleAnswers {
  readonly try: { readonly id: string };
  readonly open: { readonly id: string; readonly told: Told | null };
  readonly move: { readonly recorded: Recorded; readonly told: Told | null };
  readonly "hand-in": { readonly text: string };
}

/** Answers to questions of one kind. */
export type VehicleAnswer<Ask extends VehicleQuestion["ask"] = VehicleQuestion["ask"]> = VehicleAnswers[Ask];

/** An exercise that is opened, with how far the learner is. */
interface Kept {
  readonly opened: Opened;
  readonly attempt: Attempt;
}

/**
 * Keeps the vehicles of exercises, each with its fault in a closure, and answers. It knows no page: it runs in a worker, or wherever
 * else nothing but this asks it. Refuses as reading, opening and moving do, `attempt-damaged` where the moves are none on this
 * exercise, and `attempt-unknown` for one that was not opened.
 */
export function vehicleKeeper(): (question: VehicleQuestion) => Promise<Outcome<VehicleAnswer>> {
  const all = new Map<string, Kept>();
  return async (question) => {
    if (question.ask === "try" || question.ask === "open") {
      const opened = await openedFrom(question.text);
      if (!opened.ok) return opened;
      const { id, exercise, vehicle } = opened.value;
      if (question.ask === "try") return ok({ id });
      const attempt = wentOn(begun(exercise), question.route);
      if (!attempt) return refuse("attempt-damaged");
      all.set(id, { opened: opened.value, attempt });
      return ok({ id, told: toldOf(attempt, vehicle) });
    }
    const kept = all.get(question.id);
    if (!kept) return refuse("attempt-unknown");
    const { opened, attempt } = kept;
    if (question.ask === "hand-in") return ok({ text: await formatHandin(question.learner, opened, attempt.route) });
    const recorded = recordedMove(attempt, opened.vehicle, question.move, question.time);
    if (!recorded.ok) return recorded;
    const after = attemptAfter(attempt, recorded.value);
    all.set(question.id, { opened, attempt: after });
    return ok({ recorded: recorded.value, told: toldOf(after, opened.vehicle) });
  };
}

async function openedFrom(text: string): Promise<Outcome<Opened>> {
  const file = readExercise(text);
  return file.ok ? openForLearner(file.value) : file;
}

/** The attempt behind moves that were made before; null where they cannot have been made on it. */
function wentOn(attempt: Attempt, route: readonly Recorded[]): Attempt | null {
  try {
    return route.reduce(attemptAfter, attempt);
  } catch {
    return null;
  }
}
