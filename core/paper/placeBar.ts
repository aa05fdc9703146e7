import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Step } from "../diagnose/step.ts";
import { outline, ruled, together } from "./cell.ts";
import { type Block, type GridCell, gridRow, roomIn } from "./grid.ts";
import { paragraph } from "./lines.ts";
import { rowsText } from "./listed.ts";
import { SHEET } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import type { PlaceRun } from "./places.ts";
import { plainNumber } from "./range.ts";
import { TYPE } from "./sizes.ts";

const BAR: Millimetres = 9.5;
const LETTER: Millimetres = 11;
const MINUTES: Millimetres = 27;

/** The bar over a place's rows: letter, name, what comes off, one person or two, its minutes once. */
export function placeBar(place: PlaceRun, framed: ReadonlySet<string>): Block {
  if (place.isAgain) return continuedBar(place);
  const cautions = place.opens.flatMap((group) => group.cautions ?? []).filter((caution) => !framed.has(caution));
  const labels = place.opens.map(({ label }) => sentence(label));
  const work = place.group === null ? WORDS.free : labels.length === 0 ? WORDS.alreadyOpen : labels.join(" ");
  const warnings = [...new Set(cautions)].map((caution) =>
    paragraph(WORDS.rowCaution(caution), TYPE.placeWarning, textRoom()),
  );
  const once = place.opens.length === 0 ? WORDS.open : WORDS.minutes(plainNumber(place.minutes));
  const minutes = place.group === null ? WORDS.nothingToOpen : once;
  const words = [work, personsOf(place)].filter((each) => each !== "").join(" ");
  return bar(
    place.letter,
    stack([
      paragraph(place.name, TYPE.placeName, textRoom()),
      paragraph(words, TYPE.placeWork, textRoom()),
      ...warnings,
    ]),
    minutes,
  );
}

/** The bar where a place goes on: on a later sheet, or after rows elsewhere. */
export function continuedBar(place: PlaceRun): Block {
  const name = paragraph(place.name, TYPE.placeName, textRoom());
  const isFree = place.group === null;
  const words = paragraph(isFree ? WORDS.again : WORDS.continued, TYPE.placeWork, textRoom());
  return bar(place.letter, stack([name, words]), isFree ? WORDS.nothingToOpen : WORDS.open);
}

function textRoom(): Millimetres {
  return roomIn(SHEET.width - LETTER - MINUTES);
}

function bar(letter: string, words: Piece, minutes: string): Block {
  const room = roomIn(MINUTES);
  const right = stack([
    paragraph(minutes, TYPE.minutes, room, "end"),
    ...(minutes === WORDS.open || minutes === WORDS.nothingToOpen
      ? []
      : [paragraph(WORDS.onceAllRows, TYPE.small, room, "end")]),
  ]);
  const cells: readonly GridCell[] = [
    {
      name: "place letter",
      width: LETTER,
      padX: 0,
      padY: 0.4,
      middle: true,
      piece: paragraph(letter, TYPE.placeLetter, LETTER, "middle"),
    },
    { name: "place", width: SHEET.width - LETTER - MINUTES, padY: 0.4, middle: true, piece: words, edge: false },
    { name: "place minutes", width: MINUTES, padY: 0.4, middle: true, piece: right },
  ];
  const row = gridRow(BAR, cells);
  return {
    height: row.height,
    draw: (top) =>
      together(row.draw(top), ruled(outline("place", { x: 0, y: top, width: SHEET.width, height: row.height }))),
  };
}

/** One person, or for which rows a second is needed. */
function personsOf({ steps, opens }: PlaceRun): string {
  if (opens.some(({ hands }) => hands === 2)) return WORDS.twoPeople;
  const both = steps.filter(({ hands }) => hands === 2).map((step: Step) => step.number);
  return both.length === 0 ? WORDS.onePerson : WORDS.secondPersonFor(rowsText(both));
}

/** Words with a full stop, unless they end in one. */
function sentence(words: string): string {
  return /[.!?]$/.test(words.trim()) ? words.trim() : `${words.trim()}.`;
}
