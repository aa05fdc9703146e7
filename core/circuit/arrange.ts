import type { PartId, WireId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Side } from "../parts/kind.ts";
import type { Turned } from "./arrangeTurn.ts";
import type { PartPlace } from "./circuit.ts";

/** A terminal of a part that is laid out: where it lies in the part's outline, and the side where its wires leave. */
export interface ArrangePort {
  readonly id: string;
  readonly x: GridUnits;
  readonly y: GridUnits;
  readonly side: Side;
}

/** A part in one turn: the size of its turned outline, and its wired terminals. */
export interface ArrangePose extends Turned {
  readonly width: GridUnits;
  readonly height: GridUnits;
  readonly ports: readonly ArrangePort[];
  /** Straight ways across it for wires that do not end on it, as `waysAcross` gives them; mostly none. */
  readonly across: readonly Bounds[];
}

/** A part that is laid out. */
export interface ArrangeNode {
  readonly id: PartId;
  /** Where it stands now. */
  readonly place: PartPlace;
  /** The turns it may have, the best for feeds above and grounds below first. */
  readonly poses: readonly [ArrangePose, ...ArrangePose[]];
  readonly isFixed: boolean;
}

/** A wire between terminals of two laid-out parts, from the part nearer to the feed to the one nearer to ground. */
export interface ArrangeEdge {
  readonly id: WireId;
  readonly from: string;
  readonly to: string;
  readonly nodes: readonly [PartId, PartId];
}

/** What a layout is asked for, as plain data: it knows nothing of the program that answers it. */
export interface ArrangeQuestion {
  readonly page: string;
  readonly nodes: readonly ArrangeNode[];
  readonly edges: readonly ArrangeEdge[];
}

/** The top left of each part that was laid out in its first pose, anywhere on a plane; down is towards ground. */
export type ArrangeAnswer = Readonly<Record<PartId, { readonly x: number; readonly y: number }>>;

/** Places by part, of those that move. */
export type Places = ReadonlyMap<PartId, PartPlace>;
