import type { Exercise } from "../../core/lesson/exercise.ts";
import type { Move, Recorded } from "../../core/lesson/move.ts";
import type { Told } from "../../core/lesson/vehicle.ts";
import type { KeptAttempt } from "../../schemas/calls.ts";
import type { Attempts, LearnerSight } from "./learning.ts";

/** What the learner's actions are called, to tell them from all others. */
export const LEARNER_ACTIONS: Readonly<Record<LearnerAction["do"], true>> = {
  "open-exercise": true,
  "open-attempt": true,
  "restart-attempt": true,
  "remove-attempt": true,
  "restore-attempt": true,
  "make-moves": true,
  "name-learner": true,
  "save-handin": true,
  "learner-sees": true,
  "attempts-listed": true,
  "attempt-opened": true,
  "move-made": true,
  "moves-ended": true,
  "attempt-kept": true,
};

/** Everything that can be asked about exercises that a learner works on. */
export type LearnerAction =
  /** The text of an exercise's file. */
  | { readonly do: "open-exercise"; readonly name: string; readonly text: string }
  | { readonly do: "open-attempt" | "restart-attempt" | "remove-attempt" | "restore-attempt"; readonly id: string }
  /** Makes moves one after the other, up to the first that cannot be made. */
  | { readonly do: "make-moves"; readonly moves: readonly Move[] }
  /** Who hands in. */
  | { readonly do: "name-learner"; readonly learner: string }
  | { readonly do: "save-handin" }
  | { readonly do: "learner-sees"; readonly sees: Partial<LearnerSight> }
  /** What came back; only errands dispatch these. */
  | { readonly do: "attempts-listed"; readonly attempts: Attempts }
  | {
      readonly do: "attempt-opened";
      readonly kept: KeptAttempt;
      readonly exercise: Exercise;
      readonly told: Told | null;
    }
  | { readonly do: "move-made"; readonly recorded: Recorded; readonly told: Told | null }
  | { readonly do: "moves-ended" }
  /** So many moves of this exercise are in the library. */
  | { readonly do: "attempt-kept"; readonly id: string; readonly moves: number };
