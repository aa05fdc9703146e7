import type { Millimetres, Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt } from "../circuit/points.ts";
import type { PositionRow, PositionTable } from "../diagnose/positionTable.ts";
import type { Fault } from "../live/fault.ts";
import { restVoltsOf } from "../live/restVolts.ts";
import { cautionFrame } from "./cautionFrame.ts";
import { tableCautions } from "./cautions.ts";
import { type Drawn, outline, ruled, stroke, together } from "./cell.ts";
import { circuitTitle } from "./facts.ts";
import { putInWords } from "./faultWords.ts";
import { type Block, gapBlock, glued, gridRow } from "./grid.ts";
import { BODY_BOTTOM, type Facts, SHEET, type Sheet } from "./page.ts";
import { voltsText } from "./range.ts";
import { bodyTops, sheetsOf } from "./sheets.ts";
import { TYPE } from "./sizes.ts";
import { pinCell, positionCell, TABLE_COLUMNS, TABLE_LEFT } from "./tableCell.ts";
import { cutTable, type TablePart } from "./tableCut.ts";
import { tableEnd } from "./tableEnd.ts";
import { tableFront } from "./tableFront.ts";
import { type ColumnHead, tableHead } from "./tableHead.ts";
import { columnHeads, MOST_SAME, sameNotes } from "./tableWords.ts";

/** What a position table is printed from. */
export interface TableInput {
  readonly circuit: Circuit;
  readonly table: PositionTable;
  /** Faults that the table was worked out with. */
  readonly faults?: readonly Fault[];
  /** The complaint in the customer's words, where the table belongs to one. */
  readonly complaintLabel?: string;
  /** The day in words; left to be written by hand where absent. */
  readonly date?: string;
  /** Volts of the battery at rest that the table was worked out for; the circuit's own where absent. */
  readonly restVolts?: Volts;
}

const ROW: Millimetres = 24;
/** The most that legend and notes may take below the rows of a sheet. */
const MOST_END: Millimetres = 60;

/**
 * The printed position table: head, cautions, the plug's face, then pins by positions with a field for each reading. More
 * than ten positions, or more pins than a sheet holds, go on on further sheets under the same head.
 */
export function tableSheets(input: TableInput): readonly Sheet[] {
  const { circuit, table } = input;
  const facts = factsOf(input);
  const { first, later } = bodyTops(facts);
  const front = glued(cautionFrame(tableCautions(circuit, table)), tableFront(circuit, table));
  const most = Math.floor((SHEET.width - 2 * TABLE_LEFT - TABLE_COLUMNS.pin) / TABLE_COLUMNS.position);
  const heads = columnHeads(circuit, table);
  const parts = spansOf(heads, most).map(([from, to]) => partOf(input, heads, from, to));
  const bodies = cutTable({ front, parts, firstTop: first, laterTop: later, bottom: BODY_BOTTOM });
  return sheetsOf(
    facts,
    bodies.map((laid) => together(...laid.map(({ block, top }) => block.draw(top)))),
  );
}

/**
 * Which columns go side by side, at most so many, as few times as can be: those with the plug on apart from those with it off
 * where that takes no sheet more, and else as many on each, so that none is left alone.
 */
function spansOf(heads: readonly ColumnHead[], most: number): readonly (readonly [number, number])[] {
  const sheets = (count: number): number => Math.ceil(count / most);
  const evenly = (from: number, count: number): readonly (readonly [number, number])[] => {
    const parts = sheets(count);
    return Array.from({ length: parts }, (_, i) => [
      from + Math.ceil((i * count) / parts),
      from + Math.ceil(((i + 1) * count) / parts),
    ]);
  };
  const off = heads.findIndex(({ plugged }) => !plugged);
  const [on, all] = [off < 0 ? heads.length : off, heads.length];
  if (all <= most) return [[0, all]];
  return sheets(on) + sheets(all - on) > sheets(all) ? evenly(0, all) : [...evenly(0, on), ...evenly(on, all - on)];
}

function factsOf({ circuit, table, faults = [], complaintLabel, date, restVolts }: TableInput): Facts {
  const volts = restVolts ?? restVoltsOf(circuit);
  const id = table.connector;
  const title = WORDS.positionTable(connectorAt(circuit, id) ? WORDS.connector(id) : id);
  return {
    title: faults.length === 0 ? title : `${title}, ${putInWords(circuit, faults)}`,
    vehicle: circuit.vehicle ?? "",
    complaint: complaintLabel ?? "",
    circuit: circuitTitle(circuit),
    date: date ?? "",
    restVolts: volts,
    nominalVolts: circuit.nominalVolts,
    meaning: [WORDS.noColumnNames, WORDS.atRest],
    hint: [[WORDS.tableSpread(voltsText(volts)), TYPE.small]],
  };
}

/** The columns from one to another: their heads, their rows, and what stands under them. */
function partOf({ circuit, table }: TableInput, heads: readonly ColumnHead[], from: number, to: number): TablePart {
  const shown = heads.slice(from, to);
  const width = TABLE_COLUMNS.pin + shown.length * TABLE_COLUMNS.position;
  return {
    head: glued(gapBlock(1), topped(tableHead(table.connector, shown), width)),
    rows: table.rows.map((row) => sided(rowBlock(circuit, row, shown, from), width)),
    end: withEdges(endOf(circuit, table, [from, to]), (top) =>
      ruled(stroke("table", TABLE_LEFT, top, TABLE_LEFT + width, top)),
    ),
  };
}

/** What stands under the rows; without the names of what reads the same where they would leave too little room. */
function endOf(circuit: Circuit, table: PositionTable, span: readonly [number, number]): Block {
  const full = tableEnd(table, sameNotes(circuit, table, span, MOST_SAME));
  return full.height <= MOST_END ? full : tableEnd(table, sameNotes(circuit, table, span, 0));
}

function rowBlock(circuit: Circuit, row: PositionRow, heads: readonly ColumnHead[], from: number): Block {
  const cells = heads.flatMap(({ plugged }, i) => {
    const cell = row.cells[from + i];
    return cell ? [positionCell(cell, plugged)] : [];
  });
  return gridRow(ROW, [pinCell(circuit, row), ...cells], TABLE_LEFT);
}

/** The head of a table within its heavy frame. */
function topped(head: Block, width: Millimetres): Block {
  return withEdges(head, (top) => ruled(outline("table", { x: TABLE_LEFT, y: top, width, height: head.height })));
}

/** A row with the heavy sides of the table and the line below it. */
function sided(row: Block, width: Millimetres): Block {
  return withEdges(row, (top) => {
    const bottom = top + row.height;
    const [left, right] = [TABLE_LEFT + 0.25, TABLE_LEFT + width - 0.25];
    return ruled(
      stroke("table", left, top, left, bottom + 0.1),
      stroke("table", right, top, right, bottom + 0.1),
      stroke("rule", TABLE_LEFT, bottom, TABLE_LEFT + width, bottom),
    );
  });
}

function withEdges(block: Block, edges: (top: Millimetres) => Drawn): Block {
  return { height: block.height, draw: (top) => together(block.draw(top), edges(top)) };
}
