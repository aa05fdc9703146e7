import { assert } from "../base/outcome.ts";
import type { Amps, Ohms, Volts } from "../base/units.ts";
import { isBalanced, worstAmps } from "./balance.ts";
import {
  type Companion,
  companionOf,
  copyOfLines,
  drawAt,
  drawCold,
  drawStraight,
  type Lines,
  listBent,
  takeLine,
  voltsOver,
} from "./companion.ts";
import { searchDamped } from "./damped.ts";
import type { Element, NodeIndex } from "./element.ts";
import { copyFactor, copyOf, emptyFactor, type Factor, growFactor, refactor, touch } from "./factor.ts";
import { drawFirst } from "./guards.ts";
import { inverseDiagonal } from "./inverse.ts";
import { GROUNDED, islandsOf } from "./islands.ts";
import { ampsAcross, chordAt, isBent, isSameLaw, JOINT, type LawTable, RESISTOR, writeLaw } from "./laws.ts";
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

/** Where a search may start: the lines that another ended with, and the factors of these and of the dead network. */
export interface State {
  readonly pattern: Pattern;
  readonly table: LawTable;
  readonly lines: Lines;
  readonly factor: Factor;
  /** Volts of the unknowns. Size n. */
  readonly volts: Float64Array;
  readonly dead: Pick<DeadNetwork, "siemens" | "factor">;
}

