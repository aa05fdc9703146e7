import type { PointId } from "../base/ids.ts";
import type { Part } from "../parts/kind.ts";
import type { Law } from "../solve/element.ts";

/** Where a lead goes: a point, or one of the reference battery's posts. */
export type Lead = PointId | "battery +" | "battery -";

/** Something clipped on between two places for a test: a meter, a lamp, a jumper. Red is end a. */
export type Attachment = ClippedLaw | ClippedPart;

/** A load by its law alone. */
interface ClippedLaw {
  readonly red: Lead;
  readonly black: Lead;
  readonly law: Law;
  /** What a path through it calls it, "the test lamp"; absent where no path is told. */
  readonly name?: string;
  /** A meter loads the circuit but never changes a wire's state; a lamp does. */
  readonly isMeter: boolean;
}

/** A part of two terminals with a state of its own, as a jumper has by its fuse: red is on the first terminal. */
interface ClippedPart {
  readonly red: Lead;
  readonly black: Lead;
  readonly part: Part;
}
