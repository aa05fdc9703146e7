import { remember } from "../base/memo.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import { pathLength, spotAlong } from "../drawing/path.ts";
import type { Wire } from "./circuit.ts";
import type { SheetSetup, SheetWireLive } from "./sheetSetup.ts";
import type { Sight } from "./sheetSight.ts";
import { readsAlike } from "./sheetVolts.ts";
import { cutAt, type SheetWire, stepsOf, type WireWay } from "./sheetWire.ts";

/** Less current than this is not shown. */
const LEAST_AMPS: Amps = 0.005;

type Laying = Pick<SheetSetup, "live" | "sight">;

/** Which state the steps that wires share are drawn in, by the number of the step. */
type Drawn = Map<number, WireState | null>;

/**
 * The wires of a page with what they share worked out, in the order in which they are drawn. One that looks as it last
 * did on its way is the same object as then, so that what was made from it is found again.
 */
export function layWires({ live, sight }: Laying, ways: readonly WireWay[]): readonly SheetWire[] {
  const drawn: Drawn = new Map();
  const { steps } = sharedBy(ways);
  return ways.map((way, index) => layWire(way, steps[index]!, liveAt(live, way), sight, drawn));
}

/** Wires as they lie now, and which of them are others than last time; null where all may be. */
export interface LaidAgain {
  readonly wires: readonly SheetWire[];
  readonly others: readonly Wire[] | null;
}

/** How the wires of one page at one sight were last laid: along the same ways only those are laid again that look otherwise. */
export class LayingMemory {
  private ways: readonly WireWay[] = [];
  private lives: readonly (SheetWireLive | null)[] = [];
  private wires: readonly SheetWire[] = [];

  /** The same as `layWires`. */
  lay({ live, sight }: Laying, ways: readonly WireWay[]): LaidAgain {
    const lives = ways.map((way) => liveAt(live, way));
    const again =
      ways === this.ways ? this.again(lives, sight) : { wires: layWires({ live, sight }, ways), others: null };
    this.ways = ways;
    this.lives = lives;
    this.wires = again.wires;
    return again;
  }

  private again(lives: readonly (SheetWireLive | null)[], sight: Sight): LaidAgain {
    const { ways, wires: before } = this;
    const { steps, groups } = sharedBy(ways);
    const asked = new Set<readonly number[]>();
    for (let i = 0; i < ways.length; i++) {
      if (!isShownAlike(this.lives[i]!, lives[i]!, sight.hasWords)) asked.add(groups[i]!);
    }
    if (asked.size === 0) return { wires: before, others: [] };
    const wires = [...before];
    const others: Wire[] = [];
    for (const group of asked) {
      const drawn: Drawn = new Map();
      for (const index of group) {
        const laid = layWire(ways[index]!, steps[index]!, lives[index]!, sight, drawn);
        if (laid === wires[index]) continue;
        wires[index] = laid;
        others.push(laid.wire);
      }
    }
    return { wires, others };
  }
}

function liveAt(live: SheetSetup["live"], { wire }: WireWay): SheetWireLive | null {
  return live?.wires.get(wire.id) ?? null;
}

function layWire(
  { wire, corners, end }: WireWay,
  { steps, isShared, length }: WaySteps,
  whole: SheetWireLive | null,
  sight: Sight,
  drawn: Drawn,
): SheetWire {
  const live = liveOnPage(whole, end);
  const isDrawn = (step: number, state: WireState | null) => drawn.get(steps[step]!) === state;
  const [first, last] = [live?.state[0] ?? null, live?.state[1] ?? null];
  let from = 0;
  while (isShared && from < steps.length && isDrawn(from, first)) from++;
  let to = length;
  while (isShared && to > from && isDrawn(to - 1, last)) to--;
  const isBroken = live?.isBroken === true;
  const cut = first === last && !isBroken ? null : cutAt(corners, from, to);
  if (isShared) {
    steps.forEach((key, step) => {
      if (!drawn.has(key)) drawn.set(key, cut === null || step + 0.5 < cut ? first : last);
    });
  }
  const dots = [
    ...(from > 0 ? [{ at: spotAlong(corners, from).at, state: first }] : []),
    ...(to < length ? [{ at: spotAlong(corners, to).at, state: last }] : []),
  ];
  return lastLike({ wire, corners, live, flow: flowOf(live), from, to, cut, isBroken, dots }, sight);
}

