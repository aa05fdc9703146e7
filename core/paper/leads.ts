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
  if (step.instrument === "clamp")
    return marked(leadWords(circuit, WORDS.clampAt, step.point, step.colour, width), true);
  const black = wiresAt(circuit, step.black)[0]?.colour ?? null;
  const red = leadWords(circuit, WORDS.red, step.point, step.colour, width);
  return stack([marked(red, true), marked(leadWords(circuit, WORDS.black, step.black, black, width), false)], 0.8);
}

function leadWords(circuit: Circuit, word: string, lead: Lead, colour: string | null, width: Millimetres): Piece {
  const name = wordThen(word, TYPE.lead, leadName(lead), TYPE.pin, width);
  if (isPost(lead)) return stack([name, paragraph(WORDS.posts[lead], TYPE.small, width)]);
  return stack([name, colourPiece(circuit, colour, width)], 0.3);
}

/** The lead of a row whose place is shown and gone to: red, or black where red is at a battery post. */
export function placedLead({ point, black }: Pick<Step, "point" | "black">): Lead {
  return isPost(point) ? black : point;
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
