import type { Millimetres } from "../base/units.ts";
import { outline } from "./cell.ts";
import type { Face, FacePlace } from "./face.ts";
import type { FaceBlock } from "./faceBlock.ts";
import { type FaceSize, type PlaceDrawer, SMALL_FACE, shellPiece } from "./facePiece.ts";
import { lineMark, linesOf, paragraph, widthMm } from "./lines.ts";
import { beside, type Piece, stack } from "./piece.ts";
import { TYPE, type TypeSize } from "./sizes.ts";

/** Places large enough to carry number and colour code. */
const BIG_FACE: FaceSize = { cavity: 12, gap: 0.6, rim: 1.1, mostAcross: 14, mostDown: 5 };
/** Places of a plug too wide or high for that: numbers alone, the colours stand in the table. */
const PLAIN_FACE: FaceSize = { ...SMALL_FACE, mostAcross: 30, mostDown: 14 };
const TEXT_ROOM: Millimetres = 0.8;
const BETWEEN: Millimetres = 5;

/** Faces side by side, as large as the room allows, with the width they take. */
export function bigFaces(
  faces: readonly Face[],
  room: Millimetres,
): { readonly piece: Piece; readonly width: Millimetres } {
  const big = faces.map((face) => faceDrawn(face, BIG_FACE, faces.length > 1));
  const whole = faces.every((face) => isWhole(face, BIG_FACE)) && widthOf(big) <= room;
  const drawn = whole ? big : faces.map((face) => faceDrawn(face, PLAIN_FACE, faces.length > 1));
  const width = widthOf(drawn);
  if (width > room)
    return {
      piece: stack(
        drawn.map(({ piece }) => piece),
        2,
      ),
      width: Math.max(...drawn.map((each) => each.width)),
    };
  let x = 0;
  const placed = drawn.map((each) => {
    const at = { x, piece: each.piece };
    x += each.width + BETWEEN;
    return at;
  });
  return { piece: beside(placed), width };
}

interface DrawnFace {
  readonly piece: Piece;
  readonly width: Millimetres;
}

function widthOf(faces: readonly DrawnFace[]): Millimetres {
  return faces.reduce((sum, { width }) => sum + width, 0) + BETWEEN * Math.max(0, faces.length - 1);
}

function columnsOf({ rows }: Face): number {
  return Math.max(1, ...rows.map((row) => row.length));
}

function isWhole(face: Face, size: FaceSize): boolean {
  return columnsOf(face) <= size.mostAcross && face.rows.length <= size.mostDown;
}

/** A face of this size; one wider or higher than its limits is cut off at the right and below. */
function faceDrawn(face: Face, size: FaceSize, named: boolean): DrawnFace {
  const isBig = size === BIG_FACE;
  const places = face.rows.flat().filter((place) => place !== null);
  const widest = Math.max(0, ...places.map(({ name }) => widthMm(name, numberType(true, isBig)))) + TEXT_ROOM * 2;
  const width = Math.min(Math.max(size.cavity, widest), 3 * size.cavity);
  const height = Math.max(size.cavity, ...places.map((place) => contentHeight(place, width, isBig) + 1.2));
  const across = Math.min(
    columnsOf(face),
    Math.max(1, Math.floor((170 + size.gap) / (width + size.gap))),
    size.mostAcross,
  );
  const down = Math.min(face.rows.length, Math.max(1, Math.floor(80 / height)), size.mostDown);
  const block: FaceBlock = {
    rows: face.rows.slice(0, down).map((row) => Array.from({ length: across }, (_, i) => row[i] ?? null)),
    cutLeft: false,
    cutTop: false,
    cutRight: across < columnsOf(face),
    cutBottom: down < face.rows.length,
  };
  const drawer: PlaceDrawer = (place, x, y, w, h) => placeMarks(place, x, y, w, h, isBig);
  const total = across * width + (across - 1) * size.gap + 2 * size.rim;
  const shell = shellPiece(block, { ...size, width, height }, face.hasLatch, drawer, total);
  const caption = named ? [paragraph(face.caption, TYPE.caption, total, "middle")] : [];
  return { width: total, piece: stack([shell, ...caption], 0.6) };
}

function numberType(isWired: boolean, isBig: boolean): TypeSize {
  if (!isWired) return TYPE.cavityEmpty;
  return isBig ? TYPE.bigPin : TYPE.cavity;
}

interface Line {
  readonly words: string;
  readonly type: TypeSize;
}

function contentLines({ name, colour, isWired }: FacePlace, width: Millimetres, isBig: boolean): readonly Line[] {
  const room = width - TEXT_ROOM;
  const type = numberType(isWired, isBig);
  const numbers = linesOf(name, type, room).map((words) => ({ words, type }));
  if (!isBig || colour === null || colour === "") return numbers;
  return [...numbers, ...linesOf(colour, TYPE.bigColour, room).map((words) => ({ words, type: TYPE.bigColour }))];
}

const LINE_GAP: Millimetres = 0.7;

function contentHeight(place: FacePlace, width: Millimetres, isBig: boolean): Millimetres {
  const lines = contentLines(place, width, isBig);
  return lines.reduce((sum, { type }) => sum + type.line, 0) + LINE_GAP * Math.max(0, lines.length - 1);
}

function placeMarks(
  place: FacePlace,
  x: Millimetres,
  y: Millimetres,
  width: Millimetres,
  height: Millimetres,
  isBig: boolean,
) {
  let top = y + (height - contentHeight(place, width, isBig)) / 2;
  const lines = contentLines(place, width, isBig).map(({ words, type }) => {
    const mark = lineMark(words, type, x + width / 2, top, { anchor: "middle" });
    top += type.line + LINE_GAP;
    return mark;
  });
  return [outline(place.isWired ? "rule" : "rule-dotted", { x, y, width, height }), ...lines];
}
