import { bitsFor, lowestIn, markPath } from "./bits.ts";
import type { Pattern } from "./pattern.ts";

/**
 * A network's conductances and their factor. Each unknown keeps its leak to the reference apart from its edges, and
 * pivots are sums of positive terms: elimination turns a star into a mesh and nothing is ever subtracted. So milliohms
 * beside megohms keep their digits, and a pivot of exactly 0 says that nothing leads to the reference.
 * Method: J. M. Pena, "LDU decompositions with L and U well conditioned", ETNA 18 (2004), for diagonally dominant
 * M-matrices. Sizes: n unknowns, m edges.
 */
export interface Factor {
  /** All that follows up to `ohms`, one after the other. Size 3 m + 3 n. */
  readonly numbers: Float64Array;
  /** Sums of the elements at each place: m edges, then n leaks. Size m + n, siemens. */
  readonly placed: Float64Array;
  /** Edges and leaks after elimination of all earlier columns. Sizes m and n, siemens. */
  readonly edge: Float64Array;
  readonly leak: Float64Array;
  /** Edge over its column's pivot: the share that goes that way. Size m. */
  readonly share: Float64Array;
  /** 1 / pivot, ohms; 0 where the pivot is 0. Size n. */
  readonly ohms: Float64Array;
  /** Places to sum anew: a list, its length, and a flag a place. Sizes m + n. */
  readonly touched: Int32Array;
  touchedCount: number;
  readonly isTouched: Uint8Array;
  /** Columns to be factored anew, and those that were since it was last asked: a bit each, 32 a number. */
  readonly stale: Int32Array;
  readonly changed: Int32Array;
  /** Columns whose pivot is 0: as many as there are floating islands. */
  zeroPivots: number;
}

/** An empty factor in which every place is touched, so that the first refactor does all columns. */
export function emptyFactor(pattern: Pattern): Factor {
  const { unknowns: n, edges: m } = pattern;
  const numbers = new Float64Array(3 * m + 3 * n);
  const factor: Factor = {
    numbers,
    placed: numbers.subarray(0, m + n),
    edge: numbers.subarray(m + n, 2 * m + n),
    leak: numbers.subarray(2 * m + n, 2 * m + 2 * n),
    share: numbers.subarray(2 * m + 2 * n, 3 * m + 2 * n),
    ohms: numbers.subarray(3 * m + 2 * n),
    touched: new Int32Array(m + n),
    touchedCount: 0,
    isTouched: new Uint8Array(m + n),
    stale: bitsFor(n),
    changed: bitsFor(n),
    zeroPivots: n,
  };
  touchAll(factor);
  return factor;
}

/** A copy of a factor that has nothing touched. */
export function copyOf(pattern: Pattern, factor: Factor): Factor {
  const copy = emptyFactor(pattern);
  copyFactor(factor, copy);
  return copy;
}

/** Makes a factor what another of the same pattern is, which has nothing touched. */
export function copyFactor(from: Factor, to: Factor): void {
  to.numbers.set(from.numbers);
  to.zeroPivots = from.zeroPivots;
  forgetTouched(to);
}

/** Makes a factor of an extended pattern what one of its base is, which has nothing touched, but for where the two differ. */
export function growFactor(pattern: Pattern, from: Factor, to: Factor): void {
  const { pattern: base, added, edgeAt, otherPlaces } = pattern.base!;
  to.numbers.fill(0);
  for (let p = 0; p < edgeAt.length; p++) {
    const at = edgeAt[p]!;
    to.placed[at] = from.placed[p]!;
    to.edge[at] = from.edge[p]!;
    to.share[at] = from.share[p]!;
  }
  to.placed.set(from.placed.subarray(base.edges), pattern.edges + added);
  to.leak.set(from.leak, added);
  to.ohms.set(from.ohms, added);
  to.zeroPivots = from.zeroPivots + added;
  forgetTouched(to);
  for (let k = 0; k < otherPlaces.length; k++) touch(to, otherPlaces[k]!);
}

