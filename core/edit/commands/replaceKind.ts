import type { PartId, PointId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { isInLine, partAt } from "../../circuit/points.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Part } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import { bendsDropped } from "../bendsFollowing.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, lowerCase, nameOf } from "../editOf.ts";
import { firstFace } from "../newPart.ts";
import { asKind, crossing } from "../otherKind.ts";
import { placing } from "../standOnPage.ts";
import { trimming } from "../trim.ts";

/**
 * Makes a part one of another kind in its place. Its wires stay on terminals of the same names, or go over in order where
 * both kinds have as many; what names a position or fault that it no longer has goes. Refuses `part-unknown`,
 * `kind-unknown`, `already-so`, `terminals-lost` with the terminals that would lose their wires, and `off-the-page`.
 */
export function replaceKind(bench: Bench, id: PartId, kindName: string): Outcome<Edit> {
  const { circuit } = bench;
  const part = partAt(circuit, id);
  const was = part && kindOf(part.kind);
  if (!was) return refuse("part-unknown", { part: id });
  const kind = kindOf(kindName);
  if (!kind) return refuse("kind-unknown", { kind: kindName });
  if (kind === was) return alreadySo(nameOf(circuit, id));
  const next = asKind(part, was, kind);
  const used = usedPoints(circuit);
  const over = crossing({ kind: was, part }, { kind, part: next }, circuit.nominalVolts, (point) => used.has(point));
  if ("lost" in over) {
    const title = lowerCase(kind.title);
    return refuse("terminals-lost", { part: id, kind: title, terminals: over.lost.join(", ") });
  }
  const place = circuit.placement.parts[id];
  const placed = place && placing(circuit, next, place);
  if (placed && !placed.ok) return placed;

  const face = firstFace(kind, next);
  const changes: readonly Change[] = [
    ...fieldsChanged(part, next),
    ...pointsChanged(circuit, over.points),
    ...(isInLine(part) ? facesGone(circuit, id) : []),
    ...(face ? [{ change: "add", list: "connectors", at: circuit.connectors.length, item: face } as const] : []),
    ...bendsDropped(circuit, part),
  ];
  const trimmed = trimming(bench, changes);
  if (!trimmed.ok) return trimmed;
  return editOf(bench, EDIT_NAMES.replaceKind(nameOf(circuit, id), lowerCase(kind.title)), trimmed.value.changes);
}

/** Every point on which a wire ends or that a cavity carries. */
function usedPoints({ wires, connectors }: Circuit): ReadonlySet<PointId> {
  return new Set([
    ...wires.flatMap(({ from, to }) => [from, to]),
    ...connectors.flatMap(({ cavities }) => Object.values(cavities ?? {})),
  ]);
}

const FIELDS = ["kind", "settings", "terminals", "positions", "controls", "pins", "table"] as const;

function fieldsChanged(part: Part, next: Part): readonly Change[] {
  return FIELDS.flatMap((field): readonly Change[] => {
    const value = next[field];
    if (value === part[field]) return [];
    return [{ change: "item", list: "parts", id: part.id, field, ...(value !== undefined && { value }) } as Change];
  });
}

/** Wire ends, cavities and reach of the old points name the new ones. */
function pointsChanged(
  { wires, connectors, reach }: Circuit,
  points: ReadonlyMap<PointId, PointId>,
): readonly Change[] {
  const now = (point: PointId): PointId => points.get(point) ?? point;
  // All go before the first comes: terminals may have changed places.
  const moved = Object.entries(reach)
    .map(([key, value], at) => [key, value, at] as const)
    .filter(([key]) => now(key) !== key);
  return [
    ...wires.flatMap(({ id, ...ends }) =>
      (["from", "to"] as const).flatMap((field): readonly Change[] => {
        const value = now(ends[field]);
        return value === ends[field] ? [] : [{ change: "item", list: "wires", id, field, value }];
      }),
    ),
    ...connectors.flatMap(({ id, cavities = {} }): readonly Change[] => {
      const entries = Object.entries(cavities);
      if (entries.every(([, point]) => now(point) === point)) return [];
      const value = Object.fromEntries(entries.map(([cavity, point]) => [cavity, now(point)]));
      return [{ change: "item", list: "connectors", id, field: "cavities", value }];
    }),
    ...moved.map(([key]): Change => ({ change: "entry", record: "reach", key })),
    ...moved.map(([key, value, at]): Change => ({ change: "entry", record: "reach", key: now(key), value, at })),
  ];
}

function facesGone({ connectors }: Circuit, id: PartId): readonly Change[] {
  return connectors.some((connector) => connector.id === id) ? [{ change: "remove", list: "connectors", id }] : [];
}
