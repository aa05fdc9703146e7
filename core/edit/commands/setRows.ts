import type { ConnectorId, PointId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Connector } from "../../circuit/circuit.ts";
import { connectorAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { inLineRefusal, type Rows, rowsOf } from "../faceRows.ts";
import { followed } from "../following.ts";
import { endsMoved } from "../wireEnds.ts";

/**
 * Gives a connector another face. A name that another one takes the place of is renamed, with all that names the place; a
 * place that goes leaves its wires on the terminal. Refuses `point-connector`, rows as `rowsOf` does, `cavity-wired` where
 * a wire would be left on nothing, `point-terminal` for an in-line joint that has no such place, and `already-so`.
 */
export function setRows(bench: Bench, id: ConnectorId, typed: Rows): Outcome<Edit> {
  const { circuit } = bench;
  const connector = connectorAt(circuit, id);
  if (!connector) return refuse("point-connector", { connector: id });
  const rows = rowsOf(typed);
  if (!rows.ok) return rows;
  if (JSON.stringify(rows.value) === JSON.stringify(connector.rows)) return alreadySo(id);
  const name = WIRING_NAMES.setRows(id);
  const face: Change = { change: "item", list: "connectors", id, field: "rows", value: rows.value };
  if (!connector.cavities) {
    const refusal = inLineRefusal(circuit, id, rows.value);
    if (refusal) return { ok: false, refusal };
    const trimmed = followed(bench, [], {}, [face]);
    return trimmed.ok ? editOf(bench, name, trimmed.value) : trimmed;
  }
  const plug = { ...connector, cavities: connector.cavities };
  const names = namesInPlace(connector.rows, rows.value);
  const points = new Map([...names].map(([was, now]) => [`${id}-${was}`, `${id}-${now}`] as const));
  const kept = new Set(rows.value.flat());
  const gone = connector.rows.flat().filter((cavity) => cavity !== "" && !names.has(cavity) && !kept.has(cavity));
  const changing: Change[] = [face];
  for (const cavity of gone) {
    const point: PointId = `${id}-${cavity}`;
    const carries = plug.cavities[cavity];
    const moved = endsMoved(circuit, point, carries ?? point);
    if (moved.length > 0 && carries === undefined) return refuse("cavity-wired", { point });
    changing.push(...moved);
  }
  if (gone.some((cavity) => plug.cavities[cavity] !== undefined)) {
    const value = Object.fromEntries(
      Object.entries(cavitiesNamed(plug, names)).filter(([cavity]) => !gone.includes(cavity)),
    );
    changing.push({ change: "item", list: "connectors", id, field: "cavities", value });
  }
  const all = followed(bench, renamingOf(plug, names), { points }, changing);
  return all.ok ? editOf(bench, name, all.value) : all;
}

type Plug = Connector & { readonly cavities: NonNullable<Connector["cavities"]> };

/** Names that another name stands in the place of, where the old one is nowhere any more and the new one is new. */
function namesInPlace(was: Rows, now: Rows): ReadonlyMap<string, string> {
  const [before, after] = [new Set(was.flat()), new Set(now.flat())];
  return new Map(
    was.flatMap((row, y) =>
      row.flatMap((name, x) => {
        const next = now[y]?.[x] ?? "";
        const isRenamed = name !== "" && next !== "" && !after.has(name) && !before.has(next);
        return isRenamed ? [[name, next] as const] : [];
      }),
    ),
  );
}

function cavitiesNamed({ cavities }: Plug, names: ReadonlyMap<string, string>): Plug["cavities"] {
  return Object.fromEntries(
    Object.entries(cavities).map(([cavity, carries]) => [names.get(cavity) ?? cavity, carries]),
  );
}

/** Before a place is taken away, those that are renamed have their new names in the old face. */
function renamingOf(plug: Plug, names: ReadonlyMap<string, string>): readonly Change[] {
  if (names.size === 0) return [];
  const { id } = plug;
  return [
    {
      change: "item",
      list: "connectors",
      id,
      field: "rows",
      value: plug.rows.map((row) => row.map((name) => names.get(name) ?? name)),
    },
    { change: "item", list: "connectors", id, field: "cavities", value: cavitiesNamed(plug, names) },
  ];
}
