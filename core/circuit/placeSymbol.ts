import type { PartId, PointId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { Anchor, Mark, Spot, TextMark } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import { CAP_HEIGHT, pointsToGrid, textWidth } from "../drawing/type.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Look, Side, SymbolShape } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit, PartPlace } from "./circuit.ts";
import { terminalPoint, wireSideOf } from "./points.ts";
import { restPose } from "./sheetPose.ts";

/** Where a wire meets a terminal on the page. */
export interface TerminalSpot extends Spot {
  readonly side: Side;
  readonly part: PartId;
  readonly terminal: string;
}

/** A symbol as it stands on its page, in page coordinates. Its place is the top left of the turned outline. */
export interface PlacedShape {
  readonly outline: Bounds;
  readonly terminals: Readonly<Record<string, Spot & { readonly side: Side }>>;
  readonly marks: readonly Mark[];
  readonly bar?: readonly [Spot, Spot];
  readonly nameAt: Spot & { readonly anchor: Anchor };
}

const CLOCKWISE: readonly Side[] = ["up", "right", "down", "left"];

/** The symbol flipped left to right where the place says so, then turned clockwise and moved there. Type stays upright. */
export function placeSymbol(shape: SymbolShape, place: PartPlace): PlacedShape {
  const turn = place.turn ?? 0;
  const isFlipped = place.flip === true;
  const isLying = turn === 90 || turn === 270;
  const corner = { x: Math.round(place.x), y: Math.round(place.y) };
  const move = (spot: Spot): Spot => {
    if (turn === 0 && !isFlipped) return { x: corner.x + spot.x, y: corner.y + spot.y };
    const { x, y } = turned(isFlipped ? { x: shape.width - spot.x, y: spot.y } : spot, shape, turn);
    return { x: corner.x + x, y: corner.y + y };
  };
  const sideOf = (side: Side): Side => {
    const flipped = isFlipped && (side === "left" || side === "right") ? (side === "left" ? "right" : "left") : side;
    return CLOCKWISE[(CLOCKWISE.indexOf(flipped) + turn / 90) % 4]!;
  };
  const swaps = isFlipped !== (turn === 180);
  return {
    outline: {
      left: corner.x,
      top: corner.y,
      right: corner.x + (isLying ? shape.height : shape.width),
      bottom: corner.y + (isLying ? shape.width : shape.height),
    },
    terminals: Object.fromEntries(
      Object.entries(shape.terminals).map(([name, spot]) => [name, { ...move(spot), side: sideOf(spot.side) }]),
    ),
    marks: shape.marks.map((mark) => moved(mark, { move, turn, isFlipped, isLying, swaps })),
    ...(shape.bar && { bar: [move(shape.bar[0]), move(shape.bar[1])] as const }),
    nameAt: {
      ...move(shape.nameAt),
      anchor: isLying ? "middle" : swaps ? mirrored(shape.nameAt.anchor) : shape.nameAt.anchor,
    },
  };
}

/** Every placed terminal of a page by the point where its wires end: the cavity that carries it, or the terminal. */
export function terminalSpots(circuit: Circuit, page: string, look: Look = "iec"): ReadonlyMap<PointId, TerminalSpot> {
  const spots = new Map<PointId, TerminalSpot>();
  for (const part of circuit.parts) {
    const place = circuit.placement.parts[part.id];
    const kind = kindOf(part.kind);
    if (place?.page !== page || kind === undefined) continue;
    const view = viewOf(kind, part, circuit.nominalVolts);
    const placed = placeSymbol(kind.symbol(view, restPose(kind, view), look), place);
    for (const [terminal, spot] of Object.entries(placed.terminals)) {
      const point = terminalPoint(part, terminal);
      const at = { ...spot, part: part.id, terminal };
      spots.set(point, at);
      spots.set(wireSideOf(circuit, point), at);
    }
  }
  return spots;
}

function turned({ x, y }: Spot, { width, height }: { width: GridUnits; height: GridUnits }, turn: number): Spot {
  if (turn === 90) return { x: height - y, y: x };
  if (turn === 180) return { x: width - x, y: height - y };
  if (turn === 270) return { x: y, y: width - x };
  return { x, y };
}

function mirrored(anchor: Anchor): Anchor {
  return anchor === "start" ? "end" : anchor === "end" ? "start" : "middle";
}

interface Movement {
  readonly move: (spot: Spot) => Spot;
  readonly turn: number;
  readonly isFlipped: boolean;
  readonly isLying: boolean;
  /** True where left and right change places, so that anchors do too. */
  readonly swaps: boolean;
}

function moved(mark: Mark, movement: Movement): Mark {
  const { move, turn, isFlipped, isLying } = movement;
  switch (mark.mark) {
    case "line":
      return { ...mark, spots: mark.spots.map(move) };
    case "circle":
      return { ...mark, at: move(mark.at) };
    case "arc": {
      const [from, to] = isFlipped ? [180 - mark.to, 180 - mark.from] : [mark.from, mark.to];
      return { ...mark, at: move(mark.at), from: from + turn, to: to + turn };
    }
    case "box":
    case "swatch": {
      const one = move(mark.at);
      const other = move({ x: mark.at.x + mark.width, y: mark.at.y + mark.height });
      const at = { x: Math.min(one.x, other.x), y: Math.min(one.y, other.y) };
      const [width, height] = isLying ? [mark.height, mark.width] : [mark.width, mark.height];
      return { ...mark, at, width, height };
    }
    case "text":
      return movedText(mark, movement);
  }
}

/** Type keeps its place beside what it names: its middle moves with the symbol, its letters stay upright. */
function movedText(mark: TextMark, { move, turn, isFlipped, isLying, swaps }: Movement): Mark {
  if (turn === 0 && !isFlipped) return { ...mark, at: move(mark.at) };
  const rise = (pointsToGrid(mark.points) * CAP_HEIGHT) / 2;
  const width = textWidth(mark.text, mark.points, mark.weight);
  const reach = mark.anchor === "start" ? width / 2 : mark.anchor === "end" ? -width / 2 : 0;
  const middle = move({ x: mark.at.x + (isLying ? reach : 0), y: mark.at.y - rise });
  const anchor = isLying ? "middle" : swaps ? mirrored(mark.anchor) : mark.anchor;
  return { ...mark, at: { x: middle.x, y: middle.y + rise }, anchor };
}
