import type { ConnectorId, PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Circuit } from "./circuit.ts";
import { connectorAt, terminalPoint } from "./points.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";

interface Plug {
  readonly connector: ConnectorId;
  readonly cavity: string;
  readonly terminal: string;
}

type Cavity = Pick<Plug, "connector" | "cavity"> & { readonly number: number };

/** The cavities that carry each point, numbered through all connectors. */
const cavitiesOf = remember((connectors: Circuit["connectors"]): ReadonlyMap<PointId, readonly Cavity[]> => {
  const found = new Map<PointId, Cavity[]>();
  let number = 0;
  for (const { id, cavities } of connectors) {
    for (const [cavity, point] of Object.entries(cavities ?? {})) {
      const list = found.get(point) ?? [];
      list.push({ connector: id, cavity, number: number++ });
      found.set(point, list);
    }
  }
  return found;
});

/** The cavities that carry terminals of a part, in the order of the connectors. */
function plugsOf(circuit: Circuit, { part, view }: Pick<SheetPart, "part" | "view">): readonly Plug[] {
  const cavities = cavitiesOf(circuit.connectors);
  if (cavities.size === 0) return [];
  return [...new Set(view.terminals)]
    .flatMap((terminal) => (cavities.get(terminalPoint(part, terminal)) ?? []).map((each) => ({ ...each, terminal })))
    .sort((one, other) => one.number - other.number);
}

/** Connectors that the name of a part tells enough of: its only one, with each cavity named as the terminal it carries. */
export function connectorsShownByName(
  circuit: Circuit,
  part: Pick<SheetPart, "part" | "view">,
): readonly ConnectorId[] {
  const plugs = plugsOf(circuit, part);
  if (plugs.length === 0) return [];
  const ids = [...new Set(plugs.map(({ connector }) => connector))];
  const isPlain = plugs.every(({ cavity, terminal }) => cavity === terminal);
  return ids.length === 1 && isPlain ? ids : [];
}

const NONE: ReadonlyMap<string, string> = new Map();

/** What stands beside each plugged terminal of a part, `X7-2`; nothing where the name of the part tells it. */
export function cavityTexts(circuit: Circuit, part: Pick<SheetPart, "part" | "view">): ReadonlyMap<string, string> {
  const plugs = plugsOf(circuit, part);
  if (plugs.length === 0 || connectorsShownByName(circuit, part).length > 0) return NONE;
  return new Map(plugs.map(({ connector, cavity, terminal }) => [terminal, `${connector}-${cavity}`]));
}

/** True where the condition has a plug apart at this point: at its cavity, or at half b of an in-line joint. */
export function isPlugApart({ circuit, live }: Pick<SheetSetup, "circuit" | "live">, point: PointId): boolean {
  const apart = live?.condition.apart ?? [];
  if (apart.length === 0) return false;
  const connector = connectorAt(circuit, point.slice(0, Math.max(0, point.lastIndexOf("-"))));
  if (connector === undefined || !apart.includes(connector.id)) return false;
  return connector.cavities !== undefined || point.endsWith("b");
}
