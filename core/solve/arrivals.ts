import { lowestIn, markPath } from "./bits.ts";
import type { Factor } from "./factor.ts";
import type { Pattern } from "./pattern.ts";

/**
 * The amps that elements push into the unknowns, and what of them arrives at each once all columns before it are
 * eliminated: the sweep down the columns, of which only what lies above a change is done again. n unknowns.
 */
export interface Arrivals {
  /** Size n each. */
  readonly pushed: Float64Array;
  readonly arrived: Float64Array;
  /** Unknowns whose pushes have changed: a list, its length, and a flag each. Sizes n. */
  readonly touched: Int32Array;
  touchedCount: number;
  readonly isTouched: Uint8Array;
}

/** The elements that push amps into each unknown: pusherAt[pusherStart[j] ..], ~e where its end b is there. Sizes n + 1 and up to 2 E. */
export interface Pushers {
  readonly pusherStart: Int32Array;
  readonly pusherAt: Int32Array;
}

/** Nothing pushed and nothing arrived. */
export function emptyArrivals(unknowns: number): Arrivals {
  return {
    pushed: new Float64Array(unknowns),
    arrived: new Float64Array(unknowns),
    touched: new Int32Array(unknowns),
    touchedCount: 0,
    isTouched: new Uint8Array(unknowns),
  };
}

/** Lists the elements at the ends of which amps are pushed, by unknown. */
export function pushersOf({ aOf, bOf, unknowns }: Pattern, pushing: Int32Array): Pushers {
  const pusherStart = new Int32Array(unknowns + 1);
  for (let k = 0; k < pushing.length; k++) {
    const e = pushing[k]!;
    if (aOf[e]! >= 0) pusherStart[aOf[e]! + 1]!++;
    if (bOf[e]! >= 0) pusherStart[bOf[e]! + 1]!++;
  }
  for (let j = 0; j < unknowns; j++) pusherStart[j + 1]! += pusherStart[j]!;
  const pusherAt = new Int32Array(pusherStart[unknowns]!);
  const next = pusherStart.slice();
  for (let k = 0; k < pushing.length; k++) {
    const e = pushing[k]!;
    if (aOf[e]! >= 0) pusherAt[next[aOf[e]!]!++] = e;
    if (bOf[e]! >= 0) pusherAt[next[bOf[e]!]!++] = ~e;
  }
  return { pusherStart, pusherAt };
}

/** Says that other amps may be pushed into an unknown. One below 0 is none. */
export function touchPushed(arrivals: Arrivals, unknown: number): void {
  if (unknown < 0 || arrivals.isTouched[unknown]) return;
  arrivals.isTouched[unknown] = 1;
  arrivals.touched[arrivals.touchedCount++] = unknown;
}

/** Makes what was pushed and arrived what it was elsewhere, where nothing is touched. */
export function copyArrivals({ pushed, arrived }: Pick<Arrivals, "pushed" | "arrived">, to: Arrivals): void {
  to.pushed.set(pushed);
  to.arrived.set(arrived);
  for (let k = 0; k < to.touchedCount; k++) to.isTouched[to.touched[k]!] = 0;
  to.touchedCount = 0;
}

/** Brings what arrives up to date with the offsets of the lines (size E) and the columns of a factor that have changed. */
export function bringForward(
  pattern: Pattern,
  factor: Factor,
  arrivals: Arrivals,
  pushers: Pushers,
  offset: Float64Array,
): void {
  sumPushed(pattern, factor, arrivals, pushers, offset);
  const { rowStart, edgeInRow, columnInRow } = pattern;
  const { share, changed } = factor;
  const { pushed, arrived } = arrivals;
  for (let word = 0; word < changed.length; word++) {
    let bits = changed[word]!;
    if (bits === 0) continue;
    changed[word] = 0;
    for (; bits !== 0; bits &= bits - 1) {
      const i = lowestIn(word, bits);
      let amps = pushed[i]!;
      for (let r = rowStart[i]!, end = rowStart[i + 1]!; r < end; r++)
        amps += share[edgeInRow[r]!]! * arrived[columnInRow[r]!]!;
      arrived[i] = amps;
    }
  }
}

/** Sums anew what is pushed into touched unknowns, and marks the columns above them. */
function sumPushed(
  { parentOf }: Pattern,
  { changed }: Factor,
  arrivals: Arrivals,
  { pusherStart, pusherAt }: Pushers,
  offset: Float64Array,
): void {
  const { pushed, touched, isTouched } = arrivals;
  for (let k = 0; k < arrivals.touchedCount; k++) {
    const j = touched[k]!;
    isTouched[j] = 0;
    let sum = 0;
    for (let at = pusherStart[j]!, end = pusherStart[j + 1]!; at < end; at++) {
      const e = pusherAt[at]!;
      if (e >= 0) sum -= offset[e]!;
      else sum += offset[~e]!;
    }
    if (sum === pushed[j]) continue;
    pushed[j] = sum;
    markPath(changed, parentOf, j);
  }
  arrivals.touchedCount = 0;
}
