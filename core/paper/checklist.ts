import type { Millimetres, Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { ProbeOrder, Step } from "../diagnose/step.ts";
import { beforeBlock } from "./beforeBlock.ts";
import { cautionFrame } from "./cautionFrame.ts";
import { checklistCautions } from "./cautions.ts";
import { type Drawn, inCell, ruled, stroke, together } from "./cell.ts";
import { clearedBlock } from "./cleared.ts";
import { fillSheets, type Laid, type Place } from "./fill.ts";
import { type Block, gapBlock, glued } from "./grid.ts";
import { lineMark } from "./lines.ts";
import { listed } from "./listed.ts";
import { orderFacts } from "./orderFacts.ts";
import { BODY_BOTTOM, type CodedSheet, SHEET } from "./page.ts";
import { patternBlock } from "./patternBlock.ts";
import { continuedBar, placeBar } from "./placeBar.ts";
import { type PlaceRun, placesOf } from "./places.ts";
import { COLUMNS, type RowSetting, rowsOf } from "./row.ts";
import { bodyTops, sheetsOf } from "./sheets.ts";
import { signOff } from "./signOff.ts";
import { TYPE } from "./sizes.ts";
import { thrownIn } from "./throws.ts";
import { wordsRow } from "./wordsRow.ts";

/** What a checklist is printed from. */
export interface ChecklistInput {
  readonly circuit: Circuit;
  readonly order: ProbeOrder;
  /** The complaint in the customer's words; the order's own where absent. */
  readonly complaintLabel?: string;
  /** The day in words; left to be written by hand where absent. */
  readonly date?: string;
  /** Volts of the battery at rest that the ranges were worked out for; the circuit's own where absent. */
  readonly restVolts?: Volts;
}

/**
 * The printed probe order: head, cautions, what is cleared, places with their rows, sign-off and note lines, cut into
 * sheets of 186 x 254 mm. The same order gives the same sheets and code.
 */
export function checklistSheets(input: ChecklistInput): readonly CodedSheet[] {
  const { circuit, order } = input;
  const facts = orderFacts({
    ...input,
    title: WORDS.checklist,
    complaint: input.complaintLabel ?? order.complaint,
    steps: order.steps,
  });
  const cautions = checklistCautions(circuit, order);
  const setting: RowSetting = {
    circuit,
    restVolts: facts.restVolts,
    matters: thrownIn(order),
    told: new Set(cautions),
  };
  const { first, later } = bodyTops(facts);
  const laid = fillSheets({
    firstTop: first,
    laterTop: later,
    bottom: BODY_BOTTOM,
    first: glued(cautionFrame(cautions), beforeBlock(order.before), clearedBlock(circuit, order), rowsHead(order)),
    later: columnTitles(),
    places: placeBlocks(setting, placesOf(circuit, order), rowBlocks),
    endingHeight: signOff(circuit, order).height,
    ending: (room) => signOff(circuit, order, room),
  });
  return sheetsOf(facts, laid.map(drawBody));
}

/** More suspects than these are counted. */
const MOST_LEFT = 3;

/** What stands over the rows: their columns, or what is left where no row tells more. */
function rowsHead({ steps, suspects }: ProbeOrder): Block {
  if (steps.length > 0) return columnTitles();
  const left = listed(
    suspects.map(({ title }) => title),
    "; ",
    MOST_LEFT,
  );
  return glued(gapBlock(1), wordsRow(WORDS.noRowLeft, WORDS.proveLeft(left)), gapBlock(1));
}

/**
 * Bars of all places over their rows. A caution is told once: in the frame, on the bar that opens its trim, or in its row;
 * `rows` is given what was told before them.
 */
export function placeBlocks(
  setting: RowSetting,
  places: readonly PlaceRun[],
  rows: (setting: RowSetting, place: PlaceRun) => readonly Block[],
): readonly Place[] {
  const told = new Set(setting.told);
  return places.map((place) => {
    const bar = placeBar(place, told);
    for (const { cautions = [] } of place.opens) for (const caution of cautions) told.add(caution);
    return { bar, again: continuedBar(place), rows: rows({ ...setting, told: new Set(told) }, place) };
  });
}

/** Sweeps whose patterns stand in one block: more would make it higher than a person reads. */
const MOST_TOGETHER = 3;

/** The rows of a place; what sweeps say together stays with the last of them. */
function rowBlocks(setting: RowSetting, place: PlaceRun): readonly Block[] {
  const rows: Block[] = [];
  let sweeps: Step[] = [];
  place.steps.forEach((step, i) => {
    rows.push(...rowsOf(setting, step));
    if (step.sweepOf === null) return;
    sweeps.push(step);
    const goesOn = place.steps[i + 1] !== undefined && place.steps[i + 1]!.sweepOf !== null;
    if (goesOn && sweeps.length < MOST_TOGETHER) return;
    const pattern = patternBlock(sweeps);
    if (pattern) rows.push(glued(rows.pop()!, pattern));
    sweeps = [];
  });
  return rows;
}

const TITLES: Millimetres = 5.5;
const TITLES_ABOVE: Millimetres = 1;

/** The titles of the columns, repeated on every sheet, over the heavy line that the rows hang from. */
export function columnTitles(
  widths: readonly Millimetres[] = Object.values(COLUMNS),
  words: readonly string[] = WORDS.columns,
): Block {
  const height = TITLES_ABOVE + TITLES;
  return {
    height,
    draw(top) {
      let x = 0;
      const bottom = top + height;
      const titles = widths.map((width, i) => {
        const mark = lineMark(words[i]!, TYPE.columnTitle, x + 1.2, bottom - TYPE.columnTitle.line - 1);
        x += width;
        return mark;
      });
      const box = { x: 0, y: top, width: SHEET.width, height };
      return together(inCell("column titles", box, titles), ruled(stroke("table", 0, bottom, SHEET.width, bottom)));
    },
  };
}

/** The blocks of a sheet, with a heavy line where a place ends. */
export function drawBody(laid: readonly Laid[]): Drawn {
  const ends = laid.flatMap(({ block, top, is }, i) => {
    const next = laid[i + 1]?.is;
    return is === "row" && next !== "row" ? [top + block.height] : [];
  });
  return together(
    ...laid.map(({ block, top }) => block.draw(top)),
    ruled(...ends.map((y) => stroke("table", 0, y, SHEET.width, y))),
  );
}
