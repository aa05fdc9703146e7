import type { ConnectorId, PointId } from "../base/ids.ts";
import type { Circuit } from "./circuit.ts";
import { connectorAt, terminalPoint } from "./points.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";

interface Plug {
  readonly connector: ConnectorId;
  readonly cavity: string;
  readonly terminal: string;
}

/** The cavities that carry terminals of a part. */
function plugsOf(circuit: Circuit, { part, view }: Pick<SheetPart, "part" | "view">): readonly Plug[] {
  return circuit.connectors.flatMap(({ id, cavities }) =>
    Object.entries(cavities ?? {}).flatMap(([cavity, point]): readonly Plug[] => {
      const terminal = view.terminals.find((name) => terminalPoint(part, name) === point);
      return terminal === undefined ? [] : [{ connector: id, cavity, terminal }];
    }),
  );
}

/** Connectors that the name of a part tells enough of: its only one, with each cavity named as the terminal it carries. */
export function connectorsShownByName(
  circuit: Circuit,
  part: Pick<SheetPart, "part" | "view">,
): readonly ConnectorId[] {
  const plugs = plugsOf(circuit, part);
  const ids = [...new Set(plugs.map(({ connector }) => connector))];
  const isPlain = plugs.every(({ cavity, terminal }) => cavity === terminal);
  return ids.length === 1 && isPlain ? ids : [];
}

/** What stands beside each plugged terminal of a part, `X7-2`; nothing where the name of the part tells it. */
export function cavityTexts(circuit: Circuit, part: Pick<SheetPart, "part" | "view">): ReadonlyMap<string, string> {
  if (connectorsShownByName(circuit, part).length > 0) return new Map();
  return new Map(plugsOf(circuit, part).map(({ connector, cavity, terminal }) => [terminal, `${connector}-${cavity}`]));
}

/** True where the condition has a plug apart at this point: at its cavity, or at half b of an in-line joint. */
export function isPlugApart({ circuit, live }: Pick<SheetSetup, "circuit" | "live">, point: PointId): boolean {
  const connector = connectorAt(circuit, point.slice(0, Math.max(0, point.lastIndexOf("-"))));
  if (connector === undefined || !(live?.condition.apart ?? []).includes(connector.id)) return false;
  return connector.cavities !== undefined || point.endsWith("b");
}
