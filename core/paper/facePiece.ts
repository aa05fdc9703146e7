import type { PointId } from "../base/ids.ts";
import type { Millimetres } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { lineWidth, outline, solidBox, stroke } from "./cell.ts";
import type { Face, FacePlace } from "./face.ts";
import { blockOf, type FaceBlock } from "./faceBlock.ts";
import { lineMark, linesOf, paragraph, widthMm } from "./lines.ts";
import type { Piece } from "./piece.ts";
import { TYPE, type TypeSize } from "./sizes.ts";

/** How large the places of a face are drawn, and how many of them at most. */
export interface FaceSize {
  readonly cavity: Millimetres;
  readonly gap: Millimetres;
  /** Room inside the shell round the places. */
  readonly rim: Millimetres;
  readonly mostDown: number;
  readonly mostAcross: number;
}

/** The face beside a row: places of 5 mm, cut to a block of four across and three down. */
export const SMALL_FACE: FaceSize = { cavity: 5, gap: 0.5, rim: 1.25, mostAcross: 4, mostDown: 3 };

/** Room at the sides of a number inside its place. */
const NUMBER_ROOM: Millimetres = 0.7;
const LATCH: { readonly width: Millimetres; readonly height: Millimetres } = { width: 8, height: 1.5 };
const SHELL_CORNER: Millimetres = 1.3;

/** Draws the inside of one place: its box is at x, y. */
export type PlaceDrawer = (
  place: FacePlace,
  x: Millimetres,
  y: Millimetres,
  width: Millimetres,
  height: Millimetres,
) => readonly Mark[];

/** The face of a row in this width: red pin solid, black pin ringed, latch up, its name below. */
export function facePiece(face: Face, red: PointId, black: PointId, room: Millimetres): Piece {
  const size = SMALL_FACE;
  const names = face.rows.flat().flatMap((place) => (place ? [place.name] : []));
  const widest = Math.max(...names.map((name) => widthMm(name, TYPE.cavityMarked)), 0) + 2 * NUMBER_ROOM;
  const width = Math.min(Math.max(size.cavity, widest), room - 2 * size.rim);
  const across = Math.floor((room - 2 * size.rim + size.gap) / (width + size.gap));
  const block = blockOf(face, Math.max(1, Math.min(size.mostAcross, across)), size.mostDown, red, black);
  const lines = Math.max(...names.map((name) => linesOf(name, TYPE.cavityMarked, width - NUMBER_ROOM).length), 1);
  const height = Math.max(size.cavity, lines * TYPE.cavityMarked.line + 1.4);
  const drawer: PlaceDrawer = (place, x, y) => placeMarks(place, x, y, width, height, markOf(place.point, red, black));
  const shell = shellPiece(block, { ...size, width, height }, face.hasLatch, drawer, room);
  const caption = paragraph(face.caption, TYPE.caption, room, "middle");
  const gap = caption.height > 0 ? 0.6 : 0;
  return {
    height: shell.height + gap + caption.height,
    at: (x, y) => [...shell.at(x, y), ...caption.at(x, y + shell.height + gap)],
  };
}

type LeadMark = "red" | "black" | null;

function markOf(point: PointId, red: PointId, black: PointId): LeadMark {
  if (point === red) return "red";
  return point === black ? "black" : null;
}

function placeMarks(
  { name, isWired }: FacePlace,
  x: Millimetres,
  y: Millimetres,
  width: Millimetres,
  height: Millimetres,
  mark: LeadMark,
): readonly Mark[] {
  const box = { x, y, width, height };
  const type: TypeSize = mark ? TYPE.cavityMarked : isWired ? TYPE.cavity : TYPE.cavityEmpty;
  const lines = linesOf(name, type, width - NUMBER_ROOM);
  const top = y + (height - lines.length * type.line) / 2;
  const role = mark === "red" ? "paper" : "text";
  const numbers = lines.map((line, i) =>
    lineMark(line, type, x + width / 2, top + i * type.line, { anchor: "middle", role }),
  );
  if (mark === "red") return [solidBox(box), ...numbers];
  const edge = outline(mark === "black" ? "caution" : isWired ? "rule" : "rule-dotted", box);
  return [edge, ...numbers];
}

interface ShellSize extends FaceSize {
  readonly width: Millimetres;
  readonly height: Millimetres;
}

/** The shell with its latch and places, in the middle of the room. */
export function shellPiece(
  block: FaceBlock,
  size: ShellSize,
  hasLatch: boolean,
  drawer: PlaceDrawer,
  room: Millimetres,
): Piece {
  const across = Math.max(1, ...block.rows.map((row) => row.length));
  const down = block.rows.length;
  const width = across * size.width + (across - 1) * size.gap + 2 * size.rim;
  const height = down * size.height + (down - 1) * size.gap + 2 * size.rim;
  const latch = hasLatch && !block.cutTop ? LATCH.height : 0;
  return {
    height: latch + height,
    at(x, y) {
      const left = x + (room - width) / 2;
      const top = y + latch;
      const places = block.rows.flatMap((row, r) =>
        row.flatMap((place, c) => {
          if (!place) return [];
          const px = left + size.rim + c * (size.width + size.gap);
          const py = top + size.rim + r * (size.height + size.gap);
          return drawer(place, px, py, size.width, size.height);
        }),
      );
      const shell = shellMarks(block, left, top, width, height);
      return [...(latch > 0 ? [latchMark(left, y, width)] : []), ...shell, ...places];
    },
  };
}

function latchMark(left: Millimetres, y: Millimetres, width: Millimetres): Mark {
  const half = Math.min(LATCH.width, width * 0.6) / 2;
  const middle = left + width / 2;
  const bottom = y + LATCH.height + 0.2;
  return stroke("field", middle - half, bottom, middle - half, y + 0.2, middle + half, y + 0.2, middle + half, bottom);
}

/** A rounded shell, or four sides of which those that were cut are broken lines. */
function shellMarks(
  block: FaceBlock,
  x: Millimetres,
  y: Millimetres,
  width: Millimetres,
  height: Millimetres,
): readonly Mark[] {
  const { cutLeft, cutRight, cutTop, cutBottom } = block;
  if (!cutLeft && !cutRight && !cutTop && !cutBottom) {
    return [outline("field", { x, y, width, height }, SHELL_CORNER)];
  }
  const inset = lineWidth("field") / 2;
  const [left, top, right, bottom] = [x + inset, y + inset, x + width - inset, y + height - inset];
  const side = (isCut: boolean, ...ends: readonly [number, number, number, number]): Mark =>
    isCut ? brokenLine(...ends) : stroke("field", ...ends);
  return [
    side(cutTop, left, top, right, top),
    side(cutRight, right, top, right, bottom),
    side(cutBottom, right, bottom, left, bottom),
    side(cutLeft, left, bottom, left, top),
  ];
}

const TOOTH: Millimetres = 0.8;

/** The line along which a drawing is cut off: a zigzag between the straight line and a little to the right of its way. */
function brokenLine(x1: Millimetres, y1: Millimetres, x2: Millimetres, y2: Millimetres): Mark {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const teeth = 2 * Math.max(1, Math.round(length / 4.8));
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const xy: number[] = [];
  for (let i = 0; i <= teeth; i++) {
    const along = (length * i) / teeth;
    const off = i % 2 === 1 ? TOOTH : 0;
    xy.push(x1 + ux * along - uy * off, y1 + uy * along + ux * off);
  }
  return stroke("rule", ...xy);
}
