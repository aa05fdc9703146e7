import type { Millimetres } from "../base/units.ts";
import { GRADE_WORDS } from "../base/words/grade.ts";
import { PAPER_WORDS } from "../base/words/paper.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import type { ClassRow } from "../lesson/classRows.ts";
import type { TaskRow } from "../lesson/tasks.ts";
import { type Drawn, inCell, outline, ruled, stroke, together } from "./cell.ts";
import { columnTitles, drawBody } from "./checklist.ts";
import { fillSheets, type Place } from "./fill.ts";
import { type Block, type GridCell, gapBlock, glued, gridRow, roomIn } from "./grid.ts";
import { paragraph, type Runs, runs, runsWidth } from "./lines.ts";
import { BODY_BOTTOM, type CodedSheet, FOOT, SHEET } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import { sided } from "./row.ts";
import { sheetCode } from "./sheetCode.ts";
import { TYPE } from "./sizes.ts";

const WORDS = GRADE_WORDS.sheet;

/** Widths of the columns; together the width of the sheet. */
const COLUMNS = { learner: 42, result: 58, minutes: 22, readings: 22, remark: 42 } as const satisfies Readonly<
  Record<string, Millimetres>
>;
const TASK_COLUMNS = { learner: 42, done: 72, tried: 72 } as const satisfies Readonly<Record<string, Millimetres>>;
const ROW: Millimetres = 10;
const PAD: Millimetres = 1.2;

/** What the table of a class is printed from. */
export interface ClassPrint {
  readonly rows: readonly ClassRow[];
  /** Empty where the school has no list. */
  readonly tasks: readonly TaskRow[];
}

/** The hand-ins of a class as sheets, in the order given, with room for whose class it is; after them the task list. */
export function classSheets({ rows, tasks }: ClassPrint): readonly CodedSheet[] {
  const graded = rows.filter(({ result }) => result !== "").length;
  const titles = columnTitles(Object.values(COLUMNS), WORDS.columns);
  const places: Place[] = [{ bar: titles, again: titles, rows: rows.map(rowBlock) }];
  if (tasks.length > 0) {
    const heads = columnTitles(Object.values(TASK_COLUMNS), WORDS.taskColumns);
    places.push({ bar: glued(tasksBar(), heads), again: heads, rows: tasks.map(taskBlock) });
  }
  const number = (sheet: number, sheets: number, code: string) =>
    headBlock({ sheet, sheets, code }, rows.length, graded);
  const top = number(1, 1, "").height;
  const bodies = fillSheets({
    firstTop: top,
    laterTop: top,
    bottom: BODY_BOTTOM,
    first: gapBlock(1),
    later: gapBlock(1),
    places,
    endingHeight: 0,
    ending: () => gapBlock(0),
  }).map(drawBody);
  const code = sheetCode(bodies.map(({ marks }) => marks));
  return bodies.map((body, index) => {
    const [sheet, sheets] = [index + 1, bodies.length];
    const { marks, cells } = together(number(sheet, sheets, code).draw(0), body, foot(code, sheet, sheets));
    return {
      width: gridUnitsOf(SHEET.width),
      height: gridUnitsOf(SHEET.height),
      title: `${WORDS.title}, ${PAPER_WORDS.footSheet} ${PAPER_WORDS.sheetOf(sheet, sheets)}`,
      code,
      marks,
      cells,
    };
  });
}

interface Numbered {
  readonly sheet: number;
  readonly sheets: number;
  readonly code: string;
}

