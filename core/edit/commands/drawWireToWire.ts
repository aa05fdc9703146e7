import type { PointId, WireId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import type { GridUnits, Share } from "../../base/units.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Circuit, Wire } from "../../circuit/circuit.ts";
import { terminalSpots } from "../../circuit/placeSymbol.ts";
import { partOfPoint, terminalPoint, terminalsOf } from "../../circuit/points.ts";
import type { Spot } from "../../drawing/mark.ts";
import { spotAlong } from "../../drawing/path.ts";
import type { Part } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import { cutPlace, sharedEnd } from "../cutPlace.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn } from "../editOf.ts";
import { nextId, takenIds } from "../ids.ts";
import { placeForgotten, seenWithout } from "../seenPlaces.ts";
import { freeLeg, splicePlace } from "../splicing.ts";
import { placing } from "../standOnPage.ts";
import { wireBetween, wireEndOf, wireOf } from "../wireEnds.ts";
import { lookOf, type WireLook } from "../wireLook.ts";
import { aroundAlong, bendsCut, nearestAlong, pathOf, type WirePath } from "../wirePath.ts";
import { drawWire } from "./drawWire.ts";

/** So near to a splice at its end, a wire is met in that splice. */
const AT_SPLICE: GridUnits = 2;
/** Half of a splice: bends nearer to its dot would lie inside it. */
const SPLICE_HALF: GridUnits = 2;
/** Lengths and ohms of the halves are kept to so many decimals. */
const DECIMALS = 3;

/**
 * Draws a wire from a point to the middle of another wire: that one is cut at the place nearest to the spot, and a splice
 * joins its two halves and the new wire. Both halves keep colour and size and share length and ohms by the place along the
 * way. Beside a splice at its end a further leg of that splice is taken; where it lies on one line with other wires of its
 * end, the new wire goes to that end. Refuses `wire-unknown`, what names no point or takes
 * no wire, `wire-there`, `wire-not-drawn`, a wrong look, and `off-the-page`.
 */
export function drawWireToWire(
  bench: Bench,
  from: PointId,
  onto: WireId,
  spot: Spot,
  given: WireLook = {},
): Outcome<Edit> {
  const { circuit } = bench;
  const wire = wireOf(circuit, onto);
  if (!wire.ok) return wire;
  const start = wireEndOf(circuit, from);
  if (!start.ok) return start;
  const look = lookOf(circuit, given);
  if (!look.ok) return look;
  const path = pathOf(circuit, wire.value);
  if (!path) return refuse("wire-not-drawn", { wire: onto });
  if (wire.value.from === start.value || wire.value.to === start.value) return there(wire.value, start.value);
  const along = Math.round(nearestAlong(path.corners, spot));
  const near = spliceNear(circuit, wire.value, path, along);
  const trunk = sharedEnd(wire.value, path, spotAlong(path.corners, along).at);
  if (!near && trunk !== null) return drawWire(bench, start.value, trunk, given);
  const joint = near
    ? legOf(circuit, near, start.value)
    : spliceInto(circuit, wire.value, path, along, spotOf(circuit, path, start.value, spot));
  if (!joint.ok) return joint;
  const { splice, point, changes, wires } = joint.value;
  const added: Wire = {
    id: nextId("W", new Set([...takenIds(circuit), ...wires])),
    from: start.value,
    to: point,
    ...look.value,
  };
  return editOf(bench, WIRING_NAMES.drawWireToWire(added.id, onto, splice), [
    goingOn(bench),
    ...changes,
    { change: "add", list: "wires", at: circuit.wires.length + wires.length, item: added },
  ]);
}

/** A leg for the new wire, the changes that make it, and the ids of wires that these add. */
interface Joint {
  readonly splice: string;
  readonly point: PointId;
  readonly changes: readonly Change[];
  readonly wires: readonly WireId[];
}

function there({ id, from, to }: Wire, point: PointId): Outcome<never> {
  return refuse("wire-there", { wire: id, from: point, to: from === point ? to : from });
}

/** The splice at an end of the wire that is as near to the place along it as this. */
function spliceNear(circuit: Circuit, { from, to }: Wire, { length }: WirePath, along: GridUnits): Part | null {
  const isSplice = (end: PointId): Part | null => {
    const part = partOfPoint(circuit, end)?.part;
    return part?.kind === "splice" ? part : null;
  };
  const [one, other] = [along <= AT_SPLICE ? isSplice(from) : null, length - along <= AT_SPLICE ? isSplice(to) : null];
  return along <= length - along ? (one ?? other) : (other ?? one);
}

function legOf(circuit: Circuit, splice: Part, start: PointId): Outcome<Joint> {
  const legs = terminalsOf(circuit, splice).map((leg) => terminalPoint(splice, leg));
  if (legs.includes(start)) return refuse("wire-to-itself", { wire: splice.id, end: start });
  const known = legs.map((leg) => wireBetween(circuit, start, leg)).find((each) => each !== undefined);
  if (known) return there(known, start);
  const leg = freeLeg(circuit, splice);
  return leg.ok ? ok({ splice: splice.id, ...leg.value, wires: [] }) : leg;
}

/** Where the new wire comes from; where its point stands on another page, from where the wire was met. */
function spotOf(circuit: Circuit, { page }: WirePath, point: PointId, otherwise: Spot): Spot {
  return terminalSpots(circuit, page.id).get(point) ?? otherwise;
}

function spliceInto(circuit: Circuit, wire: Wire, path: WirePath, met: GridUnits, other: Spot): Outcome<Joint> {
  const along = cutPlace(circuit, path, met);
  const taken = takenIds(circuit);
  const splice: Part = { id: nextId("SP", taken), kind: "splice" };
  const second = nextId("W", taken);
  const around = aroundAlong(path.corners, along);
  const { place, legs } = splicePlace(circuit, splice, path.page.id, { ...around, other });
  const placed = placing(circuit, splice, place);
  if (!placed.ok) return placed;
  const [behind, ahead, branch] = legs.map((leg) => terminalPoint(splice, leg)) as [PointId, PointId, PointId];
  const share = path.length === 0 ? 0.5 : along / path.length;
  const [metres, ohms] = [halves(wire.metres, share), halves(wire.ohms, share)];
  const half: Wire = {
    ...wire,
    id: second,
    from: ahead,
    ...(metres && { metres: metres[1] }),
    ...(ohms && { ohms: ohms[1] }),
    ...(wire.seen && { seen: seenWithout(wire.seen, "from") }),
  };
  const item = { change: "item", list: "wires", id: wire.id } as const;
  const changes: readonly Change[] = [
    { change: "add", list: "parts", at: circuit.parts.length, item: splice },
    placed.value,
    { ...item, field: "to", value: behind },
    ...placeForgotten(wire, "to"),
    ...(metres ? [{ ...item, field: "metres", value: metres[0] } as const] : []),
    ...(ohms ? [{ ...item, field: "ohms", value: ohms[0] } as const] : []),
    { change: "add", list: "wires", at: circuit.wires.length, item: half },
    ...bendsOfHalves(circuit, wire, second, path, along),
  ];
  return ok({ splice: splice.id, point: branch, changes, wires: [second] });
}

/** An amount shared between two halves so that they sum to the whole; null where nothing is said. */
function halves(whole: number | null | undefined, share: Share): readonly [number, number] | null {
  if (whole === null || whole === undefined) return null;
  const first = Number((whole * share).toFixed(DECIMALS));
  const part = Math.min(first, whole);
  return [part, Number((whole - part).toPrecision(12))];
}

function bendsOfHalves(
  circuit: Circuit,
  wire: Wire,
  second: WireId,
  path: WirePath,
  along: GridUnits,
): readonly Change[] {
  const bends = circuit.placement.wires[wire.id];
  if (bends === undefined) return [];
  const [behind, ahead] = bendsCut(path, bends, along, SPLICE_HALF);
  const entry = { change: "entry", record: "bends" } as const;
  return [
    { ...entry, key: wire.id, ...(behind.length > 0 && { value: behind }) },
    ...(ahead.length > 0 ? [{ ...entry, key: second, value: ahead }] : []),
  ];
}