/** The steps of a way, and whether another one takes any of them too; its length. */
interface WaySteps {
  readonly steps: readonly number[];
  readonly isShared: boolean;
  readonly length: GridUnits;
}

/** For each way its steps, and the numbers of all ways that it shares any with, over others or at once, itself among them. */
const sharedBy = remember((ways: readonly WireWay[]) => {
  const taken = new Map<number, number[]>();
  const all = ways.map(({ corners }) => stepsOf(corners));
  for (const [index, steps] of all.entries()) {
    for (const key of new Set(steps)) {
      const there = taken.get(key);
      if (there) there.push(index);
      else taken.set(key, [index]);
    }
  }
  const steps = ways.map(({ corners }, index): WaySteps => {
    const own = all[index]!;
    return { steps: own, isShared: own.some((key) => taken.get(key)!.length > 1), length: pathLength(corners) };
  });
  return { steps, groups: groupsOf(ways.length, taken.values()) };
});

/** Numbers below `count` that stand together, directly or over others: for each its group, in order. */
function groupsOf(count: number, together: Iterable<readonly number[]>): readonly (readonly number[])[] {
  const heads = Array.from({ length: count }, (_, index) => index);
  const headOf = (index: number): number => {
    let head = index;
    while (heads[head] !== head) head = heads[head]!;
    heads[index] = head;
    return head;
  };
  for (const [first, ...others] of together) for (const other of others) heads[headOf(other)] = headOf(first!);
  const groups = heads.map((): number[] => []);
  for (const index of heads.keys()) groups[headOf(index)]!.push(index);
  return heads.map((_, index) => groups[headOf(index)]!);
}

/** How many layings along the same corners are remembered: a switch goes to and fro. */
const MOST_KEPT = 2;
/** What was laid last along the same corners: plain, live, and both for a sight with words; the latest first. */
const laidAlong = remember((_corners: readonly Spot[]): SheetWire[][] => [[], [], [], []]);

function lastLike(laid: SheetWire, { hasWords }: Sight): SheetWire {
  const kept = laidAlong(laid.corners)[(laid.live === null ? 0 : 1) + (hasWords ? 2 : 0)]!;
  const known = kept.find((each) => looksLike(each, laid, hasWords));
  if (known !== undefined) return known;
  kept.unshift(laid);
  kept.splice(MOST_KEPT);
  return laid;
}

/** Whether two layings along the same corners come to the same marks; volts count only where words say them. */
function looksLike(one: SheetWire, other: SheetWire, hasWords: boolean): boolean {
  return (
    one.wire === other.wire &&
    one.from === other.from &&
    one.to === other.to &&
    one.cut === other.cut &&
    one.flow === other.flow &&
    one.dots.length === other.dots.length &&
    one.dots.every(({ at, state }, index) => {
      const dot = other.dots[index]!;
      return state === dot.state && at.x === dot.at.x && at.y === dot.at.y;
    }) &&
    isLiveAlike(one.live, other.live, hasWords)
  );
}

function isLiveAlike(one: SheetWireLive | null, other: SheetWireLive | null, hasWords: boolean): boolean {
  if (one === null || other === null) return one === other;
  return (
    one.state[0] === other.state[0] &&
    one.state[1] === other.state[1] &&
    one.isBroken === other.isBroken &&
    one.alwaysFed === other.alwaysFed &&
    one.weak === other.weak &&
    (!hasWords || (readsAlike(one.volts[0], other.volts[0]) && readsAlike(one.volts[1], other.volts[1])))
  );
}

/** Whether a wire looks the same with two live states, the current that it shows with it. */
function isShownAlike(one: SheetWireLive | null, other: SheetWireLive | null, hasWords: boolean): boolean {
  return one === other || (isLiveAlike(one, other, hasWords) && flowOf(one) === flowOf(other));
}

function flowOf(live: SheetWireLive | null): SheetWire["flow"] {
  if (live === null || Math.abs(live.amps) < LEAST_AMPS) return 0;
  return live.amps > 0 ? 1 : -1;
}

/** A loose end shows its own state along all that is drawn of it. */
function liveOnPage(live: SheetWireLive | null, end: 0 | 1 | undefined): SheetWireLive | null {
  if (live === null || end === undefined) return live;
  return { ...live, state: [live.state[end], live.state[end]], volts: [live.volts[end], live.volts[end]] };
}
