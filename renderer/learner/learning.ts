import { type Attempt, attemptAfter, begun, verdictOf } from "../../core/lesson/attempt.ts";
import type { Exercise } from "../../core/lesson/exercise.ts";
import type { Recorded } from "../../core/lesson/move.ts";
import type { Told } from "../../core/lesson/vehicle.ts";
import type { Lead } from "../../core/live/attachment.ts";
import type { AttemptRow } from "../../schemas/calls.ts";
import type { Viewport } from "../canvas/viewport.ts";
import type { Thing, Wish } from "../state/thing.ts";

/** Views beside the drawing, in the order of their tabs. */
export const LEARNER_VIEWS = ["work", "done", "verdict"] as const;
export type LearnerView = (typeof LEARNER_VIEWS)[number];

/** A verdict that is being put together. */
export interface Draft {
  /** What is named as faulty, as typed. */
  readonly target: string;
  /** Text of the fault chosen of it; "" while none is. */
  readonly suspect: string;
  /** Numbers of the readings that prove it. */
  readonly proof: readonly number[];
}

/** What the window knows of how the learner looks at the exercise; nothing of it is kept. */
export interface LearnerSight {
  readonly page: string;
  readonly viewports: Readonly<Record<string, Viewport>>;
  readonly chosen: Thing | null;
  readonly hovered: Thing | null;
  readonly wish: Wish | null;
  /** Where the black lead lies. */
  readonly black: Lead;
  readonly view: LearnerView;
  readonly draft: Draft;
}

/** An exercise on the learner's bench. The vehicle is not here: it lives in the worker. */
export interface Learning {
  /** Id of the exercise in the library. */
  readonly id: string;
  readonly attempt: Attempt;
  readonly learner: string;
  readonly sight: LearnerSight;
  /** True while the vehicle is asked. */
  readonly isAsking: boolean;
  /** How many moves of the route the library has. */
  readonly kept: number;
  /** What was told of the verdict. */
  readonly told: Told | null;
}

/** Exercises of the library. */
export interface Attempts {
  readonly rows: readonly AttemptRow[];
  readonly deleted: readonly AttemptRow[];
}

/** Before the library was read. */
export const NO_ATTEMPTS: Attempts = { rows: [], deleted: [] };

const NO_DRAFT: Draft = { target: "", suspect: "", proof: [] };

/** An exercise as it comes to the bench: the page with the load that is complained of in sight. */
export function learningOf(
  id: string,
  exercise: Exercise,
  kept: { readonly route: readonly Recorded[]; readonly learner: string; readonly told: Told | null },
): Learning {
  const attempt = kept.route.reduce(attemptAfter, begun(exercise));
  const { circuit, complaint } = exercise;
  const load = circuit.checks.find((check) => check.id === complaint)?.load ?? "";
  const page = circuit.placement.parts[load]?.page ?? circuit.pages[0]?.id ?? "";
  return {
    id,
    attempt,
    learner: kept.learner,
    sight: {
      page,
      viewports: {},
      chosen: null,
      hovered: null,
      wish: null,
      black: "battery -",
      view: verdictOf(attempt) ? "verdict" : "work",
      draft: NO_DRAFT,
    },
    isAsking: false,
    kept: attempt.route.length,
    told: kept.told,
  };
}
