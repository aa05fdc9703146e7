import { remember } from "../base/memo.ts";
import { assert } from "../base/outcome.ts";
import type { Amps, Ohms, Volts } from "../base/units.ts";
import { type Arrivals, copyArrivals, touchPushed } from "./arrivals.ts";
import { isBalanced, worstAmps } from "./balance.ts";
import { markAll } from "./bits.ts";
import {
  type Companion,
  companionOf,
  copyOfLines,
  drawAt,
  drawCold,
  drawStraight,
  fillVolts,
  type Lines,
  listBent,
  takeLine,
  voltsOver,
} from "./companion.ts";
import { searchDamped } from "./damped.ts";
import { DeadNetwork } from "./dead.ts";
import type { Element, NodeIndex } from "./element.ts";
import { copyFactor, copyOf, type Factor, growFactor, refactor, touch } from "./factor.ts";
import { drawFirst } from "./guards.ts";
import { GROUNDED, isAfloat, islandsOf } from "./islands.ts";
import { ampsAcross, isBent, isSameLaw, JOINT, type LawTable, RESISTOR, writeLaw } from "./laws.ts";
import { searchByNewton, type Work } from "./newton.ts";
import type { Pattern } from "./pattern.ts";
import { REST, WATCHED } from "./triangles.ts";

/** The nodes of a pattern's network in order. */
export const allNodes = remember(({ unknownOf }: Pattern) => Int32Array.from(unknownOf, (_, node) => node));

/** How a solve ended. */
export interface Solution {
  /** False only where every search failed; the volts then mean nothing. */
  readonly converged: boolean;
  /** Straight networks solved on the way; 0 where nothing had changed. */
  readonly passes: number;
  /** Greatest amps by which Kirchhoff's current law was missed at a node when it was last drawn up, by the true laws. */
  readonly residualAmps: Amps;
}

/** Where a search may start: the lines that another ended with, and the factors of these and of the dead network. */
export interface State {
  readonly pattern: Pattern;
  readonly table: LawTable;
  readonly lines: Lines;
  readonly factor: Factor;
  readonly arrivals: Pick<Arrivals, "pushed" | "arrived">;
  /** Volts of the unknowns. Size n. */
  readonly volts: Float64Array;
  readonly dead: Pick<DeadNetwork, "siemens" | "factor">;
}

