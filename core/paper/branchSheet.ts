import type { Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Branches } from "../diagnose/branchTable.ts";
import { NO_ORDER } from "../diagnose/order.ts";
import type { ProbeOrder } from "../diagnose/step.ts";
import { beforeBlock } from "./beforeBlock.ts";
import { BRANCH_COLUMNS, branchRow } from "./branchRow.ts";
import { cautionFrame } from "./cautionFrame.ts";
import { checklistCautions } from "./cautions.ts";
import { inCell } from "./cell.ts";
import { columnTitles, drawBody, placeBlocks } from "./checklist.ts";
import { fillSheets, type Place } from "./fill.ts";
import { framed } from "./framed.ts";
import { type Block, gapBlock, glued, roomIn } from "./grid.ts";
import { leadParagraph } from "./lines.ts";
import { orderFacts } from "./orderFacts.ts";
import { BODY_BOTTOM, type CodedSheet, SHEET } from "./page.ts";
import { placesOf } from "./places.ts";
import type { RowSetting } from "./row.ts";
import { bodyTops, sheetsOf } from "./sheets.ts";
import { TYPE } from "./sizes.ts";
import { thrownIn } from "./throws.ts";
import { verdictRows } from "./verdictBoxes.ts";

/** What a branch sheet is printed from. */
export interface BranchSheetInput {
  readonly circuit: Circuit;
  readonly branches: Branches;
  /** The day in words; left to be written by hand where absent. */
  readonly date?: string;
  readonly restVolts?: Volts;
}

/**
 * The branch sheet: head, how to use it, cautions, rows place by place with where each reading leads, and the verdicts
 * with what proves them. Sheets of 186 x 254 mm; the same branches give the same sheets and code.
 */
export function branchSheets({ circuit, branches, date, restVolts }: BranchSheetInput): readonly CodedSheet[] {
  const steps = branches.rows.map(({ step }) => step);
  const order: ProbeOrder = {
    ...NO_ORDER,
    complaint: branches.complaint,
    before: branches.before,
    suspects: branches.suspects,
    steps,
  };
  const facts = orderFacts({
    title: WORDS.branchSheet,
    circuit,
    complaint: branches.complaint,
    steps,
    date,
    restVolts,
  });
  const cautions = checklistCautions(circuit, order);
  const setting: RowSetting = {
    circuit,
    restVolts: facts.restVolts,
    matters: thrownIn(order),
    told: new Set(cautions),
  };
  const { first, later } = bodyTops(facts);
  const titles = columnTitles(Object.values(BRANCH_COLUMNS), WORDS.branchColumns);
  const laid = fillSheets({
    firstTop: first,
    laterTop: later,
    bottom: BODY_BOTTOM,
    first: glued(howToUse(), cautionFrame(cautions), beforeBlock(branches.before), titles),
    later: titles,
    places: [...rowPlaces(setting, branches, order), verdictPlace(circuit, branches)],
    endingHeight: 0,
    ending: () => gapBlock(0),
  });
  return sheetsOf(facts, laid.map(drawBody));
}

/** Rows under the bars of their places. */
function rowPlaces(setting: RowSetting, branches: Branches, order: ProbeOrder): readonly Place[] {
  return placeBlocks(setting, placesOf(setting.circuit, order), (own, { steps }) =>
    steps.map(({ number }) => branchRow(own, branches.rows[number - 1]!)),
  );
}

function verdictPlace(circuit: Circuit, { verdicts }: Branches): Place {
  const bar = glued(gapBlock(2), wordsBlock(WORDS.verdicts, WORDS.verdictsWords), gapBlock(1));
  return { bar, again: bar, rows: verdictRows(circuit, verdicts) };
}

function howToUse(): Block {
  return glued(framed(wordsBlock(WORDS.howToUse, WORDS.howToUseWords)), gapBlock(1.5));
}

function wordsBlock(lead: string, words: string): Block {
  const room = roomIn(SHEET.width);
  const piece = leadParagraph(lead, words, TYPE.body, room);
  const height = piece.height + 2;
  return {
    height,
    draw: (top) =>
      inCell("words", { x: 0, y: top, width: SHEET.width, height }, piece.at((SHEET.width - room) / 2, top + 1)),
  };
}
