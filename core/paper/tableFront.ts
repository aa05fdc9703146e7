import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt, isInLine, parsePoint, partAt } from "../circuit/points.ts";
import type { PositionTable } from "../diagnose/positionTable.ts";
import { groupsToOpen, reachOf } from "../diagnose/testPoint.ts";
import { bigFaces } from "./bigFace.ts";
import { inCell, together } from "./cell.ts";
import { connectorFace, type Face, faceOf } from "./face.ts";
import type { Block } from "./grid.ts";
import { leadParagraph, paragraph } from "./lines.ts";
import { SHEET } from "./page.ts";
import { type Piece, space, stack } from "./piece.ts";
import { partName } from "./places.ts";
import { plainNumber } from "./range.ts";
import { TYPE } from "./sizes.ts";

const ABOVE: Millimetres = 2.5;
const BELOW: Millimetres = 2.5;
const BETWEEN: Millimetres = 5;
/** The least width of the text beside the face; a wider face stands below it. */
const LEAST_TEXT: Millimetres = 100;

/** How to read the table, and the face of the plug, large, with the colour of each wire. */
export function tableFront(circuit: Circuit, table: PositionTable): Block {
  const faces = facesOf(circuit, table);
  const face = bigFaces(faces, SHEET.width);
  const hasEmpty = faces.some(({ rows }) => rows.flat().some((place) => place && !place.isWired));
  const beside = SHEET.width - face.width - BETWEEN;
  const isBeside = beside >= LEAST_TEXT;
  const textWidth = isBeside ? beside : SHEET.width;
  const words = wordsPiece(circuit, table, faces, hasEmpty, textWidth);
  const inner = isBeside ? Math.max(words.height, face.piece.height) : words.height + BETWEEN / 2 + face.piece.height;
  return {
    height: ABOVE + inner + BELOW,
    draw(top) {
      const y = top + ABOVE;
      const faceY = isBeside ? y : y + words.height + BETWEEN / 2;
      const faceX = isBeside ? SHEET.width - face.width - 1 : 0;
      const faceBox = { x: faceX, y: faceY, width: face.width + 1, height: face.piece.height };
      const wordsBox = { x: 0, y, width: textWidth, height: words.height };
      return together(
        inCell("how to read", wordsBox, words.at(0, y)),
        inCell("face", faceBox, face.piece.at(faceX, faceY)),
      );
    },
  };
}

function wordsPiece(
  circuit: Circuit,
  table: PositionTable,
  faces: readonly Face[],
  hasEmpty: boolean,
  width: Millimetres,
): Piece {
  const opens = opensText(circuit, table);
  const face = hasEmpty ? `${WORDS.faceWords} ${WORDS.emptyPlace}` : WORDS.faceWords;
  return stack([
    paragraph(titleOf(circuit, table, faces), TYPE.tableTitle, width),
    space(0.4),
    paragraph(opens, TYPE.body, width),
    paragraph(face, TYPE.body, width),
    paragraph(WORDS.cellWords, TYPE.body, width),
    leadParagraph(WORDS.driftsLead, WORDS.driftsWords, TYPE.body, width),
  ]);
}

/** Each distinct face that the table's pins lie on: one, or both halves of an in-line joint. */
function facesOf(circuit: Circuit, table: PositionTable): readonly Face[] {
  const faces = new Map<string, Face>();
  for (const { point } of table.rows) {
    const face = faceOf(circuit, point);
    if (!faces.has(face.caption)) faces.set(face.caption, face);
  }
  return faces.size > 0 ? [...faces.values()] : [connectorFace(circuit, table.connector)];
}

/** "X5, Middle vent switch S5, 2 rows of 3". */
function titleOf(circuit: Circuit, { connector }: PositionTable, faces: readonly Face[]): string {
  const rows = faces[0]?.rows ?? [];
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const part = partAt(circuit, connector);
  const carried = Object.values(connectorAt(circuit, connector)?.cavities ?? {})[0];
  const found = carried === undefined ? null : parsePoint(circuit, carried);
  const owner = part && isInLine(part) ? part : found?.ok && found.value.kind === "terminal" ? found.value.part : part;
  const shape = rows.length === 0 ? "" : `, ${WORDS.rowsOf(rows.length, columns)}`;
  const place = owner && owner.id !== connector ? `, ${partName(owner)}` : owner?.label ? `, ${owner.label}` : "";
  return `${connector}${place}${shape}`;
}

/** What comes off to reach the plug, with its minutes; empty where it lies free. */
function opensText(circuit: Circuit, { connector, rows }: PositionTable): string {
  const access = [connector, ...rows.map(({ point }) => point)]
    .map((point) => reachOf(circuit, point).access)
    .find((each) => each !== undefined);
  const groups = access === undefined ? [] : groupsToOpen(circuit, access);
  return groups.map(({ label, minutes }) => WORDS.opensIn(label.replace(/\.$/, ""), plainNumber(minutes))).join(" ");
}
