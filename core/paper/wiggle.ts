import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { WIGGLE_WORDS as SAY } from "../base/words/wiggle.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { NO_ORDER } from "../diagnose/order.ts";
import { groupsToOpen } from "../diagnose/testPoint.ts";
import type { WiggleRow, WiggleSheet } from "../diagnose/wiggle.ts";
import { swingText } from "../diagnose/wiggleEntry.ts";
import { cautionFrame } from "./cautionFrame.ts";
import { checklistCautions } from "./cautions.ts";
import { columnTitles, drawBody } from "./checklist.ts";
import { fieldPiece } from "./fields.ts";
import { fillSheets } from "./fill.ts";
import { type Block, type GridCell, gapBlock, glued, gridRow, roomIn } from "./grid.ts";
import { paragraph } from "./lines.ts";
import { orderFacts } from "./orderFacts.ts";
import { BODY_BOTTOM, type Facts, type Sheet } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import { expectText, plainNumber } from "./range.ts";
import { sided } from "./row.ts";
import { bodyTops, sheetsOf } from "./sheets.ts";
import { TYPE } from "./sizes.ts";
import { conditionWords } from "./throws.ts";
import { wordsRow } from "./wordsRow.ts";

/** Widths of the columns of a wiggle sheet; together the width of the sheet. */
const COLUMNS = { row: 12, place: 48, move: 52, min: 22, max: 22, when: 30 } as const satisfies Readonly<
  Record<string, Millimetres>
>;
const ROW: Millimetres = 15;
/** Room of a row's number and its padding. */
const PAD: Millimetres = 1;

/** What a wiggle sheet is printed from. */
export interface WiggleInput {
  readonly circuit: Circuit;
  readonly wiggle: WiggleSheet;
}

/**
 * The wiggle sheet: where the meter stays, then the places to move in the order of suspicion per minute, with room for the
 * lowest, the highest and when it was.
 */
export function wiggleSheets({ circuit, wiggle }: WiggleInput): readonly Sheet[] {
  const facts: Facts = {
    ...orderFacts({ title: SAY.title, circuit, complaint: wiggle.complaint, steps: [] }),
    hint: [[SAY.guesses, TYPE.small]],
  };
  const cautions = [...new Set([...wiggle.cautions, ...checklistCautions(circuit, { ...NO_ORDER, steps: [] })])];
  const set = conditionWords(circuit, wiggle.condition, []).map(({ words }) => words);
  const { first, later } = bodyTops(facts);
  const titles = columnTitles(Object.values(COLUMNS), SAY.columns);
  const opened = new Set<string>();
  const laid = fillSheets({
    firstTop: first,
    laterTop: later,
    bottom: BODY_BOTTOM,
    first: glued(
      wordsRow(watchWords(wiggle), ""),
      wordsRow(`${set.join(", ")}.`, SAY.swing),
      gapBlock(1),
      cautionFrame(cautions),
      titles,
    ),
    later: titles,
    places: [{ bar: gapBlock(0), again: gapBlock(0), rows: wiggle.rows.map((row) => rowBlock(circuit, row, opened)) }],
    endingHeight: 0,
    ending: () => gapBlock(0),
  });
  return sheetsOf(facts, laid.map(drawBody));
}

/** Where the leads are clipped and what is good there. */
export function watchWords({ watched, load }: WiggleSheet): string {
  if (!watched) return SAY.watchLoad(load);
  const clip = SAY.watch(watched.red, watched.black, `${expectText(watched.expect)} ${watched.expect.unit}`);
  return [...watched.trim.map((label) => `${label}.`), clip].join(" ");
}

/** One place. Trim is told in the first row behind it; `opened` is what was told so far. */
function rowBlock(circuit: Circuit, { number, place, how, suspects, read }: WiggleRow, opened: Set<string>): Block {
  const trim = (place.access === null ? [] : groupsToOpen(circuit, place.access)).filter(({ id }) => !opened.has(id));
  for (const { id } of trim) opened.add(id);
  const room = roomIn(COLUMNS.place, PAD);
  const opens = trim.map(({ label, minutes }) => `${label}, ${WORDS.minutes(plainNumber(minutes))}`);
  return sided(
    gridRow(ROW, [
      cell("row", COLUMNS.row, paragraph(String(number), TYPE.sheetNumber, roomIn(COLUMNS.row, PAD), "middle")),
      cell(
        "place",
        COLUMNS.place,
        stack([
          paragraph(place.title, TYPE.pin, room),
          ...opens.map((line) => paragraph(line, TYPE.note, room)),
          paragraph(suspects.join("; "), TYPE.small, room),
        ]),
      ),
      cell("move", COLUMNS.move, stack(how.map((line) => paragraph(line, TYPE.note, roomIn(COLUMNS.move, PAD))))),
      { name: "min", width: COLUMNS.min, padX: PAD, padY: PAD, piece: fieldPiece("V", COLUMNS.min - 2 * PAD) },
      { name: "max", width: COLUMNS.max, padX: PAD, padY: PAD, piece: fieldPiece("V", COLUMNS.max - 2 * PAD) },
      cell("when", COLUMNS.when, paragraph(read ? swingText(read) : "", TYPE.note, roomIn(COLUMNS.when, PAD))),
    ]),
  );
}

function cell(name: string, width: Millimetres, piece: Piece): GridCell {
  return { name, width, piece, padX: PAD, padY: 0.8, middle: true };
}