const WARM_PASSES = 30;
const COLD_PASSES = 60;
const DAMPED_PASSES = 200;
/** Kirchhoff's law is drawn up for the whole network at least once in so many searches and one, and after every cold one. */
const MOST_TRUSTED = 15;
/** Elements changed that pass so few amps more or less move no volts that a meter could see: 0.1 microvolt behind 100 kilohms. */
export const UNMOVED_AMPS: Amps = 1e-12;

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
  /** Searches that were trusted since Kirchhoff's law was last drawn up, and what was missed then. */
  private trusted = 0;
  private residualAmps: Amps = 0;
  private last: Solution | null = null;
  private islands: Int32Array | null = null;
  private readonly roomForIslands: Int32Array;
  private dead: DeadNetwork | null = null;
  private isDeadFresh = false;
  /** Where the dead network is to start from when it is next asked for; null where it goes on from where it is. */
  private deadStart: State | null = null;

  /** Volts at `watched` elements are at hand after every search, those at others once they are read. */
  constructor(pattern: Pattern, watched: readonly number[] = []) {
    this.pattern = pattern;
    this.companion = companionOf(pattern, watched);
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
    companion.reckonedAt[index] = Number.NaN;
    const now = table.code[index]!;
    this.last = null;
    if (was !== now) {
      fillVolts(companion);
      listBent(companion);
    }
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
    if (this.last !== null) return this.last.passes === 0 ? this.last : { ...this.last, passes: 0 };
    const before = this.work.passes;
    const converged = this.search();
    fillVolts(this.companion, WATCHED);
    this.isWarm = converged;
    this.islands = null;
    this.isDeadFresh = false;
    this.last = { converged, passes: this.work.passes - before, residualAmps: this.residualAmps };
    return this.last;
  }

  /** Warm, then cold, then with damped steps; the last is polished where it can be. */
  private search(): boolean {
    const { companion, excess, work } = this;
    const isTrusting = this.trusted < MOST_TRUSTED;
    const found = this.isWarm ? searchByNewton(companion, excess, WARM_PASSES, work, isTrusting) : "nothing";
    if (found === "trusted") {
      this.trusted++;
      return true;
    }
    const converged = found === "balanced" || this.searchCold();
    this.trusted = 0;
    this.residualAmps = worstAmps(excess);
    return converged;
  }

  private searchCold(): boolean {
    const { companion, excess, work } = this;
    drawCold(companion);
    if (searchByNewton(companion, excess, COLD_PASSES, work) !== "nothing") return true;
    if (!searchDamped(companion, excess, DAMPED_PASSES, work)) return false;
    const found = companion.volts.slice();
    if (searchByNewton(companion, excess, WARM_PASSES, work) !== "nothing") return true;
    companion.volts.set(found);
    companion.filled = REST;
    for (const e of companion.bent) drawAt(companion, e, voltsOver(this.pattern, found, e));
    return isBalanced(companion, excess);
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
    fillVolts(companion);
    return {
      pattern,
      table: { code: companion.table.code.slice(), numbers: companion.table.numbers.slice() },
      lines: copyOfLines(companion),
      factor: copyOf(pattern, companion.factor),
      arrivals: { pushed: companion.arrivals.pushed.slice(), arrived: companion.arrivals.arrived.slice() },
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
    if (isOfThisShape) {
      copyArrivals(state.arrivals, companion.arrivals);
      copyFactor(state.factor, companion.factor);
      otherAmps = this.takeNumbers(state);
    } else if (this.pattern.base?.pattern.target === state.pattern.target) {
      growFactor(this.pattern, state.factor, companion.factor);
      this.takeNumbers(state);
      this.pushAnew();
    }
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
    companion.filled = REST;
    this.work.columns += refactor(this.pattern, companion.factor, companion.siemens);
    this.islands = null;
    this.isDeadFresh = false;
    this.last = { converged: true, passes: 0, residualAmps: otherAmps };
  }

  /**
   * Takes the rest of a state over, and says where the elements are others than its factor was made for. Returns how many
   * amps more or less they pass at its volts: any number where one is bent or a source.
   */
  private takeNumbers(state: State): Amps {
    const { companion, pattern } = this;
    this.deadStart = state;
    // What stands otherwise in the factor than it does now is factored anew; elements added since are so already.
    const { siemens, offset, bent, pushing } = companion;
    const { siemens: factored, offset: offsets } = state.lines;
    for (let k = 0; k < bent.length; k++) {
      siemens[bent[k]!] = factored[bent[k]!]!;
      offset[bent[k]!] = offsets[bent[k]!]!;
    }
    let otherAmps = 0;
    for (let k = 0; k < pushing.length; k++)
      if (!isSameLaw(state.table, companion.table, pushing[k]!)) otherAmps = Number.POSITIVE_INFINITY;
    for (let e = 0; e < factored.length; e++) {
      if (offset[e]! !== offsets[e]!) this.touchEnds(e);
      if (siemens[e]! === factored[e]!) continue;
      touch(companion.factor, pattern.placeOf[e]!);
      const across = voltsOver(state.pattern, state.volts, e);
      const before = ampsAcross(state.table, e, across);
      otherAmps += Math.abs(ampsAcross(companion.table, e, across) - before);
    }
    return otherAmps;
  }

  private touchEnds(e: number): void {
    const { aOf, bOf, placeOf } = this.pattern;
    if (placeOf[e]! < 0) return;
    touchPushed(this.companion.arrivals, aOf[e]!);
    touchPushed(this.companion.arrivals, bOf[e]!);
  }

  /** Has all that is pushed summed and brought forward anew. */
  private pushAnew(): void {
    const { factor, pushing } = this.companion;
    for (let k = 0; k < pushing.length; k++) this.touchEnds(pushing[k]!);
    markAll(factor.changed, this.pattern.unknowns);
  }

  // -------------------------------------------------------------- reading

  /** Volts of a node to node 0; 0 on a floating island. */
  volts(node: NodeIndex): Volts {
    const unknown = this.pattern.unknownOf[node]!;
    if (unknown < 0 || this.isFloating(node)) return 0;
    this.fillFor(unknown);
    return this.companion.volts[unknown]!;
  }

  /** True where nothing that conducts leads from the node to node 0. A reverse diode conducts, an open contact does not. */
  isFloating(node: NodeIndex): boolean {
    const unknown = this.pattern.unknownOf[node]!;
    const { factor } = this.companion;
    if (unknown < 0 || factor.zeroPivots === 0) return false;
    return this.islands ? this.islands[unknown] !== GROUNDED : isAfloat(this.pattern, factor, unknown);
  }

  /** Sees to it that the volts of an unknown are there. */
  private fillFor(unknown: number): void {
    const { filled, reach } = this.companion;
    if (filled !== REST && unknown >= 0 && reach.partOf[unknown]! > filled) fillVolts(this.companion);
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
    const { aOf, bOf } = this.pattern;
    this.fillFor(aOf[index]!);
    this.fillFor(bOf[index]!);
    return voltsOver(this.pattern, this.companion.volts, index);
  }

  /** Amps from a to b through element `index` by its true law. Throws for a joint, whose amps are not known. */
  amps(index: number): Amps {
    assert(this.companion.table.code[index] !== JOINT, "the amps through a joint are not known");
    return ampsAcross(this.companion.table, index, this.voltsAcross(index));
  }

  /** Fills in volts and source ohms of some nodes, as `volts` and `sourceOhms` tell them. Sizes as many as are asked for. */
  readOut(nodes: Int32Array, volts: Float64Array, sourceOhms: Float64Array): void {
    const { unknownOf } = this.pattern;
    fillVolts(this.companion);
    const found = this.companion.volts;
    const islands = this.islandsNow();
    for (let at = 0; at < nodes.length; at++) {
      const unknown = unknownOf[nodes[at]!]!;
      volts[at] = unknown >= 0 && (islands === null || islands[unknown] === GROUNDED) ? found[unknown]! : 0;
    }
    this.deadNetwork().readOhms(nodes, sourceOhms);
  }

  /** Fills in amps from a to b through all elements, 0 through a joint. Size E. */
  readAllAmps(amps: Float64Array): void {
    const { pattern, companion } = this;
    const { code } = companion.table;
    fillVolts(companion);
    for (let e = 0; e < amps.length; e++) {
      const volts = voltsOver(pattern, companion.volts, e);
      amps[e] = code[e] === RESISTOR ? companion.siemens[e]! * volts : ampsAcross(companion.table, e, volts);
    }
  }

  /** Fills in amps without sign of some elements; 0 for an element of -1 and for a joint. Sizes as many as are asked for. */
  readAmps(elements: Int32Array, amps: Float64Array): void {
    const { pattern, companion } = this;
    const { code } = companion.table;
    fillVolts(companion);
    for (let at = 0; at < elements.length; at++) {
      const e = elements[at]!;
      if (e < 0) {
        amps[at] = 0;
        continue;
      }
      const across = voltsOver(pattern, companion.volts, e);
      amps[at] = Math.abs(
        code[e] === RESISTOR ? companion.siemens[e]! * across : ampsAcross(companion.table, e, across),
      );
    }
  }

  // -------------------------------------------------------------- sources dead

  /** Ohms from each node to node 0 with the sources dead and each element at its present volts over amps. Size nodeCount. */
  sourceOhms(): Float64Array {
    const nodes = allNodes(this.pattern);
    const ohms = new Float64Array(nodes.length);
    this.deadNetwork().readOhms(nodes, ohms);
    return ohms;
  }

  /** Ohms between two nodes with the sources dead, as for `sourceOhms`; `Infinity` where nothing joins them. */
  ohmsBetween(a: NodeIndex, b: NodeIndex): Ohms {
    const { unknownOf } = this.pattern;
    return this.deadNetwork().ohmsBetween(unknownOf[a]!, unknownOf[b]!);
  }

  private deadNetwork(): DeadNetwork {
    this.dead ??= new DeadNetwork(this.pattern);
    if (this.deadStart) this.dead.copy(this.deadStart.dead, this.deadStart.pattern.target === this.pattern.target);
    this.deadStart = null;
    if (!this.isDeadFresh) this.work.columns += this.dead.follow(this.companion);
    this.isDeadFresh = true;
    return this.dead;
  }
}
