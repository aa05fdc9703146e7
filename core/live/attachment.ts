import type { PointId } from "../base/ids.ts";
import type { Law } from "../solve/element.ts";

/** Where a lead goes: a point, or one of the reference battery's posts. */
export type Lead = PointId | "battery +" | "battery -";

/** Something clipped on between two places for a test: a meter, a lamp, a jumper. Red is end a. */
export interface Attachment {
  readonly red: Lead;
  readonly black: Lead;
  readonly law: Law;
  /** A meter loads the circuit but never changes a wire's state; a lamp or jumper does. */
  readonly isMeter: boolean;
}