/** Title, count and number of the sheet, and a line to write on whose class it is. */
function headBlock({ sheet, sheets, code }: Numbered, handins: number, graded: number): Block {
  const [left, right] = [133.5, 160.5];
  const named = (name: string, width: Millimetres, words: string): GridCell => ({
    name,
    width,
    piece: stack([paragraph(name, TYPE.small, roomIn(width)), paragraph(words, TYPE.sheetNumber, roomIn(width))]),
  });
  const facts = stack([
    paragraph(WORDS.title, TYPE.title, roomIn(left)),
    paragraph(WORDS.facts(handins, graded), TYPE.small, roomIn(left)),
  ]);
  const rows = [
    gridRow(12, [
      { name: "title", width: left, piece: facts, middle: true },
      named(PAPER_WORDS.code, right - left, code),
      named(PAPER_WORDS.sheet, SHEET.width - right, PAPER_WORDS.sheetOf(sheet, sheets)),
    ]),
    gridRow(10, [
      { name: "class", width: SHEET.width, piece: paragraph(WORDS.course, TYPE.small, roomIn(SHEET.width)) },
    ]),
  ];
  const all = glued(...rows);
  return {
    height: all.height,
    draw(top) {
      const edge = top + rows[0]!.height;
      const frame = outline("table", { x: 0, y: top, width: SHEET.width, height: all.height });
      return together(all.draw(top), ruled(stroke("rule-fine", 0, edge, SHEET.width, edge), frame));
    },
  };
}

function foot(code: string, sheet: number, sheets: number): Drawn {
  const y = SHEET.height - FOOT.height;
  const number: Runs = [[`${PAPER_WORDS.footSheet} ${PAPER_WORDS.sheetOf(sheet, sheets)}`, TYPE.smallBold]];
  const left: Runs = [[`${PAPER_WORDS.program} · ${PAPER_WORDS.footCode} ${code} · ${WORDS.hint}`, TYPE.small]];
  const marks = [...runs(...left).at(0, y + 0.9), ...runs(...number).at(SHEET.width - runsWidth(number), y + 0.9)];
  const box = { x: 0, y, width: SHEET.width, height: FOOT.height };
  return together(ruled(stroke("rule-fine", 0, y, SHEET.width, y)), inCell("foot", box, marks));
}

/** One hand-in; of one that was not graded the reason takes the room of all columns. */
function rowBlock({ learner, exercise, result, named, minutes, readings, remark }: ClassRow): Block {
  const { learner: first, ...others } = COLUMNS;
  const who = cell("learner", first, learner, exercise === "" ? [] : [exercise]);
  if (result === "") {
    const width = Object.values(others).reduce((sum, each) => sum + each, 0);
    return sided(gridRow(ROW, [who, words("remark", width, remark)]));
  }
  return sided(
    gridRow(ROW, [
      who,
      cell("result", COLUMNS.result, result, named),
      cell("minutes", COLUMNS.minutes, minutes[0] ?? "", minutes.slice(1)),
      cell("readings", COLUMNS.readings, readings[0] ?? "", readings.slice(1)),
      words("remark", COLUMNS.remark, remark),
    ]),
  );
}

function tasksBar(): Block {
  const piece = paragraph(WORDS.tasks, TYPE.tableTitle, roomIn(SHEET.width));
  return glued(gapBlock(4), gridRow(8, [{ name: "tasks", width: SHEET.width, piece, middle: true }]));
}

function taskBlock({ learner, done, tried }: TaskRow): Block {
  const list = (tasks: readonly string[]): string => (tasks.length === 0 ? WORDS.none : tasks.join("; "));
  return sided(
    gridRow(ROW, [
      cell("learner", TASK_COLUMNS.learner, learner, []),
      words("done", TASK_COLUMNS.done, list(done)),
      words("tried", TASK_COLUMNS.tried, list(tried)),
    ]),
  );
}

/** What counts in bold, and what is said of it below. */
function cell(name: string, width: Millimetres, head: string, below: readonly string[]): GridCell {
  const room = roomIn(width, PAD);
  return padded(
    name,
    width,
    stack([paragraph(head, TYPE.headValue, room), ...below.map((line) => paragraph(line, TYPE.note, room))]),
  );
}

function words(name: string, width: Millimetres, said: string): GridCell {
  return padded(name, width, paragraph(said, TYPE.note, roomIn(width, PAD)));
}

function padded(name: string, width: Millimetres, piece: Piece): GridCell {
  return { name, width, piece, padX: PAD, padY: 1 };
}