function forgetTouched(factor: Factor): void {
  for (let k = 0; k < factor.touchedCount; k++) factor.isTouched[factor.touched[k]!] = 0;
  factor.touchedCount = 0;
  factor.changed.fill(0);
}

/** Says that an element at this place has new siemens. A place below 0 is none. */
export function touch(factor: Factor, place: number): void {
  if (place < 0 || factor.isTouched[place]) return;
  factor.isTouched[place] = 1;
  factor.touched[factor.touchedCount++] = place;
}

/** Says that any element may have new siemens. */
export function touchAll(factor: Factor): void {
  for (let place = 0; place < factor.isTouched.length; place++) touch(factor, place);
}

/**
 * Brings the factor up to date with the siemens of the elements (size E): sums touched places anew, and factors the
 * columns on the elimination tree's paths above them. Returns how many columns were factored.
 */
export function refactor(pattern: Pattern, factor: Factor, siemens: Float64Array): number {
  if (factor.touchedCount === 0) return 0;
  sumTouched(pattern, factor, siemens);
  return factorStale(pattern, factor);
}

/**
 * Sums touched places and marks the columns above them. Sums are made anew, never changed by a difference: that would
 * leave conductance behind where a contact opened.
 */
function sumTouched(pattern: Pattern, factor: Factor, siemens: Float64Array): void {
  const { edges, elementStart, elementAt, columnOf, parentOf } = pattern;
  const { placed, touched, isTouched, stale } = factor;
  for (let k = 0; k < factor.touchedCount; k++) {
    const place = touched[k]!;
    isTouched[place] = 0;
    let sum = 0;
    const end = elementStart[place + 1]!;
    for (let t = elementStart[place]!; t < end; t++) sum += siemens[elementAt[t]!]!;
    if (sum === placed[place]) continue;
    placed[place] = sum;
    markPath(stale, parentOf, place < edges ? columnOf[place]! : place - edges);
  }
  factor.touchedCount = 0;
}

function factorStale(pattern: Pattern, factor: Factor): number {
  const { stale, changed } = factor;
  let done = 0;
  for (let word = 0; word < stale.length; word++) {
    let bits = stale[word]!;
    if (bits === 0) continue;
    stale[word] = 0;
    changed[word] = changed[word]! | bits;
    for (; bits !== 0; bits &= bits - 1, done++) factorColumn(pattern, factor, lowestIn(word, bits));
  }
  return done;
}

function factorColumn(pattern: Pattern, factor: Factor, i: number): void {
  const { edges, columnStart, rowStart, edgeInRow, columnInRow, targetStart, target } = pattern;
  const { placed, edge, leak, share, ohms } = factor;
  // Column i starts from its own elements ...
  const start = columnStart[i]!;
  const end = columnStart[i + 1]!;
  for (let p = start; p < end; p++) edge[p] = placed[p]!;
  let pivot = placed[edges + i]!;
  // ... takes from each column j with an edge p to row i the share that goes this way ...
  for (let r = rowStart[i]!, rEnd = rowStart[i + 1]!; r < rEnd; r++) {
    const p = edgeInRow[r]!;
    const j = columnInRow[r]!;
    const part = share[p]!;
    pivot += part * leak[j]!;
    const qEnd = columnStart[j + 1]!;
    for (let q = p + 1, t = targetStart[p]!; q < qEnd; q++, t++) {
      const to = target[t]!;
      edge[to] = edge[to]! + part * edge[q]!;
    }
  }
  leak[i] = pivot;
  // ... and its pivot is its leak and all its edges.
  for (let p = start; p < end; p++) pivot += edge[p]!;
  const was = ohms[i]!;
  const now = pivot > 0 ? 1 / pivot : 0;
  if (was === 0 && now !== 0) factor.zeroPivots--;
  else if (was !== 0 && now === 0) factor.zeroPivots++;
  ohms[i] = now;
  for (let p = start; p < end; p++) share[p] = edge[p]! * now;
}
