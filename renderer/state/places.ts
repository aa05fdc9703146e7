import type { PartId, PointId, WireId } from "../../core/base/ids.ts";
import { remember } from "../../core/base/memo.ts";
import type { Circuit, Connector } from "../../core/circuit/circuit.ts";
import { isInLine, partOfPoint as ownerOf, pointAt } from "../../core/circuit/points.ts";
import { isBySense, type Step } from "../../core/diagnose/step.ts";
import type { Part } from "../../core/parts/kind.ts";
import type { Thing } from "./state.ts";

/** The part on which a point lies: of a cavity, the one whose terminal it carries; undefined for an empty place. */
export function partOfPoint(circuit: Circuit, point: PointId): PartId | undefined {
  return ownerOf(circuit, point)?.part.id;
}

/** Page to the wires that have an end on it. */
export const wiresByPage = remember((circuit: Circuit): ReadonlyMap<string, readonly WireId[]> => {
  const pages = new Map<string, WireId[]>(circuit.pages.map(({ id }) => [id, []]));
  for (const wire of circuit.wires) {
    const ends = [wire.from, wire.to].map((end) => pageOfPoint(circuit, end));
    for (const page of new Set(ends)) if (page !== undefined) pages.get(page)?.push(wire.id);
  }
  return pages;
});

/** Page on which a point is drawn. */
export function pageOfPoint(circuit: Circuit, point: PointId): string | undefined {
  const part = partOfPoint(circuit, point);
  return part === undefined ? undefined : circuit.placement.parts[part]?.page;
}

/** Page on which something is drawn: of a wire that of its first end, but the page in sight where it is there too. */
export function pageOf(circuit: Circuit, thing: Thing, inSight: string): string | undefined {
  if (thing.is === "part") return circuit.placement.parts[thing.id]?.page;
  if (thing.is === "point") return pageOfPoint(circuit, thing.id);
  if (wiresByPage(circuit).get(inSight)?.includes(thing.id)) return inSight;
  const wire = circuit.wires.find(({ id }) => id === thing.id);
  return wire && (pageOfPoint(circuit, wire.from) ?? pageOfPoint(circuit, wire.to));
}

/** What an id names: a wire, a part or a point; null where the circuit has none of it. */
export function thingNamed(circuit: Circuit, id: string): Thing | null {
  if (circuit.wires.some((wire) => wire.id === id)) return { is: "wire", id };
  if (circuit.parts.some((part) => part.id === id)) return { is: "part", id };
  return pointAt(circuit, id) ? { is: "point", id } : null;
}

/** What a row of the probe order is read at: a point, the part that is looked at or listened to, the first place of a plug. */
export function readAt(circuit: Circuit, { point, instrument }: Pick<Step, "point" | "instrument">): Thing | null {
  if (!isBySense(instrument)) return { is: "point", id: point };
  const plug = circuit.connectors.find(({ id }) => id === point);
  const first = plug?.rows.flat().find((cavity) => cavity !== "" && thingNamed(circuit, `${point}-${cavity}`) !== null);
  return thingNamed(circuit, first === undefined ? point : `${point}-${first}`);
}

/** Plugs and in-line joints by id, each once, with their labels. */
export function connectorsOf({
  parts,
  connectors,
}: Circuit): readonly { readonly id: string; readonly label?: string }[] {
  const joints = parts.filter(({ id, kind }) => kind === "connector" && !connectors.some((each) => each.id === id));
  return [...connectors, ...joints];
}

/** All parts that stand on a page and the wires that have an end on it. */
export function thingsOnPage(circuit: Circuit, page: string): readonly Thing[] {
  const parts = circuit.parts.filter(({ id }) => circuit.placement.parts[id]?.page === page);
  const wires = wiresByPage(circuit).get(page) ?? [];
  return [...parts.map(({ id }): Thing => ({ is: "part", id })), ...wires.map((id): Thing => ({ is: "wire", id }))];
}

/** The connectors that carry terminals of a part; of an in-line joint its own face. */
export function plugsOf({ connectors }: Circuit, part: Part): readonly Connector[] {
  if (isInLine(part)) return connectors.filter(({ id }) => id === part.id);
  return connectors.filter(({ cavities }) =>
    Object.values(cavities ?? {}).some((point) => point.startsWith(`${part.id}.`)),
  );
}

/** Ids of what can be pulled from a part: its plugs, or an in-line joint itself. */
export function plugIdsOf(circuit: Circuit, part: Part): readonly string[] {
  return isInLine(part) ? [part.id] : plugsOf(circuit, part).map(({ id }) => id);
}
