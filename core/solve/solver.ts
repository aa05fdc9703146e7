import { assert } from "../base/outcome.ts";
import type { Amps, Ohms, Volts } from "../base/units.ts";
import { isBalanced, worstAmps } from "./balance.ts";
import {
  type Companion,
  companionOf,
  drawAgain,
  drawAt,
  drawCold,
  drawStraight,
  listBent,
  voltsOver,
} from "./companion.ts";
import { searchDamped } from "./damped.ts";
import type { Element, NodeIndex } from "./element.ts";
import { emptyFactor, type Factor, refactor, touch } from "./factor.ts";
import { drawFirst } from "./guards.ts";
import { inverseDiagonal } from "./inverse.ts";
import { GROUNDED, islandsOf } from "./islands.ts";
import { ampsAcross, chordAt, isBent, JOINT, RESISTOR, writeLaw } from "./laws.ts";
import { searchByNewton, type Work } from "./newton.ts";
import type { Pattern } from "./pattern.ts";
import { solveTriangles } from "./triangles.ts";

/** How a solve ended. */
export interface Solution {
  /** False only where every search failed; the volts then mean nothing. */
  readonly converged: boolean;
  /** Straight networks solved on the way; 0 where nothing had changed. */
  readonly passes: number;
  /** Greatest amps by which Kirchhoff's current law is missed at a node, by the true laws. */
  readonly residualAmps: Amps;
}

/** Where the next search starts: the lines of the last one. To be given back to the solver it came from. */
export interface State {
  readonly at: Float64Array;
  readonly piece: Int8Array;
  readonly isWarm: boolean;
}

const WARM_PASSES = 30;
const COLD_PASSES = 60;
const DAMPED_PASSES = 200;

/**
 * A network with its present numbers and its operating point. Numbers are changed, then `solve` is called, then volts
 * and amps are read; until the next solve they are those of the last one.
 */
export class Solver {
  /** Passes and factored columns since this solver was made. */
  readonly work: Work = { passes: 0, columns: 0 };
  readonly pattern: Pattern;
  private readonly companion: Companion;
  private readonly excess: Float64Array;
  private isWarm = false;
  private last: Solution | null = null;
  private islands: Int32Array | null = null;
  private dead: DeadNetwork | null = null;
  private isDeadFresh = false;
  /** What the source ohms are worked out in: sizes n and m. */
  private room: { readonly diagonal: Float64Array; readonly off: Float64Array } | null = null;

  constructor(pattern: Pattern) {
    this.pattern = pattern;
    this.companion = companionOf(pattern);
    this.excess = new Float64Array(pattern.unknowns);
  }

  // -------------------------------------------------------------- changing numbers

  /** Gives element `index` other numbers or another law. Throws where an end changes, or where it is or becomes a joint. */
  setElement(index: number, element: Element): void {
    const { companion, pattern } = this;
    const { table } = companion;
    const old = pattern.network.elements[index];
    assert(old !== undefined && old.a === element.a && old.b === element.b, "an element keeps its ends");
    assert(old.law !== "joint" && element.law !== "joint", "a joint cannot change");
    const was = table.code[index]!;
    writeLaw(table, index, element);
    const now = table.code[index]!;
    this.last = null;
    if (was !== now) listBent(companion);
    if (!isBent(now)) drawStraight(companion, index);
    else if (this.isWarm) drawFirst(companion, index);
  }

  /** Gives resistor `index` other ohms; `Infinity` opens it. Throws where it is no resistor now, or ohms are not above 0. */
  setOhms(index: number, ohms: Ohms): void {
    const { companion } = this;
    assert(companion.table.code[index] === RESISTOR, "only a resistor has ohms to set");
    assert(ohms > 0, "ohms are above 0");
    const siemens = 1 / ohms;
    if (companion.table.numbers[4 * index] === siemens) return;
    companion.table.numbers[4 * index] = siemens;
    drawStraight(companion, index);
    this.last = null;
  }

  // -------------------------------------------------------------- solving

  /** Finds the operating point, from the last one where there is one. */
  solve(): Solution {
    if (this.last !== null) return { ...this.last, passes: 0 };
    const before = this.work.passes;
    const converged = this.search();
    this.isWarm = converged;
    this.islands = null;
    this.isDeadFresh = false;
    this.last = { converged, passes: this.work.passes - before, residualAmps: worstAmps(this.excess) };
    return this.last;
  }

  /** Warm, then cold, then with damped steps; the last is polished where it can be. */
  private search(): boolean {
    const { companion, excess, work } = this;
    if (this.isWarm && searchByNewton(companion, excess, WARM_PASSES, work)) return true;
    drawCold(companion);
    if (searchByNewton(companion, excess, COLD_PASSES, work)) return true;
    if (!searchDamped(companion, excess, DAMPED_PASSES, work)) return false;
    const found = companion.volts.slice();
    if (searchByNewton(companion, excess, WARM_PASSES, work)) return true;
    companion.volts.set(found);
    for (const e of companion.bent) drawAt(companion, e, voltsOver(this.pattern, found, e));
    return isBalanced(companion, found, excess);
  }

  /** A copy of where the next search would start. */
  save(): State {
    return { at: this.companion.at.slice(), piece: this.companion.piece.slice(), isWarm: this.isWarm };
  }

  /** Starts the next search from a saved state. Numbers of elements are not part of it: give those back first. */
  restore(state: State): void {
    const { companion } = this;
    this.isWarm = state.isWarm;
    this.last = null;
    if (!state.isWarm) return;
    companion.at.set(state.at);
    companion.piece.set(state.piece);
    for (const e of companion.bent) drawAgain(companion, e);
  }

