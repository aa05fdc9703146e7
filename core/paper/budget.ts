import { figure } from "../base/figure.ts";
import type { Millimetres, Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { NO_ORDER } from "../diagnose/order.ts";
import type { BudgetRow, BudgetSide, DropBudget } from "../live/budget.ts";
import type { Fault } from "../live/fault.ts";
import { cautionFrame } from "./cautionFrame.ts";
import { checklistCautions } from "./cautions.ts";
import { outline, ruled, together } from "./cell.ts";
import { columnTitles, drawBody } from "./checklist.ts";
import { colourPiece } from "./colourSample.ts";
import { putInWords } from "./faultWords.ts";
import { fieldPiece } from "./fields.ts";
import { fillSheets, type Place } from "./fill.ts";
import { type Block, type GridCell, gapBlock, glued, gridRow, roomIn } from "./grid.ts";
import { leadParagraph, paragraph, wordThen } from "./lines.ts";
import { orderFacts } from "./orderFacts.ts";
import { BODY_BOTTOM, type Facts, SHEET, type Sheet } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import { plainNumber } from "./range.ts";
import { sided } from "./row.ts";
import { bodyTops, sheetsOf } from "./sheets.ts";
import { TYPE } from "./sizes.ts";
import { aboutPart, ampsWords } from "./straightWords.ts";
import { conditionWords } from "./throws.ts";
import { wordsRow } from "./wordsRow.ts";

/** Widths of the columns of a drop budget; together the width of the sheet. */
const COLUMNS = { row: 12, leads: 48, what: 54, allowed: 20, good: 23, field: 29 } as const satisfies Readonly<
  Record<string, Millimetres>
>;
const ROW: Millimetres = 13;

/** What a drop budget is printed from. */
export interface BudgetInput {
  readonly circuit: Circuit;
  readonly budget: DropBudget;
  readonly faults?: readonly Fault[];
}

/**
 * The drop budget of a load: each side with what it may lose in all, then its pieces, biggest overspend first, with the leads,
 * what is allowed and by whom, what a good circuit loses, and a field for what was measured.
 */
export function budgetSheets({ circuit, budget, faults = [] }: BudgetInput): readonly Sheet[] {
  const { load, amps, condition } = budget;
  const named = WORDS.budgetComplaint(`${aboutPart(circuit, load)} ${load}`.trim(), ampsWords(amps));
  const facts: Facts = {
    ...orderFacts({ title: WORDS.budget, circuit, complaint: named, steps: [] }),
    hint: [[WORDS.budgetHint, TYPE.small]],
  };
  const cautions = checklistCautions(circuit, { ...NO_ORDER, complaint: "", steps: [] });
  const set = conditionWords(circuit, condition, []).map(({ words }) => words);
  const fault = faults.length === 0 ? [] : [wordsRow(putInWords(circuit, faults), "")];
  const { first, later } = bodyTops(facts);
  const titles = columnTitles(Object.values(COLUMNS), WORDS.budgetColumns);
  // The side that is worst off stands first, as its worst piece does.
  const sides = [...new Set(budget.rows.map(({ side }) => side))].flatMap((side) =>
    budget.sides.filter((each) => each.side === side),
  );
  const printed = sides.flatMap(({ side }) => budget.rows.filter((row) => row.side === side));
  const numbers = new Map(printed.map((row, index) => [row, index + 1]));
  const laid = fillSheets({
    firstTop: first,
    laterTop: later,
    bottom: BODY_BOTTOM,
    first: glued(
      wordsRow(WORDS.budgetHow, WORDS.budgetHowWords),
      wordsRow(`${set.join(", ")}.`, ""),
      ...fault,
      gapBlock(1),
      cautionFrame(cautions),
      titles,
    ),
    later: titles,
    places: sides.map((side) => sidePlace(circuit, budget, side, numbers)),
    endingHeight: 0,
    ending: () => gapBlock(0),
  });
  return sheetsOf(facts, laid.map(drawBody));
}

function sidePlace(
  circuit: Circuit,
  budget: DropBudget,
  side: BudgetSide,
  numbers: ReadonlyMap<BudgetRow, number>,
): Place {
  const bar = sideBar(budget, side);
  const rows = budget.rows.filter((row) => row.side === side.side);
  return { bar, again: bar, rows: rows.map((row) => budgetRow(circuit, row, numbers.get(row)!)) };
}

function sideBar({ load }: DropBudget, whole: BudgetSide): Block {
  const { side, goodDrop, drop, allowed } = whole;
  const [plus, minus] = [WORDS.batteries["battery +"], WORDS.batteries["battery -"]];
  const [from, to] = side === "feed" ? [plus, load] : [load, minus];
  const isOther = drop !== null && Math.abs(drop - goodDrop) >= 0.005;
  const said = WORDS.budgetSide(from, to, dropText(goodDrop), dropText(allowed.volts));
  const now = isOther ? `, ${WORDS.budgetFault(dropText(drop))}` : "";
  const source = paragraph(allowed.source.document, TYPE.small, roomIn(SHEET.width - COLUMNS.field));
  const own = paragraph(WORDS.budgetOwn, TYPE.small, roomIn(SHEET.width - COLUMNS.field));
  const piece = stack([
    leadParagraph(WORDS.budgetSides[side], `${said}${now}.`, TYPE.placeWork, roomIn(SHEET.width - COLUMNS.field)),
    source,
    ...(isOverWhenGood(whole) ? [own] : []),
  ]);
  const row = gridRow(ROW, [
    { name: "side", width: SHEET.width - COLUMNS.field, piece, middle: true },
    { name: "side field", width: COLUMNS.field, padX: 1, padY: 0.8, piece: fieldPiece("V") },
  ]);
  return {
    height: row.height,
    draw: (top) =>
      together(row.draw(top), ruled(outline("place", { x: 0, y: top, width: SHEET.width, height: row.height }))),
  };
}

function budgetRow(circuit: Circuit, row: BudgetRow, number: number): Block {
  const { goodDrop, drop, allowed } = row;
  const isOther = drop !== null && goodDrop !== null && Math.abs(drop - goodDrop) >= 0.005;
  const good = [
    paragraph(goodDrop === null ? "" : `${dropText(goodDrop)} V`, TYPE.sweepRange, roomIn(COLUMNS.good, 1)),
    ...(isOther ? [paragraph(WORDS.budgetFault(dropText(drop)), TYPE.limit, roomIn(COLUMNS.good, 1))] : []),
  ];
  return sided(
    gridRow(ROW, [
      cell("row", COLUMNS.row, paragraph(String(number), TYPE.sheetNumber, roomIn(COLUMNS.row, 1), "middle")),
      cell("leads", COLUMNS.leads, leads(row)),
      cell("what", COLUMNS.what, what(circuit, row)),
      cell(
        "allowed",
        COLUMNS.allowed,
        paragraph(`${dropText(allowed.volts)} V`, TYPE.sweepRange, roomIn(COLUMNS.allowed, 1)),
      ),
      cell("good", COLUMNS.good, stack(good)),
      { name: "field", width: COLUMNS.field, padX: 1, padY: 1, piece: fieldPiece("V") },
    ]),
  );
}

function cell(name: string, width: Millimetres, piece: Piece): GridCell {
  return { name, width, piece, padX: 1, padY: 0.8, middle: true };
}

function leads({ red, black }: BudgetRow): Piece {
  const room = roomIn(COLUMNS.leads, 1);
  return stack([
    wordThen(WORDS.red, TYPE.lead, red ?? WORDS.inside, TYPE.pin, room),
    wordThen(WORDS.black, TYPE.lead, black ?? WORDS.inside, TYPE.pin, room),
  ]);
}

/** The wire with its colour, or the part with its name; below it whose limit it is held to. */
function what(circuit: Circuit, row: BudgetRow): Piece {
  const { name, allowed } = row;
  const room = roomIn(COLUMNS.what, 1);
  const wire = circuit.wires.find(({ id }) => id === name);
  const about = wire
    ? [
        wire.mm2 === undefined ? "" : `${plainNumber(wire.mm2)} mm²`,
        wire.metres === undefined ? "" : `${plainNumber(wire.metres)} m`,
      ]
    : [partAt(circuit, name) ? aboutPart(circuit, name) : ""];
  const title = [name, ...about].filter((each) => each !== "").join("  ");
  return stack([
    paragraph(title, TYPE.set, room),
    ...(wire?.colour === undefined ? [] : [colourPiece(circuit, wire.colour, room)]),
    paragraph(allowed.source.document, TYPE.small, room),
    ...(isOverWhenGood(row) ? [paragraph(WORDS.budgetOwn, TYPE.small, room)] : []),
  ]);
}

/** Whether the good circuit itself is over the limit: held to that, a sound wire would be renewed. */
function isOverWhenGood({ goodDrop, allowed }: Pick<BudgetRow | BudgetSide, "goodDrop" | "allowed">): boolean {
  return goodDrop !== null && Math.abs(goodDrop) > allowed.volts;
}

/** Volts of a drop to two decimals. */
function dropText(volts: Volts): string {
  return figure(Math.abs(volts) < 0.005 ? 0 : volts, 2).replace("-", "−");
}