const WARM_PASSES = 30;
const COLD_PASSES = 60;
const DAMPED_PASSES = 200;
/** Elements changed that pass so few amps more or less move no volts that a meter could see: 0.1 microvolt behind 100 kilohms. */
export const UNMOVED_AMPS: Amps = 1e-12;
/** Chords that are apart by no more than this share are the same: volts found twice differ in their last digits. */
const SAME_SIEMENS = 1e-12;

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
  private readonly roomForIslands: Int32Array;
  private dead: DeadNetwork | null = null;
  private isDeadFresh = false;
  /** What the source ohms are worked out in: sizes n and m. */
  private room: { readonly diagonal: Float64Array; readonly off: Float64Array } | null = null;

  constructor(pattern: Pattern) {
    this.pattern = pattern;
    this.companion = companionOf(pattern);
    this.excess = new Float64Array(pattern.unknowns + 1);
    this.roomForIslands = new Int32Array(pattern.unknowns);
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

  /** Whether there is nothing to solve: no number has changed since the last search. */
  get isSolved(): boolean {
    return this.last !== null;
  }

  /** A copy of where the last search ended; null where none has found anything. */
  save(): State | null {
    if (!this.isWarm || this.last === null) return null;
    const { pattern, companion } = this;
    const { siemens, factor } = this.deadNetwork();
    return {
      pattern,
      table: { code: companion.table.code.slice(), numbers: companion.table.numbers.slice() },
      lines: copyOfLines(companion),
      factor: copyOf(pattern, companion.factor),
      volts: companion.volts.slice(),
      dead: { siemens: siemens.slice(), factor: copyOf(pattern, factor) },
    };
  }

  /**
   * Starts the next search where one ended in this network or another whose elements begin alike; what has changed since
   * is seen and factored anew. Where all of that passes what it passed, there is nothing to search: the volts stay.
   * Numbers of elements are no part of a state.
   */
  startFrom(state: State): void {
    const { companion } = this;
    const { bent, table } = companion;
    this.last = null;
    const isOfThisShape = state.pattern.target === this.pattern.target;
    let otherAmps: Amps = Number.POSITIVE_INFINITY;
    if (isOfThisShape) otherAmps = this.takeFactors(state, copyFactor);
    else if (this.pattern.base?.pattern.target === state.pattern.target)
      this.takeFactors(state, (from, to) => growFactor(this.pattern, from, to));
    const wasWarm = this.isWarm;
    this.isWarm = true;
    for (let k = 0; k < bent.length; k++) {
      const e = bent[k]!;
      if (state.table.code[e] === table.code[e]) takeLine(companion, e, state.lines, isSameLaw(state.table, table, e));
      else if (isOfThisShape && wasWarm) drawFirst(companion, e);
      else this.isWarm = false;
    }
    if (otherAmps > UNMOVED_AMPS) return;
    companion.volts.set(state.volts);
    this.work.columns += refactor(this.pattern, companion.factor, companion.siemens);
    this.islands = null;
    this.isDeadFresh = false;
    this.last = { converged: true, passes: 0, residualAmps: otherAmps };
  }

  /**
   * Takes a state's factors over, and says where the elements are others than it was made for. Returns how many amps
   * more or less they pass at its volts: any number where one is bent or a source.
   */
  private takeFactors(state: State, take: (from: Factor, to: Factor) => void): Amps {
    const { companion, pattern } = this;
    const dead = this.roomForDead();
    take(state.factor, companion.factor);
    take(state.dead.factor, dead.factor);
    dead.siemens.set(state.dead.siemens);
    // What stands otherwise in the factor than it does now is factored anew; elements added since are so already.
    const { siemens, bent, pushing } = companion;
    const factored = state.lines.siemens;
    for (let k = 0; k < bent.length; k++) siemens[bent[k]!] = factored[bent[k]!]!;
    let otherAmps = 0;
    for (let k = 0; k < pushing.length; k++)
      if (!isSameLaw(state.table, companion.table, pushing[k]!)) otherAmps = Number.POSITIVE_INFINITY;
    for (let e = 0; e < factored.length; e++) {
      if (siemens[e]! === factored[e]!) continue;
      touch(companion.factor, pattern.placeOf[e]!);
      const across = voltsOver(state.pattern, state.volts, e);
      const before = ampsAcross(state.table, e, across);
      otherAmps += Math.abs(ampsAcross(companion.table, e, across) - before);
    }
    return otherAmps;
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
    return unknown >= 0 && (this.islandsNow()?.[unknown] ?? GROUNDED) !== GROUNDED;
  }

  /** Islands of the last search; null where nothing floats. */
  private islandsNow(): Int32Array | null {
    const { factor } = this.companion;
    if (factor.zeroPivots === 0) return null;
    this.islands ??= islandsOf(this.pattern, factor, this.roomForIslands);
    return this.islands;
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
    const { diagonal, islands } = this.sourceOhmsOfUnknowns();
    return Float64Array.from(this.pattern.unknownOf, (unknown) => {
      if (unknown < 0) return 0;
      return islands === null || islands[unknown] === GROUNDED ? diagonal[unknown]! : Number.POSITIVE_INFINITY;
    });
  }

  /** Fills in volts and source ohms of some nodes, as `volts` and `sourceOhms` tell them. Sizes as many as are asked for. */
  readOut(nodes: Int32Array, volts: Float64Array, sourceOhms: Float64Array): void {
    const { unknownOf } = this.pattern;
    const found = this.companion.volts;
    const { diagonal, islands: deadIslands } = this.sourceOhmsOfUnknowns();
    const islands = this.islandsNow();
    for (let at = 0; at < nodes.length; at++) {
      const unknown = unknownOf[nodes[at]!]!;
      volts[at] = 0;
      sourceOhms[at] = 0;
      if (unknown < 0) continue;
      if (islands === null || islands[unknown] === GROUNDED) volts[at] = found[unknown]!;
      sourceOhms[at] =
        deadIslands === null || deadIslands[unknown] === GROUNDED ? diagonal[unknown]! : Number.POSITIVE_INFINITY;
    }
  }

  /** Fills in amps without sign of some elements; 0 for an element of -1. Throws for a joint. Sizes as many as are asked for. */
  readAmps(elements: Int32Array, amps: Float64Array): void {
    const { pattern, companion } = this;
    const { code } = companion.table;
    for (let at = 0; at < elements.length; at++) {
      const e = elements[at]!;
      if (e < 0) amps[at] = 0;
      else if (code[e] === RESISTOR)
        amps[at] = Math.abs(companion.siemens[e]! * voltsOver(pattern, companion.volts, e));
      else amps[at] = Math.abs(this.amps(e));
    }
  }

  /** Ohms of every unknown, which mean nothing where it lies on an island; good until they are asked for again. */
  private sourceOhmsOfUnknowns(): { readonly diagonal: Float64Array; readonly islands: Int32Array | null } {
    const { factor, islands } = this.deadNetwork();
    this.room ??= { diagonal: new Float64Array(this.pattern.unknowns), off: new Float64Array(this.pattern.edges) };
    return { diagonal: inverseDiagonal(this.pattern, factor, this.room.diagonal, this.room.off), islands };
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

  private roomForDead(): DeadNetwork {
    const { pattern } = this;
    this.dead ??= {
      siemens: new Float64Array(pattern.placeOf.length),
      factor: emptyFactor(pattern),
      islands: null,
      roomForIslands: new Int32Array(pattern.unknowns),
    };
    return this.dead;
  }

  private deadNetwork(): DeadNetwork {
    const { pattern, companion } = this;
    const dead = this.roomForDead();
    if (this.isDeadFresh) return dead;
    const { siemens, factor } = dead;
    const { table, volts, piece, plain, pushing } = companion;
    for (let k = 0; k < plain.length; k++) {
      const e = plain[k]!;
      const now = companion.siemens[e]!;
      if (now === siemens[e]!) continue;
      siemens[e] = now;
      touch(factor, pattern.placeOf[e]!);
    }
    for (let k = 0; k < pushing.length; k++) {
      const e = pushing[k]!;
      const now = chordAt(table, e, voltsOver(pattern, volts, e), piece[e] === 0);
      if (Math.abs(now - siemens[e]!) <= SAME_SIEMENS * now) continue;
      siemens[e] = now;
      touch(factor, pattern.placeOf[e]!);
    }
    this.work.columns += refactor(pattern, factor, siemens);
    dead.islands = factor.zeroPivots === 0 ? null : islandsOf(pattern, factor, dead.roomForIslands);
    this.isDeadFresh = true;
    return dead;
  }
}

/** The network with sources dead: siemens of each element (size E), their factor, and its islands. */
interface DeadNetwork {
  readonly siemens: Float64Array;
  readonly factor: Factor;
  /** Null where nothing floats. */
  islands: Int32Array | null;
  readonly roomForIslands: Int32Array;
}
