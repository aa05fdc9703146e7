import type { PartId, PointId } from "../base/ids.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Side } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { ArrangeEdge, ArrangeNode, ArrangePose, ArrangeQuestion } from "./arrange.ts";
import { type Turned, turnsFor } from "./arrangeTurn.ts";
import type { Circuit, PartPlace } from "./circuit.ts";
import { heightsOf } from "./heights.ts";
import { type PlacedShape, placeSymbol } from "./placeSymbol.ts";
import { type PagePart, type PageSpot, type SheetPage, sheetPage, terminalKey } from "./sheetPage.ts";
import { waysAcross } from "./sheetRoutes.ts";

/**
 * The layout question of a page: the parts that may move, and those that stay and are wired to them. Wires point from
 * feeds towards ground; parts are turned so that their feed side is up.
 */
export function arrangeQuestion(circuit: Circuit, page: string, mayMove: ReadonlySet<PartId>): ArrangeQuestion {
  const sheet = sheetPage(circuit, page, "iec");
  const heights = heightsOf(circuit);
  const inside = sheet.wires.flatMap(({ wire, ends: [from, to] }) => {
    const counts = from && to && from.part !== to.part && (mayMove.has(from.part) || mayMove.has(to.part));
    return counts ? [{ wire, from, to }] : [];
  });
  const wired = new Set(inside.flatMap(({ from, to }) => [from.part, to.part]));
  const asked = { circuit, sheet, heights };
  const nodes = sheet.parts.flatMap((part): readonly ArrangeNode[] => {
    const isFree = mayMove.has(part.part.id);
    return isFree || wired.has(part.part.id) ? [nodeOf(asked, part, isFree)] : [];
  });
  const sides = new Map(nodes.flatMap(({ poses: [{ ports }] }) => ports.map(({ id, side }) => [id, side] as const)));
  const edges = inside.map(({ wire, from, to }): ArrangeEdge => {
    const facing = fallsAsFaced(sides.get(keyOf(from)), sides.get(keyOf(to)));
    const falls = facing ?? heights.get(wire.from)! >= heights.get(wire.to)!;
    const [upper, lower] = falls ? [from, to] : [to, from];
    return {
      id: wire.id,
      from: keyOf(upper),
      to: keyOf(lower),
      nodes: [upper.part, lower.part],
    };
  });
  return { page, nodes, edges };
}

const keyOf = ({ part, terminal }: PageSpot): string => terminalKey(part, terminal);

/** A foot of one part and a head of another face each other where the first stands above; null where neither does. */
function fallsAsFaced(from: Side | undefined, to: Side | undefined): boolean | null {
  if (from === "down" && to === "up") return true;
  return from === "up" && to === "down" ? false : null;
}

interface Asked {
  readonly circuit: Circuit;
  readonly sheet: SheetPage;
  /** Of the ends of wires, from 1 at a feed to 0 at a body. */
  readonly heights: ReadonlyMap<PointId, number>;
}

function nodeOf(asked: Asked, { part, kind, rest }: PagePart, isFree: boolean): ArrangeNode {
  const { circuit, sheet } = asked;
  const place = circuit.placement.parts[part.id]!;
  const view = viewOf(kind, part, circuit.nominalVolts);
  const symbol = kind.symbol(view, rest, "iec");
  const shape = ({ turn, flip }: Turned): PlacedShape => placeSymbol(symbol, { ...place, turn, flip });
  const isSource = kind.role === "source";
  const pull = (terminal: string): number | null => {
    const rise = pullAt(asked, part.id, terminal);
    // From the plus of a source everything falls; the plus itself stands up.
    return rise !== null && isSource ? -rise : rise;
  };
  const now = { turn: place.turn ?? 0, flip: place.flip ?? false };
  const turns = isFree
    ? turnsFor({ now, shape, pull, joinsOnly: kind.role === "join", isUpright: isSource })
    : ([now] as const);
  const posed = ({ turn, flip }: Turned): ArrangePose => {
    const placed = shape({ turn, flip });
    const { outline, terminals } = placed;
    const ports = Object.entries(terminals).flatMap(([terminal, { x, y, side }]) => {
      const id = terminalKey(part.id, terminal);
      return sheet.wiresAt.has(id) ? [{ id, x: x - outline.left, y: y - outline.top, side }] : [];
    });
    const across = waysAcross(placed).map(({ left, top, right, bottom }): Bounds => {
      return {
        left: left - outline.left,
        top: top - outline.top,
        right: right - outline.left,
        bottom: bottom - outline.top,
      };
    });
    return { turn, flip, width: outline.right - outline.left, height: outline.bottom - outline.top, ports, across };
  };
  const [first, ...others] = turns;
  return {
    id: part.id,
    place,
    poses: [posed(first), ...others.map(posed)],
    isFixed: !isFree,
  };
}

/** How far the wires of a terminal rise from it, in the mean; null where they lead nowhere on this page. */
function pullAt({ sheet, heights }: Asked, part: PartId, terminal: string): number | null {
  const rises = (sheet.wiresAt.get(terminalKey(part, terminal)) ?? []).flatMap(({ wire, end }) => {
    const [own, far] = end === 0 ? [wire.from, wire.to] : [wire.to, wire.from];
    const spot = sheet.spots.get(far);
    return spot && spot.part !== part ? [heights.get(far)! - heights.get(own)!] : [];
  });
  return rises.length === 0 ? null : rises.reduce((sum, rise) => sum + rise, 0) / rises.length;
}

/** A part's place with the turn of a pose and another corner; what is not so is not written. */
export function placeIn(place: PartPlace, { turn, flip }: Turned, corner: { readonly x: number; readonly y: number }) {
  const { turn: _, flip: __, ...rest } = place;
  return {
    ...rest,
    x: corner.x,
    y: corner.y,
    ...(turn !== 0 && { turn }),
    ...(flip && { flip }),
  } satisfies PartPlace;
}
