import type { PartId } from "../base/ids.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { netsOf } from "../circuit/nets.ts";
import { partAt } from "../circuit/points.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";

/** The fuses nearest to a part, counted in parts passed on the way; grounds and batteries are not passed. */
export function nearestFuses(circuit: Circuit, start: PartId): readonly Part[] {
  const neighbours = neighboursOf(circuit);
  const seen = new Set<PartId>([start]);
  let ring: readonly PartId[] = [start];
  while (ring.length > 0) {
    const next = [...new Set(ring.flatMap((id) => [...(neighbours.get(id) ?? [])]))].filter((id) => !seen.has(id));
    const parts = next.map((id) => partAt(circuit, id)!);
    const fuses = parts.filter(({ kind }) => kind === "fuse");
    if (fuses.length > 0) return fuses;
    for (const id of next) seen.add(id);
    ring = parts.filter(({ kind }) => kind !== "ground" && kindOf(kind)?.role !== "source").map(({ id }) => id);
  }
  return [];
}

/** Parts that share a net. */
function neighboursOf(circuit: Circuit): ReadonlyMap<PartId, ReadonlySet<PartId>> {
  const near = new Map<PartId, Set<PartId>>();
  for (const { points } of netsOf(circuit)) {
    const ids = [...new Set(points.map((point) => point.replace(/[.-][^.-]+$/, "")))].filter((id) =>
      partAt(circuit, id),
    );
    for (const id of ids) {
      const others = near.get(id) ?? new Set<PartId>();
      for (const other of ids) if (other !== id) others.add(other);
      near.set(id, others);
    }
  }
  return near;
}
