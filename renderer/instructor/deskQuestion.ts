import type { Outcome } from "../../core/base/outcome.ts";
import type { Minutes, Share } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Instrument } from "../../core/diagnose/step.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import type { Failing } from "../../core/lesson/cupboard.ts";
import type { ExerciseChoice, Hidden } from "../../core/lesson/exercise.ts";
import type { GradedFault } from "../../core/lesson/graded.ts";
import type { Marked } from "../../core/lesson/gradeTable.ts";
import type { RouteStep } from "../../core/lesson/routeStep.ts";
import type { Look } from "../../core/parts/kind.ts";

/** A function check by its id, and how it fails. */
export interface Fails {
  readonly check: string;
  readonly word: Failing;
}

/** What an exercise is made of, its fault and check by their names. */
export interface MakeWanted {
  readonly check: string;
  readonly fault: string;
  readonly choice: Omit<ExerciseChoice, "check" | "fault">;
  readonly hidden: Omit<Hidden, "fault">;
  readonly passphrase: string;
}

/** What the instructor's worker is asked. */
export type DeskQuestion =
  | {
      readonly ask: "grade";
      readonly circuit: Circuit;
      readonly check: string;
      readonly instruments: readonly Instrument[];
    }
  | { readonly ask: "fails"; readonly circuit: Circuit; readonly fault: string }
  | { readonly ask: "make"; readonly circuit: Circuit; readonly wanted: MakeWanted }
  | { readonly ask: "open"; readonly text: string; readonly passphrase: string }
  | { readonly ask: "mark"; readonly name: string; readonly text: string }
  | {
      readonly ask: "picture";
      /** Id of a hand-in that was marked. */
      readonly handin: string;
      /** Number of the move, from 1; 0 before the first. */
      readonly step: number;
      readonly page: string;
      readonly palette: Palette;
      readonly look: Look;
    }
  /** Shuts an exercise again. */
  | { readonly ask: "shut"; readonly id: string };

/** An exercise as a file, and who cannot be told from its fault by what it allows. */
export interface ExerciseMade {
  readonly text: string;
  readonly alike: readonly string[];
}

/** What the instructor sees of an exercise that was opened. */
export interface ExerciseSeen {
  readonly id: string;
  readonly title: string;
  /** The complaint in words. */
  readonly complaint: string;
  /** What is hidden, in words. */
  readonly fault: string;
  readonly seed: number | null;
  readonly note: string;
  /** What the planner needs to it, and its rows; null where no suspect stands for it. */
  readonly minutes: Minutes | null;
  readonly way: readonly string[];
}

/** A hand-in that was graded, or why not, with all that a replay shows in words. */
export interface HandinMarked extends Marked {
  readonly id: string | null;
  readonly steps: readonly RouteStep[];
  /** Pages of its circuit, and for each step the page on which it is seen; none where the route is not known. */
  readonly pages: readonly { readonly id: string; readonly title: string }[];
  readonly pageOf: readonly string[];
}

/** The answer to each question. */
export interface DeskAnswers {
  readonly grade: readonly GradedFault[];
  readonly fails: readonly Fails[];
  readonly make: Outcome<ExerciseMade>;
  readonly open: Outcome<ExerciseSeen>;
  readonly mark: HandinMarked;
  /** The page as SVG text. */
  readonly picture: string;
  readonly shut: null;
}

/** A question on its way to the worker. */
export interface DeskAsked {
  readonly number: number;
  readonly question: DeskQuestion;
}

/** What comes back: how far it is, the answer, or the program's own error. */
export type DeskSaid =
  | { readonly number: number; readonly done: Share }
  | { readonly number: number; readonly answer: DeskAnswers[DeskQuestion["ask"]] }
  | { readonly number: number; readonly trouble: string };
