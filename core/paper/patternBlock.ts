import { capital } from "../base/capital.ts";
import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { OutcomeOf, Step } from "../diagnose/step.ts";
import { inCell, outline, ruled, together } from "./cell.ts";
import { type Block, roomIn } from "./grid.ts";
import { leadParagraph } from "./lines.ts";
import { listed, rowsText } from "./listed.ts";
import { SHEET } from "./page.ts";
import { stack } from "./piece.ts";
import { TYPE } from "./sizes.ts";

const MOST_OUTCOMES = 5;
const MOST_NAMES = 3;
const PAD: Millimetres = 1.2;

/**
 * What the sweeps above it say: each pattern that a person may find, likeliest first, with what it leaves. Sweeps whose
 * patterns are the same share a line.
 */
export function patternBlock(steps: readonly Step[]): Block | null {
  const lines = new Map<string, number[]>();
  for (const step of steps) {
    const words = patternsText(step.outcomes);
    if (words !== "") lines.set(words, [...(lines.get(words) ?? []), step.number]);
  }
  if (lines.size === 0) return null;
  const room = roomIn(SHEET.width);
  const pieces = [...lines].map(([words, rows]) =>
    leadParagraph(WORDS.patternRows(rowsText(rows)), words, TYPE.block, room),
  );
  const words = stack(pieces, 0.4);
  const height = words.height + 2 * PAD;
  return {
    height,
    draw(top) {
      const box = { x: 0, y: top, width: SHEET.width, height };
      const x = (SHEET.width - room) / 2;
      return together(inCell("pattern", box, words.at(x, top + PAD)), ruled(outline("place", box)));
    },
  };
}

function patternsText(outcomes: readonly OutcomeOf[]): string {
  return outcomes
    .filter(({ leaves }) => leaves.length > 0)
    .slice(0, MOST_OUTCOMES)
    .map(({ word, limit, leaves }) => {
      const names = [...new Set(leaves.map(({ faults, title }) => (faults.length === 1 ? faults[0]!.target : title)))];
      return WORDS.pattern(capital(word), limit === "" ? "" : ` (${limit})`, listed(names, ", ", MOST_NAMES));
    })
    .join(" ");
}
