import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { BranchVerdict } from "../diagnose/branchTable.ts";
import { percent } from "../diagnose/progressWords.ts";
import { inCell, outline, ruled, solidBox, together } from "./cell.ts";
import type { Block } from "./grid.ts";
import { leadParagraph, lineMark, paragraph } from "./lines.ts";
import { listed } from "./listed.ts";
import { SHEET } from "./page.ts";
import { type Piece, space, stack } from "./piece.ts";
import { proveWords } from "./proveWords.ts";
import { TYPE } from "./sizes.ts";

const GAP: Millimetres = 2;
const WIDTH: Millimetres = (SHEET.width - GAP) / 2;
const LETTER: Millimetres = 9;
const PAD: Millimetres = 1.4;
const LEAST: Millimetres = 22;
const MOST_NAMED = 4;

/** Verdicts two by two, each block one line of boxes. */
export function verdictRows(circuit: Circuit, verdicts: readonly BranchVerdict[]): readonly Block[] {
  const rows: Block[] = [];
  for (let at = 0; at < verdicts.length; at += 2) rows.push(pairBlock(circuit, verdicts.slice(at, at + 2)));
  return rows;
}

function pairBlock(circuit: Circuit, pair: readonly BranchVerdict[]): Block {
  const pieces = pair.map((verdict) => wordsOf(circuit, verdict));
  const height = Math.max(LEAST, ...pieces.map((piece) => piece.height + 2 * PAD));
  return {
    height: height + GAP,
    draw(top) {
      return together(
        ...pair.map(({ letter }, index) => {
          const x = index * (WIDTH + GAP);
          const box = { x, y: top, width: WIDTH, height };
          const type = TYPE.placeLetter;
          const marks = [
            solidBox({ x, y: top, width: LETTER, height }),
            lineMark(letter, type, x + LETTER / 2, top + (height - type.line) / 2, {
              anchor: "middle",
              role: "paper",
            }),
            ...pieces[index]!.at(x + LETTER + PAD, top + PAD),
          ];
          return together(inCell("verdict", box, marks), ruled(outline("field", box)));
        }),
      );
    },
  };
}

function wordsOf(circuit: Circuit, { repairs }: BranchVerdict): Piece {
  const room = WIDTH - LETTER - 2 * PAD;
  const [first] = repairs;
  const suspect = first!.suspects[0]!;
  const whole = repairs.reduce((sum, { share }) => sum + share, 0);
  const title =
    repairs.length === 1
      ? paragraph(suspect.title, TYPE.headValue, room)
      : stack([
          paragraph(WORDS.oneOf, TYPE.small, room),
          paragraph(
            listed(
              repairs.map(({ suspects, share }) => `${suspects[0]!.title} ${percent(share / whole)}`),
              "; ",
              MOST_NAMED,
            ),
            TYPE.body,
            room,
          ),
        ]);
  return stack([title, space(0.8), leadParagraph(WORDS.prove, proveWords(circuit, suspect), TYPE.note, room)]);
}
