import type { Minutes, Share } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Possible } from "../../core/diagnose/possible.ts";
import { INSTRUMENTS } from "../../core/diagnose/reading.ts";
import type { Instrument } from "../../core/diagnose/step.ts";
import { HINT_MINUTES } from "../../core/lesson/exercise.ts";
import type { Difficulty, GradedFault } from "../../core/lesson/graded.ts";
import type { Fails } from "./deskQuestion.ts";

/** An exercise as it is being made: everything as it was typed. */
export interface Draft {
  readonly title: string;
  readonly check: string;
  readonly told: string;
  readonly instruments: readonly Instrument[];
  /** Minutes of trim by access group, where they are not the circuit's own. */
  readonly access: Readonly<Record<string, string>>;
  readonly hints: string;
  readonly hintMinutes: string;
  readonly tellsAtOnce: boolean;
  readonly note: string;
}

/** A fault out of the cupboard. */
export interface Taken {
  readonly fault: Possible;
  /** Seed it was drawn by; null where it was chosen by hand. */
  readonly seed: number | null;
  /** The function checks that it makes fail; null while that is not known. */
  readonly fails: readonly Fails[] | null;
}

/** The graded faults behind a complaint, and the wiring that they were graded for. */
export interface GradedCupboard {
  readonly circuit: Circuit;
  readonly faults: readonly GradedFault[];
}

/** What the view of the fault cupboard shows. */
export interface Cupboard {
  /** What the list is narrowed to. */
  readonly typed: string;
  /** The function check whose faults are listed by difficulty; null for all faults by place. */
  readonly behind: string | null;
  readonly graded: GradedCupboard | null;
  /** How far grading is; null while nothing is graded. */
  readonly done: Share | null;
  /** What the program itself got wrong, or null. */
  readonly trouble: string | null;
  readonly difficulty: Difficulty | "any";
  readonly seed: string;
  readonly taken: Taken | null;
  /** Null while no exercise is being made. */
  readonly draft: Draft | null;
  /** True while the file is being sealed. */
  readonly isMaking: boolean;
  /** Why no file was made, in a sentence; null where one was, or none was asked for. */
  readonly refused: string | null;
}

/** The cupboard as it is first opened. */
export const CLOSED_CUPBOARD: Cupboard = {
  typed: "",
  behind: null,
  graded: null,
  done: null,
  trouble: null,
  difficulty: "any",
  seed: "1",
  taken: null,
  draft: null,
  isMaking: false,
  refused: null,
};

/** What can be asked of the cupboard. */
export type CupboardAct =
  | { readonly act: "set"; readonly change: Partial<Omit<Cupboard, "draft">> }
  /** Has the faults behind a complaint graded. */
  | { readonly act: "grade"; readonly check: string }
  | { readonly act: "stop-grading" }
  /** Takes a fault out, chosen or drawn. */
  | { readonly act: "take"; readonly fault: Possible; readonly seed: number | null }
  /** Begins an exercise, changes what was typed of it, or with null leaves it. */
  | { readonly act: "draft"; readonly change: Partial<Draft> | null }
  /** Has the file made. The passphrase is kept nowhere. */
  | { readonly act: "make"; readonly passphrase: string };

/** The cupboard after what was asked of it; what must be worked out is an errand. */
export function reduceCupboard(cupboard: Cupboard, act: CupboardAct, { title }: Pick<Circuit, "title">): Cupboard {
  switch (act.act) {
    case "set":
      return { ...cupboard, ...act.change };
    case "grade":
      return { ...cupboard, behind: act.check, graded: null, done: 0, trouble: null };
    case "stop-grading":
      return { ...cupboard, behind: cupboard.graded ? cupboard.behind : null, done: null };
    case "take":
      return {
        ...cupboard,
        taken: { fault: act.fault, seed: act.seed, fails: null },
        draft: null,
        refused: null,
        trouble: null,
      };
    case "draft": {
      if (act.change === null) return { ...cupboard, draft: null, refused: null };
      return { ...cupboard, draft: { ...(cupboard.draft ?? firstDraft(cupboard, title)), ...act.change } };
    }
    case "make":
      return { ...cupboard, isMaking: true, refused: null };
  }
}

/** An exercise before anything of it was typed. */
function firstDraft({ behind, taken }: Cupboard, title: string): Draft {
  const fails = taken?.fails ?? [];
  return {
    title,
    check: fails.find(({ check }) => check === behind)?.check ?? fails[0]?.check ?? "",
    told: "",
    instruments: INSTRUMENTS,
    access: {},
    hints: "0",
    hintMinutes: String(HINT_MINUTES),
    tellsAtOnce: true,
    note: "",
  };
}

/** Minutes as a sum of money is typed: with a point or a comma. Null where it is no number from 0 to 1,000. */
export function typedMinutes(typed: string): Minutes | null {
  const minutes = Number(typed.trim().replace(",", "."));
  return typed.trim() !== "" && minutes >= 0 && minutes <= 1_000 ? minutes : null;
}
