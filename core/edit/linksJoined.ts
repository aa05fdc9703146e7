import type { PartId, PointId } from "../base/ids.ts";
import type { Circuit, Wire } from "../circuit/circuit.ts";
import { terminalPoint } from "../circuit/points.ts";
import type { Part } from "../parts/kind.ts";
import type { Bench } from "./bench.ts";
import type { Change } from "./change.ts";
import { wireBetween } from "./wireEnds.ts";

/** Two page links of one page, the only ones of their name. */
export type LinkPair = readonly [Part, Part];

/** The pairs of page links that stand on one page and link to one another alone. */
export function linkPairsOn({ parts, placement }: Circuit, page: string): readonly LinkPair[] {
  const byName = new Map<string, Part[]>();
  for (const part of parts) {
    const name = part.kind === "page-link" ? String(part.settings?.name ?? "").trim() : "";
    if (name !== "") byName.set(name, [...(byName.get(name) ?? []), part]);
  }
  const isHere = ({ id }: Part): boolean => placement.parts[id]?.page === page;
  return [...byName.values()].flatMap(([one, other, ...more]) =>
    one && other && more.length === 0 && isHere(one) && isHere(other) ? [[one, other] as const] : [],
  );
}

/**
 * The changes that make one wire of the two that lead to a pair of links, which go. Null where that would say something
 * else: several wires at a link, two wires unlike in colour, size or what is known of them, one with a fault, or a wire
 * between the two ends already.
 */
export function linksJoined({ circuit, faults }: Bench, [one, other]: LinkPair): readonly Change[] | null {
  const [here, there] = [wireAt(circuit, one), wireAt(circuit, other)];
  if (!here || !there || here.wire === there.wire || !isAlike(here.wire, there.wire)) return null;
  const going: readonly string[] = [one.id, other.id, here.wire.id, there.wire.id];
  const isFaulty = faults.some(({ target, value }) => going.includes(target) || going.includes(String(value)));
  if (isFaulty || here.far === there.far || wireBetween(circuit, here.far, there.far)) return null;
  const { wire, end } = here;
  const item = { change: "item", list: "wires", id: wire.id } as const;
  return [
    { change: "remove", list: "wires", id: there.wire.id },
    ...[wire.id, there.wire.id].flatMap((id) => bendsGone(circuit, id)),
    { ...item, field: end, value: there.far },
    ...(wire.metres === undefined
      ? []
      : [{ ...item, field: "metres", value: sum(wire, there.wire, "metres") } as const]),
    ...(wire.ohms == null ? [] : [{ ...item, field: "ohms", value: sum(wire, there.wire, "ohms") } as const]),
    ...[one.id, other.id].flatMap(partGone),
  ];
}

interface AtLink {
  readonly wire: Wire;
  /** Which end of it is on the link, and the point at its other end. */
  readonly end: "from" | "to";
  readonly far: PointId;
}

/** The one wire of a link; null where there is none or there are several. */
function wireAt({ wires }: Circuit, link: Part): AtLink | null {
  const point = terminalPoint(link, "1");
  const [wire, ...more] = wires.filter(({ from, to }) => from === point || to === point);
  if (!wire || more.length > 0) return null;
  return wire.from === point ? { wire, end: "from", far: wire.to } : { wire, end: "to", far: wire.from };
}

/** Whether all that is known of two wires is the same, so that they can be pieces of one; lengths add up. */
function isAlike(one: Wire, other: Wire): boolean {
  const known = ({ colour, mm2, metres, ohms, seen }: Wire): string =>
    JSON.stringify([colour, mm2, metres !== undefined, ohms != null, seen]);
  return known(one) === known(other);
}

/** Lengths and ohms add up, to a hundredth of a millimetre or a microhm. */
function sum(one: Wire, other: Wire, field: "metres" | "ohms"): number {
  return Number(((one[field] ?? 0) + (other[field] ?? 0)).toFixed(6));
}

function bendsGone({ placement }: Circuit, wire: string): readonly Change[] {
  return Object.hasOwn(placement.wires, wire) ? [{ change: "entry", record: "bends", key: wire }] : [];
}

function partGone(id: PartId): readonly Change[] {
  return [
    { change: "remove", list: "parts", id },
    { change: "entry", record: "places", key: id },
  ];
}
