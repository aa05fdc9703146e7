import type { Millimetres } from "../base/units.ts";
import { stroke } from "./cell.ts";
import type { GridCell } from "./grid.ts";
import { linesOf, paragraph } from "./lines.ts";
import { TYPE } from "./sizes.ts";

const PAD: Millimetres = 1.2;
/** Room kept below the printed words for one line to write on. */
const RULE_ROOM: Millimetres = 5;
const RULE_UP: Millimetres = 2.2;
/** Words of more lines than this would make a row that no sheet holds. */
const MOST_LINES = 30;

/** The last cell of a row: why it is read, and a dotted line to write on. Five lines fit a plain row. */
export function notesCell(why: string, width: Millimetres): GridCell {
  const room = width - 2 * PAD;
  return {
    name: "notes",
    width,
    padX: PAD,
    padY: 0.9,
    piece: paragraph(abridged(why, room), TYPE.note, room),
    over: {
      height: RULE_ROOM,
      at: (box) => {
        const y = box.y + box.height - RULE_UP;
        return [stroke("rule-dotted", box.x + PAD, y, box.x + width - PAD, y)];
      },
    },
  };
}

/** The words as they are, or as many as a row can hold with a sign that there were more. */
function abridged(words: string, room: Millimetres): string {
  const lines = linesOf(words, TYPE.note, room);
  return lines.length <= MOST_LINES ? words : `${lines.slice(0, MOST_LINES - 1).join(" ")} …`;
}
