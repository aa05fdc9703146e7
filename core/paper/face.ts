import type { PointId } from "../base/ids.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt, isInLine, parsePoint, terminalPoint, terminalsOf, wireSideOf } from "../circuit/points.ts";
import { wiresAt } from "../diagnose/testPoint.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";

/** One place of a face: its number, its point, and the colour of its wire; null where no wire ends. */
export interface FacePlace {
  readonly name: string;
  readonly point: PointId;
  readonly colour: string | null;
  readonly isWired: boolean;
}

/** What a person looks at: rows of places seen from the wire side, null for a gap, and what it is. */
export interface Face {
  readonly rows: readonly (readonly (FacePlace | null)[])[];
  readonly caption: string;
  /** True for plugs, whose latch is drawn upwards. */
  readonly hasLatch: boolean;
}

/** The face on which a point lies: a plug, one half of an in-line joint, or the terminals of a part. */
export function faceOf(circuit: Circuit, point: PointId): Face {
  const parsed = parsePoint(circuit, point);
  if (!parsed.ok) return { rows: [[place(circuit, point, point)]], caption: "", hasLatch: false };
  if (parsed.value.kind === "cavity") return connectorFace(circuit, parsed.value.connector.id);
  const { part, terminal } = parsed.value;
  return isInLine(part) ? halfFace(circuit, part, terminal.slice(-1)) : partFace(circuit, part);
}

/** The face of a connector, as its rows are written. */
export function connectorFace(circuit: Circuit, id: string): Face {
  const rows = connectorAt(circuit, id)?.rows ?? [];
  return { rows: rows.map((row) => row.map((name) => cavity(circuit, id, name, ""))), caption: id, hasLatch: true };
}

/** One half of an in-line joint: each half as its own wire side shows it, so b mirrors a. */
function halfFace(circuit: Circuit, part: Part, half: string): Face {
  const numbers = [...new Set(terminalsOf(circuit, part).map((terminal) => terminal.slice(0, -1)))];
  const rows = connectorAt(circuit, part.id)?.rows ?? [numbers];
  const seen = rows.map((row) => (half === "b" ? [...row].reverse() : row));
  return {
    rows: seen.map((row) => row.map((name) => cavity(circuit, part.id, name, half))),
    caption: `${part.id}${half}`,
    hasLatch: true,
  };
}

function partFace(circuit: Circuit, part: Part): Face {
  const places = terminalsOf(circuit, part).map((name) =>
    place(circuit, name, wireSideOf(circuit, terminalPoint(part, name))),
  );
  const title = kindOf(part.kind)?.title.toLowerCase();
  return { rows: [places], caption: title ? `${title} ${part.id}` : part.id, hasLatch: false };
}

function cavity(circuit: Circuit, id: string, name: string, half: string): FacePlace | null {
  return name === "" ? null : place(circuit, name, `${id}-${name}${half}`);
}

function place(circuit: Circuit, name: string, point: PointId): FacePlace {
  const wires = wiresAt(circuit, point);
  return { name, point, colour: wires[0]?.colour ?? null, isWired: wires.length > 0 };
}
