import type { Millimetres, Volts } from "../base/units.ts";
import { PROOF_WORDS as WORDS } from "../base/words/proof.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { NO_ORDER } from "../diagnose/order.ts";
import type { ProofRun } from "../diagnose/proofRun.ts";
import { relearnText } from "../diagnose/relearn.ts";
import { cautionFrame } from "./cautionFrame.ts";
import { checklistCautions } from "./cautions.ts";
import { outline } from "./cell.ts";
import { columnTitles, drawBody } from "./checklist.ts";
import { fillSheets, type Place } from "./fill.ts";
import { framed } from "./framed.ts";
import { type Block, gapBlock, glued, gridRow, roomIn } from "./grid.ts";
import { leadParagraph, lineMark, paragraph } from "./lines.ts";
import { orderFacts } from "./orderFacts.ts";
import { BODY_BOTTOM, type Facts, SHEET, type Sheet } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import { continuedBar, placeBar } from "./placeBar.ts";
import { placesOf } from "./places.ts";
import { PROOF_COLUMNS, proofRowBlock } from "./proofRow.ts";
import type { RowSetting } from "./row.ts";
import { bodyTops, sheetsOf } from "./sheets.ts";
import { TYPE } from "./sizes.ts";
import { thrownIn } from "./throws.ts";
import { wordsRow } from "./wordsRow.ts";

/** What a proof run is printed from. */
export interface ProofSheetInput {
  readonly circuit: Circuit;
  readonly proof: ProofRun;
  readonly date?: string;
  /** Volts of the battery at rest that the figures were worked out for; the circuit's own where absent. */
  readonly restVolts?: Volts;
}

/**
 * The proof run on paper: rows with what the fault shows and what a mended circuit does over fields to write in, the
 * checks to repeat with boxes to tick, what only a look parts, what must be learnt anew, and who signs.
 */
export function proofSheets(input: ProofSheetInput): readonly Sheet[] {
  const { circuit, proof } = input;
  const steps = proof.rows.map(({ step }) => step);
  const order = { ...NO_ORDER, complaint: proof.complaint.label, steps };
  const facts: Facts = {
    ...orderFacts({ ...input, title: WORDS.title, complaint: `${proof.complaint.label}: ${proof.found.title}`, steps }),
    hint: [[WORDS.hint, TYPE.small]],
  };
  const cautions = checklistCautions(circuit, order);
  const setting: RowSetting = {
    circuit,
    restVolts: facts.restVolts,
    matters: thrownIn(order),
    told: new Set([
      ...cautions,
      ...steps.flatMap((step) => (step.access === null ? [] : barCautions(circuit, step.access))),
    ]),
  };
  const titles = columnTitles(Object.values(PROOF_COLUMNS), WORDS.columns);
  const framed = new Set(cautions);
  const rows = placesOf(circuit, order).map((place): Place => {
    const own = place.steps.flatMap((step) => proof.rows.filter((row) => row.step === step));
    return {
      bar: placeBar(place, framed),
      again: continuedBar(place),
      rows: own.map((row) => proofRowBlock(setting, row)),
    };
  });
  const { first, later } = bodyTops(facts);
  const ending = glued(gapBlock(3), signBlock());
  const laid = fillSheets({
    firstTop: first,
    laterTop: later,
    bottom: BODY_BOTTOM,
    first: glued(wordsRow(WORDS.how, WORDS.howWords), cautionFrame(cautions), titles),
    later: gapBlock(2),
    places: [...rows, ...listsOf(proof)],
    endingHeight: ending.height,
    ending: () => ending,
  });
  return sheetsOf(facts, laid.map(drawBody));
}

/** Cautions that stand on the bar of a place. */
function barCautions(circuit: Circuit, access: string): readonly string[] {
  return circuit.access.find(({ id }) => id === access)?.cautions ?? [];
}

/** The lists under the rows: checks to repeat, what takes a look, what must be learnt anew. */
function listsOf({ checks, masked, looks, relearn }: ProofRun): readonly Place[] {
  const list = (title: string, words: string, lines: readonly (readonly [string, string])[]): readonly Place[] => {
    if (lines.length === 0) return [];
    const bar = listBar(title, words);
    return [{ bar, again: bar, rows: lines.map(([line, about]) => tickRow(line, about)) }];
  };
  return [
    ...list(
      WORDS.checks,
      WORDS.checksWords,
      checks.map(({ check, why }) => [check.label, why]),
    ),
    ...list(
      WORDS.looks,
      WORDS.looksWords,
      looks.map((number) => [masked[number]!.title, ""]),
    ),
    ...list(
      WORDS.relearn,
      WORDS.relearnWords,
      relearn.map((each) => [relearnText(each), WORDS.source(each.source.document)]),
    ),
  ];
}

const BAR: Millimetres = 8;
const LINE: Millimetres = 6.5;
const TICK: Millimetres = 4;
const TICKED: Millimetres = 9;
const ABOUT: Millimetres = 62;

function listBar(title: string, words: string): Block {
  const row = gridRow(BAR, [
    {
      name: "list",
      width: SHEET.width,
      middle: true,
      piece: leadParagraph(`${title}.`, words, TYPE.placeWork, roomIn(SHEET.width)),
    },
  ]);
  return framed(row);
}

function tickRow(line: string, about: string): Block {
  const tick: Piece = {
    height: TICK,
    at: (x, y) => [outline("field", { x: x + (TICKED - TICK) / 2, y, width: TICK, height: TICK })],
  };
  const width = SHEET.width - TICKED - ABOUT;
  return gridRow(LINE, [
    { name: "tick", width: TICKED, padX: 0, middle: true, piece: tick, edge: false },
    { name: "line", width, middle: true, edge: false, piece: paragraph(line, TYPE.set, roomIn(width)) },
    { name: "about", width: ABOUT, middle: true, piece: paragraph(about, TYPE.note, roomIn(ABOUT)) },
  ]);
}

/** Whether it is proven, by whom, and when. */
function signBlock(): Block {
  const width = SHEET.width / 3;
  const cell = (words: string) => ({
    name: "sign-off",
    width,
    padY: 0.8,
    piece: stack([paragraph(words, TYPE.signOff, roomIn(width))]),
  });
  const proven: Piece = {
    height: TYPE.signOff.line,
    at: (x, y) => [
      lineMark(WORDS.proven, TYPE.signOff, x, y),
      outline("place", { x: x + 40, y: y - 0.2, width: TICK, height: TICK }),
    ],
  };
  return framed(gridRow(11, [{ ...cell(""), piece: proven }, cell(WORDS.signed), cell(WORDS.dateTime)]));
}
