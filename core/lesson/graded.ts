import type { Minutes, Share } from "../base/units.ts";
import type { Possible } from "../diagnose/possible.ts";
import type { Failing } from "./cupboard.ts";

/** How hard a fault is to find, against the others that bring the same check to fail. */
export const DIFFICULTIES = ["easy", "medium", "hard"] as const;
/** One of them: a third of the faults each. */
export type Difficulty = (typeof DIFFICULTIES)[number];

/** A fault of the cupboard with what makes it hard. */
export interface GradedFault {
  readonly possible: Possible;
  readonly word: Failing;
  /** Minutes that the planner needs to it. */
  readonly minutes: Minutes;
  /** Share of the points where this complaint can be read at which a meter, the load unplugged, reads as on a good circuit. */
  readonly misleads: Share;
  readonly difficulty: Difficulty;
  /** Whether the instruments can prove it; false where something else reads like it everywhere. */
  readonly canBeProven: boolean;
}
