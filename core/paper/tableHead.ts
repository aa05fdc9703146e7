import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { inCell, ruled, stroke, together } from "./cell.ts";
import { type Block, type GridCell, gridRow } from "./grid.ts";
import { paragraph } from "./lines.ts";
import { type Piece, stack } from "./piece.ts";
import { TYPE } from "./sizes.ts";
import { TABLE_COLUMNS, TABLE_LEFT } from "./tableCell.ts";

/** The words over one column. */
export interface ColumnHead {
  readonly title: string;
  readonly under: string;
  readonly plugged: boolean;
}

const GROUP: Millimetres = 5;
const TITLE: Millimetres = 9;
const PAD: Millimetres = 0.5;

/** The heads of a table's columns: plug on and plug off over what stands in each position. */
export function tableHead(connector: string, columns: readonly ColumnHead[]): Block {
  const left = TABLE_LEFT + TABLE_COLUMNS.pin;
  const right = left + columns.length * TABLE_COLUMNS.position;
  const groups = gridRow(
    GROUP,
    groupsOf(columns).map((group) => groupCell(connector, group)),
    left,
  );
  const titles = gridRow(TITLE, columns.map(titleCell), left);
  const height = groups.height + titles.height;
  const corner = stack([
    paragraph(WORDS.pin, TYPE.tableColumn, TABLE_COLUMNS.pin),
    paragraph(WORDS.wireLeadsTo, TYPE.tableUnder, TABLE_COLUMNS.pin),
  ]);
  return {
    height,
    draw(top) {
      const middle = top + groups.height;
      const box = { x: TABLE_LEFT, y: top, width: TABLE_COLUMNS.pin, height };
      return together(
        inCell("pin title", box, corner.at(TABLE_LEFT + 1.6, top + (height - corner.height) / 2)),
        groups.draw(top),
        titles.draw(middle),
        ruled(
          stroke("rule-fine", left, top, left, top + height),
          stroke("rule-fine", left, middle, right, middle),
          stroke("table", TABLE_LEFT, top + height, right, top + height),
        ),
      );
    },
  };
}

interface Group {
  readonly plugged: boolean;
  readonly count: number;
}

function groupsOf(columns: readonly ColumnHead[]): readonly Group[] {
  const groups: { plugged: boolean; count: number }[] = [];
  for (const { plugged } of columns) {
    const last = groups.at(-1);
    if (last?.plugged === plugged) last.count++;
    else groups.push({ plugged, count: 1 });
  }
  return groups;
}

function groupCell(connector: string, { plugged, count }: Group): GridCell {
  const words = plugged ? WORDS.plugOn(connector) : WORDS.plugOff(connector);
  const width = count * TABLE_COLUMNS.position;
  return centred("plug", width, paragraph(words, TYPE.tableGroup, width - 2 * PAD, "middle"));
}

function titleCell({ title, under }: ColumnHead): GridCell {
  const width = TABLE_COLUMNS.position;
  const room = width - 2 * PAD;
  return centred(
    "position title",
    width,
    stack([paragraph(title, TYPE.tableColumn, room, "middle"), paragraph(under, TYPE.tableUnder, room, "middle")]),
  );
}

function centred(name: string, width: Millimetres, piece: Piece): GridCell {
  return { name, width, padX: PAD, padY: 0.4, middle: true, piece };
}
