import { PRACTICE, published, type Source } from "./source.ts";

/** What was touched that may have to be learnt anew. */
export type Touched = "moving" | "wiper" | "battery" | "charging" | "module";

/** Something that a vehicle may have to learn anew after work, in one sentence, and who says so. */
export interface Relearnt {
  readonly after: Touched;
  readonly what: string;
  readonly source: Source;
}

/** General practice only: the vehicle maker's procedure comes first and may ask for more, or for nothing. */
export const RELEARNT: readonly Relearnt[] = [
  {
    after: "moving",
    what: "Where end stops are learnt: teach them anew, fully both ways, as the maker says.",
    source: PRACTICE,
  },
  {
    after: "moving",
    what: "Where it closes by itself: prove that pinch protection reverses, with a soft test piece, never a hand.",
    source: published("NHTSA interpretation 10790 on FMVSS 118, S.5: closing must reverse before 100 N"),
  },
  { after: "wiper", what: "Let it park once before the arms go on, and look where it stops.", source: PRACTICE },
  {
    after: "battery",
    what: "Where the battery was off: clock, radio code, one-touch windows and sunroof, steering angle.",
    source: PRACTICE,
  },
  {
    after: "battery",
    what: "Where the battery was off: read and clear the faults that this has stored.",
    source: PRACTICE,
  },
  {
    after: "charging",
    what: "A new battery or alternator: register it where a battery monitor is fitted.",
    source: PRACTICE,
  },
  {
    after: "module",
    what: "A new control unit: code it, and teach it keys, sensors and end stops before it goes out.",
    source: PRACTICE,
  },
];
