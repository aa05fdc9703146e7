import type { PointId, WireId } from "../base/ids.ts";
import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit, Page, Wire } from "../circuit/circuit.ts";
import { parsePoint, partOfPoint, wireSideOf } from "../circuit/points.ts";
import type { Part } from "../parts/kind.ts";
import type { Change } from "./change.ts";

/**
 * The point where a wire to this point ends: the cavity, where one carries the terminal. Refuses what names no point,
 * `cavity-empty`, and `terminal-bare` for the body beside a ground point.
 */
export function wireEndOf(circuit: Circuit, text: string): Outcome<PointId> {
  const read = parsePoint(circuit, text);
  if (!read.ok) return read;
  const point = read.value;
  if (point.kind === "cavity") {
    return point.carries === undefined ? refuse("cavity-empty", { point: point.id }) : ok(point.id);
  }
  if (takesNoWire(point.part, point.terminal)) return refuse("terminal-bare", { point: point.id });
  return ok(wireSideOf(circuit, point.id));
}

/** The body beside a ground point can be probed; wires go to the stud. */
function takesNoWire(part: Part, terminal: string): boolean {
  return part.kind === "ground" && terminal === (part.terminals?.[1] ?? "body");
}

/** Why this wire cannot run between these points: `wire-to-itself`, or `wire-there` where another does; null where it can. */
export function wireRefusal(circuit: Circuit, { id, from, to }: Pick<Wire, "id" | "from" | "to">): Refusal | null {
  if (from === to) return refuse("wire-to-itself", { wire: id, end: from }).refusal;
  const there = wireBetween(circuit, from, to);
  return there && there.id !== id ? refuse("wire-there", { wire: there.id, from, to }).refusal : null;
}

/** The first wire between two points, whichever way round. */
export function wireBetween({ wires }: Circuit, one: PointId, other: PointId): Wire | undefined {
  return wires.find(({ from, to }) => (from === one && to === other) || (from === other && to === one));
}

/** The wire of this id, or the refusal `wire-unknown`. */
export function wireOf({ wires }: Circuit, id: WireId): Outcome<Wire> {
  const wire = wires.find((candidate) => candidate.id === id);
  return wire ? ok(wire) : refuse("wire-unknown", { wire: id });
}

/** The page on which both these points stand; undefined where they stand on two, or one of them on none. */
export function pageWith(circuit: Circuit, points: readonly PointId[]): Page | undefined {
  const ids = new Set(
    points.map((point) => circuit.placement.parts[partOfPoint(circuit, point)?.part.id ?? ""]?.page ?? ""),
  );
  return ids.size === 1 ? circuit.pages.find(({ id }) => ids.has(id)) : undefined;
}

/** The changes by which wires that end on one point end on another instead. */
export function endsMoved({ wires }: Circuit, one: PointId, other: PointId): readonly Change[] {
  return wires.flatMap(({ id, from, to }): readonly Change[] => {
    const item = { change: "item", list: "wires", id } as const;
    return [
      ...(from === one ? [{ ...item, field: "from", value: other } as const] : []),
      ...(to === one ? [{ ...item, field: "to", value: other } as const] : []),
    ];
  });
}
