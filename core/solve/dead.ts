import type { Ohms } from "../base/units.ts";
import { type Companion, voltsOver } from "./companion.ts";
import { copyFactor, emptyFactor, type Factor, growFactor, refactor, touch } from "./factor.ts";
import { inverseDiagonal } from "./inverse.ts";
import { GROUNDED, islandsOf } from "./islands.ts";
import { chordAt } from "./laws.ts";
import type { Pattern } from "./pattern.ts";
import { solveTriangles } from "./triangles.ts";

/** Chords that are apart by no more than this share are the same: volts found twice differ in their last digits. */
const SAME_SIEMENS = 1e-12;

/** A network with its sources dead and each element at its volts over amps, and what is known of it. n unknowns, m edges, E elements. */
export class DeadNetwork {
  private readonly pattern: Pattern;
  /** Siemens of each element, and their factor. Size E. */
  readonly siemens: Float64Array;
  readonly factor: Factor;
  private islands: Int32Array | null = null;
  private readonly roomForIslands: Int32Array;
  private readonly diagonal: Float64Array;
  private readonly off: Float64Array;
  /** Whether islands and diagonal are those of the factor. */
  private hasIslands = false;
  private hasDiagonal = false;

  constructor(pattern: Pattern) {
    const { unknowns, edges, placeOf } = pattern;
    this.pattern = pattern;
    this.siemens = new Float64Array(placeOf.length);
    this.factor = emptyFactor(pattern);
    this.roomForIslands = new Int32Array(unknowns);
    this.diagonal = new Float64Array(unknowns);
    this.off = new Float64Array(edges);
  }

  /** Makes it what another is, of this pattern or of one that this was extended from. */
  copy({ siemens, factor }: Pick<DeadNetwork, "siemens" | "factor">, isOfThisShape: boolean): void {
    if (isOfThisShape) copyFactor(factor, this.factor);
    else growFactor(this.pattern, factor, this.factor);
    this.siemens.set(siemens);
    this.hasIslands = this.hasDiagonal = false;
  }

  /** Brings it up to date with a solved companion; returns how many columns were factored. */
  follow(companion: Companion): number {
    const { siemens, factor, pattern } = this;
    const { placeOf } = pattern;
    const { table, volts, piece, plain, pushing } = companion;
    for (let k = 0; k < plain.length; k++) {
      const e = plain[k]!;
      const now = companion.siemens[e]!;
      if (now === siemens[e]!) continue;
      siemens[e] = now;
      touch(factor, placeOf[e]!);
    }
    for (let k = 0; k < pushing.length; k++) {
      const e = pushing[k]!;
      const now = chordAt(table, e, voltsOver(pattern, volts, e), piece[e] === 0);
      if (Math.abs(now - siemens[e]!) <= SAME_SIEMENS * now) continue;
      siemens[e] = now;
      touch(factor, placeOf[e]!);
    }
    const columns = refactor(pattern, factor, siemens);
    if (columns > 0) this.hasIslands = this.hasDiagonal = false;
    return columns;
  }

  /** Island of each unknown (size n); null where nothing floats. */
  islandsNow(): Int32Array | null {
    if (this.hasIslands) return this.islands;
    this.islands = this.factor.zeroPivots === 0 ? null : islandsOf(this.pattern, this.factor, this.roomForIslands);
    this.hasIslands = true;
    return this.islands;
  }

  /** Fills in the ohms from each of some nodes to the reference: 0 where a node is on it, infinite where it floats. */
  readOhms(nodes: Int32Array, ohms: Float64Array): void {
    const { unknownOf } = this.pattern;
    const islands = this.islandsNow();
    if (!this.hasDiagonal) inverseDiagonal(this.pattern, this.factor, this.diagonal, this.off);
    this.hasDiagonal = true;
    for (let at = 0; at < nodes.length; at++) {
      const unknown = unknownOf[nodes[at]!]!;
      if (unknown < 0) ohms[at] = 0;
      else if (islands === null || islands[unknown] === GROUNDED) ohms[at] = this.diagonal[unknown]!;
      else ohms[at] = Number.POSITIVE_INFINITY;
    }
  }

  /** Ohms between two unknowns, below 0 for the reference; infinite where nothing joins them. */
  ohmsBetween(one: number, other: number): Ohms {
    if (one === other) return 0;
    const islands = this.islandsNow();
    const islandOf = (unknown: number): number => (unknown < 0 || islands === null ? GROUNDED : islands[unknown]!);
    if (islandOf(one) !== islandOf(other)) return Number.POSITIVE_INFINITY;
    const amps = new Float64Array(this.pattern.unknowns);
    const volts = new Float64Array(this.pattern.unknowns);
    if (one >= 0) amps[one] = 1;
    if (other >= 0) amps[other] = -1;
    solveTriangles(this.pattern, this.factor, amps, volts);
    return (one < 0 ? 0 : volts[one]!) - (other < 0 ? 0 : volts[other]!);
  }
}
