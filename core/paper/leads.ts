import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Step } from "../diagnose/step.ts";
import { wiresAt } from "../diagnose/testPoint.ts";
import type { Lead } from "../live/attachment.ts";
import { outline, solidBox } from "./cell.ts";
import { colourPiece } from "./colourSample.ts";
import { paragraph, wordThen } from "./lines.ts";
import { beside, type Piece, stack } from "./piece.ts";
import { TYPE } from "./sizes.ts";

/** The mark before the words "red" and "black": the same as on the face. */
const MARK: Millimetres = 3.6;
const INDENT: Millimetres = 4.5;

/** Where both leads of a row go: mark, pin and wire colour of each. Black at a battery post says which post. */
export function leadsPiece(circuit: Circuit, step: Step, room: Millimetres): Piece {
  const width = room - INDENT;
  const red = stack(
    [wordThen(WORDS.red, TYPE.lead, step.point, TYPE.pin, width), colourPiece(circuit, step.colour, width)],
    0.3,
  );
  return stack([marked(red, true), marked(blackWords(circuit, step.black, width), false)], 0.8);
}

function blackWords(circuit: Circuit, black: Lead, width: Millimetres): Piece {
  const name = wordThen(WORDS.black, TYPE.lead, leadName(black), TYPE.pin, width);
  if (isPost(black)) return stack([name, paragraph(WORDS.posts[black], TYPE.small, width)]);
  return stack([name, colourPiece(circuit, wiresAt(circuit, black)[0]?.colour ?? null, width)], 0.3);
}

function isPost(lead: Lead): lead is "battery +" | "battery -" {
  return lead === "battery +" || lead === "battery -";
}

/** A lead's place in words, with a real minus sign: never a bare sign. */
export function leadName(lead: Lead): string {
  return isPost(lead) ? WORDS.batteries[lead] : lead;
}

function marked(words: Piece, isRed: boolean): Piece {
  const mark: Piece = {
    height: MARK,
    at: (x, y) => {
      const box = { x, y: y + 0.2, width: MARK, height: MARK };
      return [isRed ? solidBox(box) : outline("caution", { ...box, width: MARK - 0.2, height: MARK - 0.2 })];
    },
  };
  return beside([
    { x: 0, piece: mark },
    { x: INDENT, piece: words },
  ]);
}
