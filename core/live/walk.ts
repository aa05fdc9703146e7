import type { PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { wireSideOf } from "../circuit/points.ts";
import type { Live } from "./live.ts";
import { isLinkOpen, lengthsFrom, type WalkField, walkField } from "./walkField.ts";

/** Where one can go from a point. What carries most comes first, and what is joined now before what an open contact parts. */
export interface Steps {
  /** The next points towards the return. */
  readonly onward: readonly PointId[];
  /** The next points towards the feed. */
  readonly back: readonly PointId[];
  /** The point among those that part from the same place, such as the legs of a splice, in their order; itself alone otherwise. */
  readonly beside: readonly PointId[];
}

const NOWHERE: Steps = { onward: [], back: [], beside: [] };

/**
 * The steps from a point, along current where it flows, else along the shortest way from the feeds to the return. A
 * terminal and the place that carries it are one step while the plug is home. Empty for a point the circuit has not.
 */
export function stepsFrom(circuit: Circuit, live: Live, point: PointId): Steps {
  const walker = walkerOf(circuit)(live);
  const place = walker.standingAt(point);
  if (place === undefined) return NOWHERE;
  const { onward, back } = walker.around(place);
  const name = (places: readonly number[]): readonly PointId[] => places.map((each) => walker.field.points[each]!);
  return { onward: name(onward), back: name(back), beside: name(walker.beside(place)) };
}

/** One walker for each live state of a circuit, so that a held arrow key costs nothing. */
const walkerOf = remember((circuit: Circuit) => remember((live: Live) => new Walker(circuit, live)));

/** Less than this between two joined points is no current. */
const LEAST_VOLTS: Volts = 1e-5;

const MIDDLE = 2;
const RANKS: Readonly<Record<WireState, number>> = {
  powered: 0,
  "powered-through-load": 1,
  between: MIDDLE,
  floating: MIDDLE,
  clash: MIDDLE,
  undecided: MIDDLE,
  "grounded-through-load": 3,
  grounded: 4,
};

interface Around {
  readonly onward: readonly number[];
  readonly back: readonly number[];
}

class Walker {
  readonly field: WalkField;
  private readonly circuit: Circuit;
  private readonly live: Live;
  private readonly toFeed: Float64Array;
  private readonly toReturn: Float64Array;
  private readonly known = new Map<number, Around>();

  constructor(circuit: Circuit, live: Live) {
    this.circuit = circuit;
    this.live = live;
    this.field = walkField(circuit);
    this.toFeed = lengthsFrom(this.field, live, this.field.feeds);
    this.toReturn = lengthsFrom(this.field, live, this.field.back === undefined ? [] : [this.field.back]);
  }

  standingAt(point: PointId): number | undefined {
    const place = this.field.numbers.get(point);
    return place === undefined ? undefined : this.standing(place);
  }

  around(place: number): Around {
    const known = this.known.get(place);
    if (known) return known;
    const next = [...this.nextStops(place)];
    const isOnward = new Map(next.map(([stop]) => [stop, this.isOnward(place, stop)]));
    const way = (onward: boolean, lengths: Float64Array): readonly number[] =>
      next
        .filter(([stop]) => isOnward.get(stop) === onward)
        .sort(
          ([one, isOpen], [other, isOtherOpen]) =>
            Number(isOpen) - Number(isOtherOpen) ||
            this.amps(other) - this.amps(one) ||
            difference(lengths[one]!, lengths[other]!) ||
            one - other,
        )
        .map(([stop]) => stop);
    const around = { onward: way(true, this.toReturn), back: way(false, this.toFeed) };
    this.known.set(place, around);
    return around;
  }

  /** What parts from the place before this one; what meets at the place after it, where that is more. */
  beside(place: number): readonly number[] {
    const { onward, back } = this.around(place);
    const parted = back[0] === undefined ? [] : this.around(back[0]).onward;
    const meeting = onward[0] === undefined ? [] : this.around(onward[0]).back;
    const found = parted.length > 1 ? parted : meeting.length > 1 ? meeting : [place];
    return [...new Set([...found, place])].sort((one, other) => one - other);
  }

  /** The nearest points on every way from a place, those joined to it first, and whether something open lies between. */
  private nextStops(place: number): ReadonlyMap<number, boolean> {
    const stops = new Map<number, boolean>();
    const passed = this.sides(place);
    const seen = new Set(passed);
    const go = (throughOpen: boolean): void => {
      for (const from of passed) {
        for (const index of this.field.at[from]!) {
          const link = this.field.links[index]!;
          const to = link.a === from ? link.b : link.a;
          if (seen.has(to) || (!throughOpen && isLinkOpen(link, this.live))) continue;
          for (const side of this.sides(to)) seen.add(side);
          const stop = this.standing(to);
          if (stop === undefined) passed.push(to);
          else stops.set(stop, throughOpen);
        }
      }
    };
    go(false);
    go(true);
    return stops;
  }

  /** The point that a place is: of a terminal its wire side, while the plug is home. Undefined for what is hidden in a part. */
  private standing(place: number): number | undefined {
    const point = this.field.points[place];
    if (point === undefined) return undefined;
    const side = wireSideOf(this.circuit, point);
    const isApart = (this.live.condition.apart ?? []).includes(side.slice(0, side.lastIndexOf("-")));
    return isApart ? place : this.field.numbers.get(side);
  }

  /** The places that count as one: a cavity with the terminal in it, while the plug is home. */
  private sides(place: number): number[] {
    const joined = this.field.at[place]!.flatMap((index) => {
      const link = this.field.links[index]!;
      const isHome = link.is.by === "plug" && !isLinkOpen(link, this.live);
      return isHome ? [link.a === place ? link.b : link.a] : [];
    });
    return [place, ...joined];
  }

  /** Along current where there is any, else from fed to grounded, else away from the feed or nearer to the return. */
  private isOnward(from: number, to: number): boolean {
    const drop = this.volts(from) - this.volts(to);
    if (Math.abs(drop) > LEAST_VOLTS) return drop > 0;
    const [here, there] = [this.rank(from), this.rank(to)];
    if (here !== there) return there > here;
    const nearer = difference(this.toReturn[from]!, this.toReturn[to]!);
    const farther = difference(this.toFeed[to]!, this.toFeed[from]!);
    const gain = here < MIDDLE ? farther : here > MIDDLE ? nearer : nearer + farther;
    return gain === 0 ? to > from : gain > 0;
  }

  /** How far a place is on its way from feed to return, by its state. */
  private rank(place: number): number {
    const state = this.live.points.get(this.field.points[place]!)?.state;
    return state === undefined ? MIDDLE : RANKS[state];
  }

  /** Volts of a place; not a number where it floats, which no comparison holds for. */
  private volts(place: number): Volts {
    return this.live.points.get(this.field.points[place]!)?.volts ?? Number.NaN;
  }

  /** What the wires that end on a place carry. */
  private amps(place: number): Amps {
    const wires = this.field.at[place]!.map((index) => this.field.links[index]!.is);
    return Math.max(
      0,
      ...wires.map((is) => (is.by === "wire" ? Math.abs(this.live.wires.get(is.wire)?.amps ?? 0) : 0)),
    );
  }
}

/** How much longer one way is than the other; 0 where there is no way at all. */
function difference(one: number, other: number): number {
  if (one === other) return 0;
  return Number.isFinite(one) && Number.isFinite(other) ? one - other : one > other ? 1e9 : -1e9;
}
