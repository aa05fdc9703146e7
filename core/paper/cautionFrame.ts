import type { Millimetres, Share } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { text } from "../drawing/shapes.ts";
import { CAP_HEIGHT } from "../drawing/type.ts";
import { inCell, outline, ruled, solidBox, together } from "./cell.ts";
import { type Block, grownTo } from "./grid.ts";
import { lineMark, paragraph, widthMm } from "./lines.ts";
import { SHEET } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import { sizeMm, TYPE } from "./sizes.ts";

const ABOVE: Millimetres = 2;
const FRAME: Millimetres = 24;
/** The solid bar that carries the word. */
const BAR: Millimetres = 8.5;
/** Where the left column begins, and the room between columns and to the frame. */
const LEFT: Millimetres = 10.4;
const BETWEEN: Millimetres = 2;
const EDGE: Millimetres = 1.6;
/** Shares of the room that the left column may have, tried in this order. */
const SHARES: readonly Share[] = [0.5, 0.52, 0.48, 0.54, 0.46, 0.56, 0.44, 0.58, 0.42];
const PAD: Millimetres = 2;
const GAP: Millimetres = 1.1;
const DASH = "–";
const HAIR: Millimetres = 1e-6;

/** The cautions in two columns beside a solid bar with the word, 24 mm high unless a line needs a second. */
export function cautionFrame(cautions: readonly string[]): Block {
  const half = Math.ceil(cautions.length / 2);
  const room = SHEET.width - LEFT - BETWEEN - EDGE;
  const leftRoom = leftWidth(cautions.slice(0, half), cautions.slice(half), room);
  const middle = LEFT + leftRoom + BETWEEN;
  const left = column(cautions.slice(0, half), leftRoom);
  const right = column(cautions.slice(half), room - leftRoom);
  const height = grownTo(FRAME, Math.max(left.height, right.height) + 2 * PAD);
  return {
    height: ABOVE + height,
    draw(top) {
      const y = top + ABOVE;
      const frame = { x: 0, y, width: SHEET.width, height };
      const bar = { x: 0, y, width: BAR, height };
      const lines = (height - Math.max(left.height, right.height)) / 2;
      return together(
        ruled(solidBox(bar), outline("caution", frame)),
        inCell("caution word", bar, [uprightWord(BAR / 2 + 0.2, y + height / 2)]),
        inCell("cautions left", { x: BAR, y, width: middle - BAR, height }, left.at(LEFT, y + lines)),
        inCell("cautions right", { x: middle, y, width: SHEET.width - middle, height }, right.at(middle, y + lines)),
      );
    },
  };
}

/** Width of the left column: of those tried the one that makes the frame lowest, then the one that breaks fewest lines. */
function leftWidth(left: readonly string[], right: readonly string[], room: Millimetres): Millimetres {
  const longest = Math.max(0, ...left.map((caution) => widthMm(`${DASH} ${caution}`, TYPE.caution)));
  const widths = [...SHARES.map((share) => share * room), Math.min(longest, room * Math.max(...SHARES))];
  let best = { width: room / 2, height: Number.POSITIVE_INFINITY, sum: Number.POSITIVE_INFINITY };
  for (const width of widths) {
    const [one, other] = [column(left, width).height, column(right, room - width).height];
    const [height, sum] = [Math.max(one, other), one + other];
    if (height < best.height - HAIR || (height < best.height + HAIR && sum < best.sum - HAIR))
      best = { width, height, sum };
  }
  return best.width;
}

/** One caution below the other, each hung from its dash. */
function column(cautions: readonly string[], width: Millimetres): Piece {
  const hang = widthMm(`${DASH} `, TYPE.caution);
  return stack(
    cautions.map((caution) => {
      const words = paragraph(caution, TYPE.caution, width - hang);
      return {
        height: words.height,
        at: (x, y) => [lineMark(DASH, TYPE.caution, x, y), ...words.at(x + hang, y)],
      };
    }),
    GAP,
  );
}

/** The word of the bar, read from below upwards, its middle at x, y. */
function uprightWord(x: Millimetres, y: Millimetres) {
  const type = TYPE.cautionWord;
  const baseline = x + (sizeMm(type) * CAP_HEIGHT) / 2;
  const mark = text(WORDS.caution, gridUnitsOf(baseline), gridUnitsOf(y), {
    points: type.points,
    weight: type.weight,
    anchor: "middle",
    role: "paper",
  });
  return { ...mark, turn: -90 } as typeof mark;
}
