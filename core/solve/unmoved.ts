import type { Siemens } from "../base/units.ts";
import { voltsOver } from "./companion.ts";
import { copyFactor, emptyFactor, type Factor, refactor, touch } from "./factor.ts";
import { inverseDiagonal } from "./inverse.ts";
import { GROUNDED, islandsOf } from "./islands.ts";
import { ampsAcross, RESISTOR } from "./laws.ts";
import type { Pattern } from "./pattern.ts";
import { type State, UNMOVED_AMPS } from "./solver.ts";

/** A resistor in place of an element that conducts, and is no source. */
export interface Replacement {
  readonly element: number;
  /** 0 where the element is taken out. */
  readonly siemens: Siemens;
}

/** What is read at some nodes: volts, 0 where they float, and ohms of source. */
export interface Readings {
  readonly volts: Float64Array;
  readonly sourceOhms: Float64Array;
}

/** Whether the element stands open in a state, so that nothing is changed there by what would stand in its place. */
function isOpen({ table }: State, element: number): boolean {
  return table.code[element] === RESISTOR && table.numbers[4 * element] === 0;
}

/** Whether resistors pass in a state what the elements pass in whose places they come, so that all volts stay. */
export function isUnmoved(state: State, replacements: readonly Replacement[]): boolean {
  let otherAmps = 0;
  for (const { element, siemens } of replacements) {
    if (isOpen(state, element)) continue;
    const across = voltsOver(state.pattern, state.volts, element);
    otherAmps += Math.abs(siemens * across - ampsAcross(state.table, element, across));
  }
  return otherAmps <= UNMOVED_AMPS;
}

/** Reads states of one pattern with resistors in them that move no volts; holds the room for that. */
export class UnmovedReader {
  private readonly siemens: Float64Array;
  private readonly factor: Factor;
  private readonly islands: Int32Array;
  private readonly diagonal: Float64Array;
  private readonly off: Float64Array;
  private readonly pattern: Pattern;

  constructor(pattern: Pattern) {
    const { unknowns, edges, placeOf } = pattern;
    this.pattern = pattern;
    this.siemens = new Float64Array(placeOf.length);
    this.factor = emptyFactor(pattern);
    this.islands = new Int32Array(unknowns);
    this.diagonal = new Float64Array(unknowns);
    this.off = new Float64Array(edges);
  }

  /**
   * Fills in what these nodes show in a state with resistors of which none moves anything there. `before` is what they
   * show without: what cannot differ is taken from it.
   */
  read(
    state: State,
    replacements: readonly Replacement[],
    nodes: Int32Array,
    before: Readings,
    { volts, sourceOhms }: Readings,
  ): void {
    volts.set(before.volts);
    sourceOhms.set(before.sourceOhms);
    const changes = replacements.filter(
      ({ element }) => this.pattern.placeOf[element]! >= 0 && !isOpen(state, element),
    );
    if (changes.length === 0) return;
    this.replace(state.dead, changes);
    // What leads to the reference with the sources dead does so in the solved network too.
    const isCut = this.factor.zeroPivots !== state.dead.factor.zeroPivots;
    if (isCut) this.fillFloating(nodes, sourceOhms, Number.POSITIVE_INFINITY);
    // Where the one thing taken out was the only way to an island, no other ohms hang on it.
    if (!isCut || changes.length > 1) this.readOhms(nodes, sourceOhms);
    if (!isCut) return;
    this.replace({ siemens: state.lines.siemens, factor: state.factor }, changes);
    this.fillFloating(nodes, volts, 0);
  }

  /** Makes the factor that of a state with the changes. */
  private replace(
    { siemens, factor }: Pick<State["dead"], "siemens" | "factor">,
    changes: readonly Replacement[],
  ): void {
    copyFactor(factor, this.factor);
    this.siemens.set(siemens);
    for (const change of changes) {
      this.siemens[change.element] = change.siemens;
      touch(this.factor, this.pattern.placeOf[change.element]!);
    }
    refactor(this.pattern, this.factor, this.siemens);
  }

  /** Ohms of nodes that do not float. */
  private readOhms(nodes: Int32Array, sourceOhms: Float64Array): void {
    const { unknownOf } = this.pattern;
    inverseDiagonal(this.pattern, this.factor, this.diagonal, this.off);
    for (let at = 0; at < nodes.length; at++) {
      const unknown = unknownOf[nodes[at]!]!;
      if (unknown >= 0 && sourceOhms[at]! < Number.POSITIVE_INFINITY) sourceOhms[at] = this.diagonal[unknown]!;
    }
  }
  /** Puts this value where a node floats. */
  private fillFloating(nodes: Int32Array, values: Float64Array, value: number): void {
    const { unknownOf } = this.pattern;
    if (this.factor.zeroPivots === 0) return;
    const islands = islandsOf(this.pattern, this.factor, this.islands);
    for (let at = 0; at < nodes.length; at++) {
      const unknown = unknownOf[nodes[at]!]!;
      if (unknown >= 0 && islands[unknown] !== GROUNDED) values[at] = value;
    }
  }
}