  // -------------------------------------------------------------- reading

  /** Volts of a node to node 0; 0 on a floating island. */
  volts(node: NodeIndex): Volts {
    const unknown = this.pattern.unknownOf[node]!;
    return unknown < 0 || this.isFloating(node) ? 0 : this.companion.volts[unknown]!;
  }

  /** True where nothing that conducts leads from the node to node 0. A reverse diode conducts, an open contact does not. */
  isFloating(node: NodeIndex): boolean {
    const unknown = this.pattern.unknownOf[node]!;
    if (unknown < 0 || this.companion.factor.zeroPivots === 0) return false;
    this.islands ??= islandsOf(this.pattern, this.companion.factor);
    return this.islands[unknown] !== GROUNDED;
  }

  /** Volts from a to b of element `index`, on a floating island too. */
  voltsAcross(index: number): Volts {
    return voltsOver(this.pattern, this.companion.volts, index);
  }

  /** Amps from a to b through element `index` by its true law. Throws for a joint, whose amps are not known. */
  amps(index: number): Amps {
    assert(this.companion.table.code[index] !== JOINT, "the amps through a joint are not known");
    return ampsAcross(this.companion.table, index, this.voltsAcross(index));
  }

  // -------------------------------------------------------------- sources dead

  /** Ohms from each node to node 0 with the sources dead and each element at its present volts over amps. Size nodeCount. */
  sourceOhms(): Float64Array {
    const { unknownOf } = this.pattern;
    const diagonal = this.sourceOhmsOfUnknowns();
    return Float64Array.from(unknownOf, (unknown) => (unknown < 0 ? 0 : diagonal[unknown]!));
  }

  /** Fills in volts and source ohms of some nodes, as `volts` and `sourceOhms` tell them. Sizes as many as are asked for. */
  readOut(nodes: Int32Array, volts: Float64Array, sourceOhms: Float64Array): void {
    const { companion, pattern } = this;
    const { unknownOf } = pattern;
    const diagonal = this.sourceOhmsOfUnknowns();
    if (companion.factor.zeroPivots > 0) this.islands ??= islandsOf(pattern, companion.factor);
    const islands = companion.factor.zeroPivots > 0 ? this.islands : null;
    for (let at = 0; at < nodes.length; at++) {
      const unknown = unknownOf[nodes[at]!]!;
      const isHere = unknown >= 0 && (islands === null || islands[unknown] === GROUNDED);
      volts[at] = isHere ? companion.volts[unknown]! : 0;
      sourceOhms[at] = unknown < 0 ? 0 : diagonal[unknown]!;
    }
  }

  /** Good until they are asked for again. */
  private sourceOhmsOfUnknowns(): Float64Array {
    const { factor, islands } = this.deadNetwork();
    this.room ??= { diagonal: new Float64Array(this.pattern.unknowns), off: new Float64Array(this.pattern.edges) };
    const ohms = inverseDiagonal(this.pattern, factor, this.room.diagonal, this.room.off);
    if (islands !== null)
      for (let unknown = 0; unknown < ohms.length; unknown++)
        if (islands[unknown] !== GROUNDED) ohms[unknown] = Number.POSITIVE_INFINITY;
    return ohms;
  }

  /** Ohms between two nodes with the sources dead, as for `sourceOhms`; `Infinity` where nothing joins them. */
  ohmsBetween(a: NodeIndex, b: NodeIndex): Ohms {
    const { factor, islands } = this.deadNetwork();
    const from = this.pattern.unknownOf[a]!;
    const to = this.pattern.unknownOf[b]!;
    if (from === to) return 0;
    const islandOf = (unknown: number): number => (unknown < 0 || islands === null ? GROUNDED : islands[unknown]!);
    if (islandOf(from) !== islandOf(to)) return Number.POSITIVE_INFINITY;
    const amps = new Float64Array(this.pattern.unknowns);
    const volts = new Float64Array(this.pattern.unknowns);
    if (from >= 0) amps[from] = 1;
    if (to >= 0) amps[to] = -1;
    solveTriangles(this.pattern, factor, amps, volts);
    return (from < 0 ? 0 : volts[from]!) - (to < 0 ? 0 : volts[to]!);
  }

  private deadNetwork(): DeadNetwork {
    const { pattern, companion } = this;
    this.dead ??= { siemens: new Float64Array(pattern.placeOf.length), factor: emptyFactor(pattern), islands: null };
    if (this.isDeadFresh) return this.dead;
    const { siemens, factor } = this.dead;
    const { code } = companion.table;
    for (let e = 0; e < siemens.length; e++) {
      const now = isBent(code[e]!)
        ? chordAt(companion.table, e, voltsOver(pattern, companion.volts, e), companion.piece[e] === 0)
        : companion.siemens[e]!;
      if (now === siemens[e]) continue;
      siemens[e] = now;
      touch(factor, pattern.placeOf[e]!);
    }
    this.work.columns += refactor(pattern, factor, siemens);
    this.dead.islands = factor.zeroPivots === 0 ? null : islandsOf(pattern, factor);
    this.isDeadFresh = true;
    return this.dead;
  }
}

/** The network with sources dead: siemens of each element (size E), their factor, and its islands. */
interface DeadNetwork {
  readonly siemens: Float64Array;
  readonly factor: Factor;
  /** Null where nothing floats. */
  islands: Int32Array | null;
}
