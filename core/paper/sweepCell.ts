import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { printedPosition } from "../circuit/positionWords.ts";
import type { Setting } from "../diagnose/step.ts";
import { FIELD, fieldPiece, ticksPiece } from "./fields.ts";
import { paragraph, widthMm } from "./lines.ts";
import { type Piece, space, stack } from "./piece.ts";
import { expectText } from "./range.ts";
import { TYPE } from "./sizes.ts";

/** Height of one position of a sweep, and of one whose lamp is ticked too. */
const SWEEP_LINE: Millimetres = 12;
const LAMP_LINE: Millimetres = 20;
/** Where the fields begin: in line with the fields of other rows. */
const FIELD_AT: Millimetres = 31;
const PAD: Millimetres = 0.8;
const LEAST_NAME: Millimetres = 10;
const FREE: Millimetres = 0.5;

/** Height of one position of a sweep. */
function sweepLine(setting: Setting): Millimetres {
  return setting.expect.lamp === null ? SWEEP_LINE : LAMP_LINE;
}

/** One line for every position: its name, the range of a good circuit, the field. Ranges stand below each other. */
export function sweepPiece(settings: readonly Setting[]): Piece {
  const room = FIELD_AT - PAD - 1;
  const names = settings.map(({ position }) => printedPosition(position));
  const widest = Math.max(LEAST_NAME, ...names.map((name) => widthMm(name, TYPE.sweepPosition) + 1.4));
  const ranges = settings.map(({ expect }) => expectText(expect));
  const lamps = settings.map(({ expect }) => (expect.lamp === null ? "" : WORDS.lampShows(expect.lamp)));
  const beside = [
    ...ranges.map((range) => widthMm(range, TYPE.sweepRange)),
    ...lamps.map((lamp) => widthMm(lamp, TYPE.lamp)),
  ];
  const isBeside = widest + Math.max(...beside) <= room;
  return stack(settings.map((setting, i) => linePiece(setting, names[i]!, ranges[i]!, isBeside ? widest : null, room)));
}

function linePiece(
  setting: Setting,
  name: string,
  range: string,
  rangeAt: Millimetres | null,
  room: Millimetres,
): Piece {
  const { lamp, unit } = setting.expect;
  const lampWords = lamp === null ? [] : [paragraph(WORDS.lampShows(lamp), TYPE.lamp, room)];
  const left = rangeAt ?? 0;
  const position = paragraph(name, TYPE.sweepPosition, rangeAt === null ? room : left);
  const expect = stack([paragraph(range, TYPE.sweepRange, room - left), ...lampWords]);
  const words: Piece =
    rangeAt === null
      ? stack([position, expect])
      : {
          height: Math.max(position.height, expect.height),
          at: (x, y) => [...position.at(x, y + (expect.height - position.height) / 2), ...expect.at(x + left, y)],
        };
  const field = stack([fieldPiece(unit), ...(lamp === null ? [] : [space(1), ticksPiece(FIELD.width)])]);
  const height = Math.max(sweepLine(setting), words.height + 2 * FREE, field.height + 2 * FREE);
  return {
    height,
    at: (x, y) => [
      ...words.at(x + PAD, y + (height - words.height) / 2),
      ...field.at(x + FIELD_AT, y + (height - field.height) / 2),
    ],
  };
}
