import type { Circuit } from "../../core/circuit/circuit.ts";
import { netOf } from "../../core/circuit/nets.ts";
import { pointAt } from "../../core/circuit/points.ts";
import { partOfPoint, plugsOf } from "./places.ts";
import type { Thing } from "./state.ts";

/** All wires of the net of a wire or point, and the splices and page links that join them; none for a part. */
export function netThings(circuit: Circuit, thing: Thing): readonly Thing[] {
  const wire = thing.is === "wire" ? circuit.wires.find(({ id }) => id === thing.id) : undefined;
  const net = netOf(circuit, wire?.from ?? thing.id);
  if (!net || thing.is === "part") return [];
  const joins = new Set<string>();
  for (const point of net.points) {
    const found = pointAt(circuit, point);
    if (found?.kind === "terminal" && JOINS.includes(found.part.kind)) joins.add(found.part.id);
  }
  return [
    ...net.wires.map((id): Thing => ({ is: "wire", id })),
    ...[...joins].map((id): Thing => ({ is: "part", id })),
  ];
}

const JOINS: readonly string[] = ["splice", "page-link"];

/** All wires that end on a connector. */
export function wiresOnConnector(circuit: Circuit, connector: string): readonly Thing[] {
  const isOn = (point: string): boolean => point.startsWith(`${connector}-`);
  return circuit.wires.flatMap(({ id, from, to }) => (isOn(from) || isOn(to) ? [{ is: "wire", id } as const] : []));
}

/** The connectors on which a thing lies: of a part all its plugs, of a wire those of its ends, of a point its own. */
export function connectorsWith(circuit: Circuit, thing: Thing): readonly string[] {
  if (thing.is === "part") {
    const part = circuit.parts.find(({ id }) => id === thing.id);
    return part ? plugsOf(circuit, part).map(({ id }) => id) : [];
  }
  const wire = thing.is === "wire" ? circuit.wires.find(({ id }) => id === thing.id) : undefined;
  const points = wire ? [wire.from, wire.to] : [thing.id];
  const ids = points.flatMap((point) => {
    const found = pointAt(circuit, point);
    if (found?.kind === "cavity") return [found.connector.id];
    const part = partOfPoint(circuit, point);
    return circuit.connectors.flatMap(({ id }) => (id === part ? [id] : []));
  });
  return [...new Set(ids)];
}
