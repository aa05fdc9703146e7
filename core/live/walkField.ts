import type { PartId, PointId, WireId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { placeOf } from "../circuit/nets.ts";
import { pointsOf, terminalPoint } from "../circuit/points.ts";
import { RouteHeap } from "../circuit/routeHeap.ts";
import { kindOf } from "../parts/catalogue.ts";
import { viewOf } from "../parts/view.ts";
import type { Live } from "./live.ts";
import { referenceBattery } from "./network.ts";

/** Something that joins two places: a wire, a plug's pin, or a way through a part. */
export interface Link {
  readonly a: number;
  readonly b: number;
  readonly is:
    | { readonly by: "wire"; readonly wire: WireId }
    | { readonly by: "plug"; readonly connector: string }
    | { readonly by: "part"; readonly part: PartId; readonly contact: string | null };
}

/** All places of a circuit that one can walk, by number: its points first, in their order, then what is hidden in parts. */
export interface WalkField {
  readonly points: readonly PointId[];
  readonly numbers: ReadonlyMap<string, number>;
  readonly links: readonly Link[];
  /** Links at each place. */
  readonly at: readonly (readonly number[])[];
  /** Where feeds begin, and the reference battery's negative post. */
  readonly feeds: readonly number[];
  readonly back: number | undefined;
}

/** The field of a circuit. Sources are no way through: they are where walking begins and ends. */
export const walkField = remember((circuit: Circuit): WalkField => {
  const points = pointsOf(circuit).map(({ id }) => id);
  const numbers = new Map<string, number>(points.map((point, index) => [point, index]));
  const at: number[][] = points.map(() => []);
  const number = (name: string): number => {
    const known = numbers.get(name) ?? numbers.size;
    if (known === numbers.size) at.push([]);
    numbers.set(name, known);
    return known;
  };
  const links: Link[] = [];
  const join = (a: string, b: string, is: Link["is"]): void => {
    const link = { a: number(a), b: number(b), is };
    if (link.a === link.b) return;
    at[link.a]!.push(links.length);
    at[link.b]!.push(links.length);
    links.push(link);
  };
  for (const { id, from, to } of circuit.wires) join(from, to, { by: "wire", wire: id });
  for (const { id, cavities = {} } of circuit.connectors) {
    for (const [cavity, carries] of Object.entries(cavities)) {
      join(carries, `${id}-${cavity}`, { by: "plug", connector: id });
    }
  }
  const feeds: number[] = [];
  for (const part of circuit.parts) {
    const kind = kindOf(part.kind);
    for (const { key, a, b, passes } of kind?.model(viewOf(kind, part, circuit.nominalVolts)) ?? []) {
      const [from, to] = [placeOf(part, a), placeOf(part, b)];
      const contact = passes === "contact" ? key : null;
      if (passes === "source") feeds.push(number(from));
      else join(from, to, { by: "part", part: part.id, contact });
    }
  }
  const battery = referenceBattery(circuit);
  const back = battery ? numbers.get(terminalPoint(battery, "-")) : numbers.get("=body:chassis");
  return { points, numbers, links, at, feeds, back };
});

/** Whether a link conducts nothing now: an open contact, a plug apart, a part taken out, a wire cut in its middle. */
export function isLinkOpen({ is }: Link, live: Live): boolean {
  const { apart = [], out = [] }: Condition = live.condition;
  switch (is.by) {
    case "wire": {
      const [one, other] = live.wires.get(is.wire)?.state ?? [];
      return one !== other;
    }
    case "plug":
      return apart.includes(is.connector);
    case "part":
      if (apart.includes(is.part) || out.includes(is.part)) return true;
      return is.contact !== null && live.parts.get(is.part)?.closed.has(is.contact) !== true;
  }
}

/** An open link counts as this many closed ones, so that a way round it is always shorter. */
const OPEN_LENGTH = 10_000;

/** Number of links from each place to the nearest of `starts`, open ones as `OPEN_LENGTH`; infinite where there is no way. */
export function lengthsFrom(field: WalkField, live: Live, starts: readonly number[]): Float64Array {
  const lengths = new Float64Array(field.at.length).fill(Number.POSITIVE_INFINITY);
  const heap = new RouteHeap();
  for (const start of starts) {
    lengths[start] = 0;
    heap.push(start, 0);
  }
  const done = new Uint8Array(field.at.length);
  while (heap.size > 0) {
    const place = heap.pop();
    if (done[place]) continue;
    done[place] = 1;
    for (const index of field.at[place]!) {
      const link = field.links[index]!;
      const other = link.a === place ? link.b : link.a;
      const length = lengths[place]! + (isLinkOpen(link, live) ? OPEN_LENGTH : 1);
      if (length >= lengths[other]!) continue;
      lengths[other] = length;
      heap.push(other, length);
    }
  }
  return lengths;
}
