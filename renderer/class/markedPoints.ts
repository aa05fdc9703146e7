import type { PointId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { TerminalSpot } from "../../core/circuit/placeSymbol.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { CAP_HEIGHT, pointsToGrid } from "../../core/drawing/type.ts";
import type { Look, Side } from "../../core/parts/kind.ts";
import { standingOn } from "../canvas/standing.ts";
import { FULL_SIZE } from "../canvas/viewport.ts";

/** What is marked of a page, and how high words on it are. */
interface Marked {
  readonly circuit: Circuit;
  readonly page: string;
  readonly look: Look;
  readonly marked?: readonly PointId[];
  /** Pixels. */
  readonly words: number;
}

const LETTERS = ["A", "B"] as const;
/** Side of a flag and its corners, in heights of a word; points of a pixel at 100 %. */
const SIDE = 1.15;
const CORNER = 0.25;
const PIXEL_POINTS = 0.75;
/** From the terminal to the middle of its flag, in sides of a flag. */
const OFF_TERMINAL = 0.9;

const OUTWARD: Readonly<Record<Side, readonly [x: number, y: number]>> = {
  up: [0, -1],
  down: [0, 1],
  left: [-1, 0],
  right: [1, 0],
};

/** The points that a class is asked about: a dark flag on the wire, with a letter in it. */
export function markedPoints(about: Marked, zoom: number): readonly Mark[] {
  const { circuit, page, look, marked = [], words } = about;
  const { spots } = standingOn(circuit, page, look);
  const side = gridUnitsOf((SIDE * words) / FULL_SIZE / zoom);
  const points = (words * PIXEL_POINTS) / zoom;
  return marked.flatMap((point, at): readonly Mark[] => {
    const spot = spots.get(point);
    return spot ? flag(spot, LETTERS[at] ?? "", side, points) : [];
  });
}

/** A square on the wire, off its terminal. */
function flag({ x, y, side: towards }: TerminalSpot, letter: string, side: number, points: number): readonly Mark[] {
  const [along, down] = OUTWARD[towards];
  const middle = { x: x + along * side * OFF_TERMINAL, y: y + down * side * OFF_TERMINAL };
  return [
    {
      mark: "box",
      at: { x: middle.x - side / 2, y: middle.y - side / 2 },
      width: side,
      height: side,
      corner: side * CORNER,
      role: "solid",
      filled: true,
    },
    {
      mark: "text",
      at: { x: middle.x, y: middle.y + (pointsToGrid(points) * CAP_HEIGHT) / 2 },
      text: letter,
      points,
      weight: 600,
      anchor: "middle",
      role: "paper",
    },
  ];
}
