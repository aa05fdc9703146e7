import type { PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { kindOf } from "../parts/catalogue.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit } from "./circuit.ts";
import { placeOf } from "./nets.ts";
import { Sets } from "./sets.ts";

/** Times that each place takes the mean of its neighbours: enough for the longest chains of the samples to settle. */
const SWEEPS = 400;
/** Weight of the pull towards ground at every place, so that what hangs from one side only still falls away from it. */
const LEAK = 0.004;

/**
 * How far up a drawing the ends of wires belong: 1 at a feed, 0 at a body, and each wire falls the way current would flow
 * in it. Every wire, contact, conductor and load is taken for one equal resistor, all switches closed, and each point gets
 * the volts it would have (Tutte, "How to Draw a Graph", 1963, in one direction alone).
 */
export const heightsOf = remember((circuit: Circuit): ReadonlyMap<PointId, number> => {
  const sets = new Sets();
  for (const { id, cavities = {} } of circuit.connectors) {
    for (const [cavity, carries] of Object.entries(cavities)) sets.merge(carries, `${id}-${cavity}`);
  }
  const links: (readonly [string, string])[] = circuit.wires.map(({ from, to }) => [from, to]);
  const fixed = new Map<string, number>();
  for (const part of circuit.parts) {
    const kind = kindOf(part.kind);
    for (const { a, b, passes } of kind?.model(viewOf(kind, part, circuit.nominalVolts)) ?? []) {
      const ends = [placeOf(part, a), placeOf(part, b)] as const;
      if (passes === "source") fixed.set(ends[0], 1);
      else links.push(ends);
      for (const end of ends) if (end.startsWith("=body:")) fixed.set(end, 0);
    }
  }
  const settled = settle(
    links.map(([a, b]) => [sets.of(a), sets.of(b)] as const),
    new Map([...fixed].map(([end, height]) => [sets.of(end), height])),
  );
  const ends = circuit.wires.flatMap(({ from, to }) => [from, to]);
  return new Map(ends.map((end) => [end, settled.get(sets.of(end))!]));
});

function settle(links: readonly (readonly [string, string])[], fixed: ReadonlyMap<string, number>) {
  const beside = new Map<string, string[]>();
  const join = (one: string, other: string): void => {
    const known = beside.get(one);
    if (known) known.push(other);
    else beside.set(one, [other]);
  };
  for (const [a, b] of links) {
    if (a === b) continue;
    join(a, b);
    join(b, a);
  }
  const heights = new Map<string, number>();
  for (const place of beside.keys()) heights.set(place, fixed.get(place) ?? 0);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (const [place, others] of beside) {
      if (fixed.has(place)) continue;
      const sum = others.reduce((all, other) => all + heights.get(other)!, 0);
      heights.set(place, sum / (others.length + LEAK));
    }
  }
  return heights;
}
