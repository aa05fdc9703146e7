import type { ConnectorId, ControlKey, PartId, PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Control, Part } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit, Connector } from "./circuit.ts";

/** A place where a wire can end or a probe can touch, with what it belongs to. `id` is its one spelling. */
export type Point =
  | { readonly kind: "terminal"; readonly id: PointId; readonly part: Part; readonly terminal: string }
  | {
      readonly kind: "cavity";
      readonly id: PointId;
      readonly connector: Connector;
      readonly cavity: string;
      /** The part terminal that the place carries; absent where the place is empty. */
      readonly carries?: PointId;
    };

/** A handle of the circuit under the key that conditions use: `S5`, or `S2.middle` where a part has several. */
export interface CircuitControl {
  readonly key: ControlKey;
  readonly part: Part;
  readonly control: Control;
  /** Name of the position it stands in at rest. */
  readonly rest: string;
}

/** Terminal names of a part, its own or its kind's; none where the kind is not known. */
export function terminalsOf(circuit: Circuit, part: Part): readonly string[] {
  const kind = kindOf(part.kind);
  if (!kind) return part.terminals ?? [];
  return viewOf(kind, part, circuit.nominalVolts).terminals;
}

/** True for the two halves of an in-line joint, whose terminals are spelled with a dash: `X30-1a`. */
export function isInLine(part: Part): boolean {
  return part.kind === "connector";
}

/** The one spelling of a part's terminal: `S5.6`, and `X30-1a` for an in-line joint. */
export function terminalPoint(part: Part, terminal: string): PointId {
  return `${part.id}${isInLine(part) ? "-" : "."}${terminal}`;
}

interface Index {
  readonly parts: ReadonlyMap<PartId, Part>;
  readonly connectors: ReadonlyMap<ConnectorId, Connector>;
  readonly points: ReadonlyMap<PointId, Point>;
  /** Terminal to the cavity that carries it. */
  readonly wireSides: ReadonlyMap<PointId, PointId>;
  readonly controls: readonly CircuitControl[];
  readonly controlsByKey: ReadonlyMap<ControlKey, CircuitControl>;
}

const indexOf = remember((circuit: Circuit): Index => {
  const points = new Map<PointId, Point>();
  for (const part of circuit.parts) {
    for (const terminal of terminalsOf(circuit, part)) {
      const id = terminalPoint(part, terminal);
      points.set(id, { kind: "terminal", id, part, terminal });
    }
  }
  const wireSides = new Map<PointId, PointId>();
  for (const connector of circuit.connectors) {
    if (!connector.cavities) continue;
    const carried = new Map(Object.entries(connector.cavities));
    for (const cavity of connector.rows.flat()) {
      if (cavity === "") continue;
      const id = `${connector.id}-${cavity}`;
      const carries = carried.get(cavity);
      points.set(id, { kind: "cavity", id, connector, cavity, ...(carries === undefined ? {} : { carries }) });
      if (carries !== undefined) wireSides.set(carries, id);
    }
  }
  const controls = circuit.parts.flatMap(controlsOfPart);
  return {
    parts: new Map(circuit.parts.map((part) => [part.id, part])),
    connectors: new Map(circuit.connectors.map((connector) => [connector.id, connector])),
    points,
    wireSides,
    controls,
    controlsByKey: new Map(controls.map((control) => [control.key, control])),
  };
});

/** The key of one of a part's handles in conditions: the part's id, with the handle's name where there are several. */
export function controlKey(part: Part, control: Control): ControlKey {
  const several = (kindOf(part.kind)?.controls(part).length ?? 0) > 1;
  return several ? `${part.id}.${control.name}` : part.id;
}

function controlsOfPart(part: Part): readonly CircuitControl[] {
  return (kindOf(part.kind)?.controls(part) ?? []).map((control) => ({
    key: controlKey(part, control),
    part,
    control,
    rest: control.positions[0]?.name ?? "",
  }));
}

/**
 * Reads the spelling of a point; `X30.1a` is taken for `X30-1a`. Refuses `point-spelling`, `point-part`,
 * `point-terminal`, `point-connector` and `point-cavity`.
 */
export function parsePoint(circuit: Circuit, text: string): Outcome<Point> {
  const shape = /^([^.\-\s]+)([.-])(\S+)$/.exec(text.trim());
  if (!shape) return refuse("point-spelling", { text });
  const [, owner = "", mark, place = ""] = shape;
  const { parts, connectors, points } = indexOf(circuit);
  const part = parts.get(owner);
  const known = points.get(`${owner}${part && isInLine(part) ? "-" : mark}${place}`);
  if (known) return ok(known);
  if (part && (mark === "." || isInLine(part))) {
    return refuse("point-terminal", { part: owner, terminal: place, terminals: terminalsOf(circuit, part).join(", ") });
  }
  if (mark === ".") return refuse("point-part", { part: owner });
  const connector = connectors.get(owner);
  if (!connector) return refuse("point-connector", { connector: owner });
  const cavities = connector.rows.flat().filter((cavity) => cavity !== "");
  return refuse("point-cavity", { connector: owner, cavity: place, cavities: cavities.join(", ") });
}

/** Every point: the terminals of all parts in order, then the cavities of all connectors. */
export function pointsOf(circuit: Circuit): readonly Point[] {
  return [...indexOf(circuit).points.values()];
}

/** The place where a wire to this point ends: the cavity that carries a terminal, else the point itself. */
export function wireSideOf(circuit: Circuit, point: PointId): PointId {
  return indexOf(circuit).wireSides.get(point) ?? point;
}

/** The handles of all parts, in the order of the parts. */
export function controlsOf(circuit: Circuit): readonly CircuitControl[] {
  return indexOf(circuit).controls;
}

/** The handle of this key, if there is one. */
export function controlAt(circuit: Circuit, key: ControlKey): CircuitControl | undefined {
  return indexOf(circuit).controlsByKey.get(key);
}

/** The point of exactly this spelling, if there is one. */
export function pointAt(circuit: Circuit, id: PointId): Point | undefined {
  return indexOf(circuit).points.get(id);
}

/** The part to which a point belongs: its own, or the one whose terminal its cavity carries. */
export function partOfPoint(circuit: Circuit, id: PointId): { readonly part: Part; readonly terminal: string } | null {
  const point = pointAt(circuit, id);
  const terminal = point?.kind === "cavity" ? pointAt(circuit, point.carries ?? "") : point;
  return terminal?.kind === "terminal" ? { part: terminal.part, terminal: terminal.terminal } : null;
}

/** The part of this id, if there is one. */
export function partAt(circuit: Circuit, id: PartId): Part | undefined {
  return indexOf(circuit).parts.get(id);
}

/** The connector of this id, if there is one. */
export function connectorAt(circuit: Circuit, id: ConnectorId): Connector | undefined {
  return indexOf(circuit).connectors.get(id);
}

/** Whether a control must be held in this position: let go, it returns to rest. */
export function springsBack(circuit: Circuit, key: ControlKey, position: string): boolean {
  const positions = controlAt(circuit, key)?.control.positions ?? [];
  return positions.find(({ name }) => name === position)?.springsBackTo !== undefined;
}
