import { remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import type { Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { ArrangePort, ArrangePose, ArrangeQuestion } from "./arrange.ts";
import type { ArrangeRoom } from "./arrangePlaces.ts";
import { boxOf, type Spread } from "./arrangeSpread.ts";
import { bendsOf, plainWay, type WayEnd } from "./arrangeWay.ts";
import { overlaps } from "./sheetRoom.ts";

/** What a layout costs beside its bends and crossings, which count 1 each. */
const LENGTH = 0.008;
const THROUGH_BODY = 8;
const ALONG_ANOTHER = 1.5;
/** For each square unit that two bodies share, and that one lies outside the room. */
const OVERLAP = 0.6;
/** Parts closer than this leave no room for words, which stand beside symbols, and for wires. */
const CLOSE_ACROSS = 9;
const CLOSE_DOWN = 5;
/** What parts that touch cost; less, the farther they are. */
const TOUCHING = 0.6;
/** A wire that climbs from feed to ground, and for each unit it does. */
const CLIMBS = 0.6;
const CLIMB = 0.05;

/** Wires of one channel are thought to lie on so many lines, two units apart. */
const CHANNELS = 5;

interface Leg {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A wire as it would be laid on an empty page. */
interface Laid {
  readonly box: Leg;
  readonly legs: readonly Leg[];
  readonly bends: number;
  readonly length: number;
  readonly climb: number;
}

/** A part of a layout by its number, and where it is to stand. */
export interface Moved {
  readonly index: number;
  readonly to: Spread;
}

/** A part as it stood before a move, with its wires. */
interface Stood {
  readonly index: number;
  readonly spread: Spread;
  readonly box: Bounds;
  readonly laid: readonly Laid[];
}

/** The cost of a layout, kept up while parts move: only what a move touches is reckoned anew. */
export class ArrangeCost {
  readonly spread: Spread[];
  private readonly edges: readonly {
    readonly nodes: readonly [number, number];
    readonly ports: readonly [string, string];
  }[];
  private readonly wires: readonly (readonly number[])[];
  private readonly laid: Laid[];
  private readonly boxes: Bounds[];
  private readonly room: ArrangeRoom;
  /** 1 for each pair of wires that share a terminal. */
  private readonly areMates: Uint8Array;
  /** Cost of each wire by itself, of each pair of wires, of each pair of bodies, each wire with each body. */
  private sum = 0;
  /** How things were before the last move. */
  private before: { sum: number; parts: Stood[] } = { sum: 0, parts: [] };

  constructor({ nodes, edges }: ArrangeQuestion, spread: readonly Spread[], room: ArrangeRoom) {
    this.room = room;
    this.spread = [...spread];
    this.boxes = spread.map(boxOf);
    const numbers = new Map(nodes.map(({ id }, index) => [id, index]));
    this.edges = edges.map(({ from, to, nodes: [a, b] }) => ({
      nodes: [numbers.get(a)!, numbers.get(b)!],
      ports: [from, to],
    }));
    this.wires = nodes.map((_, index) =>
      this.edges.flatMap((edge, wire) => (edge.nodes.includes(index) ? [wire] : [])),
    );
    this.areMates = Uint8Array.from({ length: edges.length ** 2 }, (_, pair) => {
      const [one, other] = [this.edges[Math.floor(pair / edges.length)]!, this.edges[pair % edges.length]!];
      return one.ports.some((port) => other.ports.includes(port)) ? 1 : 0;
    });
    this.laid = this.edges.map((_, wire) => this.lay(wire));
    this.sum = this.whole();
  }

  /** The cost now, in bends. */
  total(): number {
    return this.sum;
  }

  /** What of the cost is no matter of how wires bend and cross: parts too close, wires that climb. */
  standing(): number {
    let sum = 0;
    for (const { climb } of this.laid) sum += costOfClimb(climb);
    this.spread.forEach((_, body) => {
      sum += this.ofBody(body);
      for (let other = body + 1; other < this.spread.length; other++) sum += this.ofBodies(body, other);
    });
    return sum;
  }

  /** True where a part lies on no other and within the room. */
  isClear(index: number): boolean {
    const box = this.boxes[index]!;
    const { area, standing } = this.room;
    const isInside =
      box.left >= area.left && box.top >= area.top && box.right <= area.right && box.bottom <= area.bottom;
    const isOnOther = this.boxes.some((other, each) => each !== index && overlaps(box, other));
    return isInside && !isOnOther && !standing.some((other) => overlaps(box, other));
  }

  /** Numbers of the wires of a part. */
  wiresOf(index: number): readonly number[] {
    return this.wires[index]!;
  }

  /** The ends of a wire: that on this part, and the far one. */
  endsOf(wire: number, index: number): { readonly own: WayEnd; readonly far: WayEnd } {
    const isFirst = this.edges[wire]!.nodes[0] === index;
    return { own: this.end(wire, isFirst ? 0 : 1), far: this.end(wire, isFirst ? 1 : 0) };
  }

  /** A part and all that may move and hangs from it towards ground, or towards the feeds, up to so many. */
  hangingFrom(index: number, way: "ground" | "feeds", most: number): readonly number[] {
    const found = [index];
    for (let at = 0; at < found.length && found.length < most; at++) {
      for (const wire of this.wires[found[at]!]!) {
        const { nodes } = this.edges[wire]!;
        const next = nodes[way === "ground" ? 1 : 0];
        if (!found.includes(next) && !this.spread[next]!.node.isFixed) found.push(next);
      }
    }
    return found;
  }

  /** Puts parts somewhere else, one after the other. */
  move(moved: readonly Moved[]): void {
    this.before = { sum: this.sum, parts: [] };
    for (const { index, to } of moved) this.put(index, to);
  }

  /** Undoes the last `move`. */
  moveBack(): void {
    for (const { index, spread, box, laid } of [...this.before.parts].reverse()) {
      this.spread[index] = spread;
      this.boxes[index] = box;
      this.wires[index]!.forEach((wire, each) => {
        this.laid[wire] = laid[each]!;
      });
    }
    this.sum = this.before.sum;
    this.before.parts = [];
  }

  private put(index: number, to: Spread): void {
    const touched = this.wires[index]!;
    const laid = touched.map((wire) => this.laid[wire]!);
    this.before.parts.push({ index, spread: this.spread[index]!, box: this.boxes[index]!, laid });
    this.sum -= this.around(index, touched);
    this.spread[index] = to;
    this.boxes[index] = boxOf(to);
    for (const wire of touched) this.laid[wire] = this.lay(wire);
    this.sum += this.around(index, touched);
  }

  private end(wire: number, which: 0 | 1): WayEnd {
    const { nodes, ports } = this.edges[wire]!;
    const { pose, x, y } = this.spread[nodes[which]]!;
    const port = portOf(pose, ports[which]);
    return { x: x + port.x, y: y + port.y, side: port.side };
  }

  private lay(wire: number): Laid {
    const [from, to] = [this.end(wire, 0), this.end(wire, 1)];
    const bodies = this.edges[wire]!.nodes.map((node) => this.boxes[node]!);
    const way = plainWay(from, to, ((wire % CHANNELS) - (CHANNELS - 1) / 2) * 2, bodies);
    const legs = way.slice(1).map((spot, index) => legOf(way[index]!, spot));
    const length = legs.reduce((all, { left, right, top, bottom }) => all + right - left + bottom - top, 0);
    const box = {
      left: Math.min(...way.map(({ x }) => x)),
      right: Math.max(...way.map(({ x }) => x)),
      top: Math.min(...way.map(({ y }) => y)),
      bottom: Math.max(...way.map(({ y }) => y)),
    };
    return { box, legs, bends: bendsOf(way), length, climb: Math.max(0, from.y - to.y) };
  }

  private whole(): number {
    let sum = 0;
    this.laid.forEach((_, wire) => {
      sum += this.ofWire(wire);
      for (let other = wire + 1; other < this.laid.length; other++) sum += this.ofWires(wire, other);
      this.spread.forEach((_each, body) => {
        sum += this.ofWireAndBody(wire, body);
      });
    });
    this.spread.forEach((_, body) => {
      sum += this.ofBody(body);
      for (let other = body + 1; other < this.spread.length; other++) sum += this.ofBodies(body, other);
    });
    return sum;
  }

  /** Everything that a part and its wires have a share in. */
  private around(index: number, touched: readonly number[]): number {
    let sum = this.ofBody(index);
    for (let other = 0; other < this.spread.length; other++) if (other !== index) sum += this.ofBodies(index, other);
    for (const wire of touched) {
      sum += this.ofWire(wire);
      for (let body = 0; body < this.spread.length; body++) sum += this.ofWireAndBody(wire, body);
    }
    for (let other = 0; other < this.laid.length; other++) {
      const isOwn = this.edges[other]!.nodes.includes(index);
      if (!isOwn) sum += this.ofWireAndBody(other, index);
      for (const wire of touched) if (!isOwn || wire < other) sum += this.ofWires(wire, other);
    }
    return sum;
  }

  private ofWire(wire: number): number {
    const { bends, length, climb } = this.laid[wire]!;
    return bends + LENGTH * length + costOfClimb(climb);
  }

  private ofWires(one: number, other: number): number {
    const areMates = this.areMates[one * this.edges.length + other] === 1;
    const [a, b] = [this.laid[one]!, this.laid[other]!];
    if (areFar(a.box, b.box)) return 0;
    let sum = 0;
    for (const leg of a.legs) {
      for (const beside of b.legs) {
        if (areFar(leg, beside)) continue;
        if (crosses(leg, beside) || crosses(beside, leg)) sum += 1;
        else if (!areMates && sharesLine(leg, beside)) sum += ALONG_ANOTHER;
      }
    }
    return sum;
  }

  private ofWireAndBody(wire: number, body: number): number {
    const { box: around, legs } = this.laid[wire]!;
    const box = this.boxes[body]!;
    if (areFar(around, box)) return 0;
    const isOwn = this.edges[wire]!.nodes.includes(body);
    // A wire may touch the edge of its own part, where it begins.
    const margin = isOwn ? -0.5 : 0.5;
    let sum = 0;
    for (const leg of legs) {
      const isIn =
        leg.left < box.right + margin &&
        leg.right > box.left - margin &&
        leg.top < box.bottom + margin &&
        leg.bottom > box.top - margin;
      if (isIn) sum += !isOwn && this.isAcross(leg, body) ? 1 : THROUGH_BODY;
    }
    return sum;
  }

  /** True where a leg runs straight across a bar, which costs as much as crossing a wire. */
  private isAcross(leg: Leg, body: number): boolean {
    const { pose, x, y } = this.spread[body]!;
    return pose.across.some(({ left, top, right, bottom }) => {
      return leg.left <= left + x && leg.right >= right + x && leg.top <= top + y && leg.bottom >= bottom + y;
    });
  }

  private ofBody(index: number): number {
    const each = this.spread[index]!;
    if (each.node.isFixed) return 0;
    const box = this.boxes[index]!;
    const { area } = this.room;
    const outside =
      Math.max(0, area.left - box.left) +
      Math.max(0, box.right - area.right) +
      Math.max(0, area.top - box.top) +
      Math.max(0, box.bottom - area.bottom);
    return this.room.standing.reduce((sum, other) => sum + nearness(box, other), outside * OVERLAP * 4);
  }

  private ofBodies(one: number, other: number): number {
    const [a, b] = [this.spread[one]!, this.spread[other]!];
    return a.node.isFixed && b.node.isFixed ? 0 : nearness(this.boxes[one]!, this.boxes[other]!);
  }
}

const portsById = remember((pose: ArrangePose) => new Map(pose.ports.map((port) => [port.id, port])));

function portOf(pose: ArrangePose, id: string): ArrangePort {
  const port = portsById(pose).get(id);
  if (!port) throw new Error(`broken invariant: a wire ends on ${id}, which its part does not have`);
  return port;
}

function costOfClimb(climb: GridUnits): number {
  return climb > 0 ? CLIMBS + CLIMB * climb : 0;
}

function nearness(one: Bounds, other: Bounds): number {
  const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
  const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
  // 1 and more where they are as far apart as they should be, 0 where they touch.
  const gap = Math.max(-across / CLOSE_ACROSS, -down / CLOSE_DOWN);
  if (gap >= 1) return 0;
  if (gap > 0) return TOUCHING * (1 - gap);
  return 3 + OVERLAP * (across + 1) * (down + 1);
}

function legOf(a: Spot, b: Spot): Leg {
  return { left: Math.min(a.x, b.x), right: Math.max(a.x, b.x), top: Math.min(a.y, b.y), bottom: Math.max(a.y, b.y) };
}

function crosses(level: Leg, upright: Leg): boolean {
  if (level.top !== level.bottom || upright.left !== upright.right) return false;
  const { left: x } = upright;
  const { top: y } = level;
  return level.left < x && x < level.right && upright.top < y && y < upright.bottom;
}

/** Boxes so far apart that nothing in them meets or lies right beside the other. */
function areFar(a: Leg, b: Leg): boolean {
  return a.left > b.right + 1 || b.left > a.right + 1 || a.top > b.bottom + 1 || b.top > a.bottom + 1;
}

/** Two legs of one direction that lie on one line or right beside each other. */
function sharesLine(a: Leg, b: Leg): boolean {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  if (a.top === a.bottom && b.top === b.bottom) return across > 1 && Math.abs(a.top - b.top) < 2;
  return a.left === a.right && b.left === b.right && down > 1 && Math.abs(a.left - b.left) < 2;
}
