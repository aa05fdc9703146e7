import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Drawing, Mark } from "../drawing/mark.ts";
import type { Cell } from "./cell.ts";
import { PAD_X, PAD_Y, roomIn } from "./grid.ts";
import { fitted, lineMark, widthMm } from "./lines.ts";
import type { Sheet } from "./page.ts";
import { TYPE, type TypeSize } from "./sizes.ts";

/** What one job and one person put into the head of a print; left to be written by hand where it is absent or empty. */
export interface OwnWords {
  /** This very vehicle, such as its plate. */
  readonly vehicle?: string | undefined;
  readonly technician?: string | undefined;
}

/**
 * The sheets with these words in the head of the first: they are laid into its fields when all else stands, so that neither the
 * code nor where anything lies follows from them. Drawings without such a head stay as they are.
 */
export function withOwnWords(
  drawings: readonly Drawing[],
  { vehicle = "", technician = "" }: OwnWords,
): readonly Drawing[] {
  const [first, ...later] = drawings;
  if (!first || !("cells" in first)) return drawings;
  const sheet = first as Sheet;
  const added = sheet.cells.map((cell): readonly Mark[] => {
    if (cell.name === WORDS.technician) return below(cell, technician);
    return cell.name === WORDS.vehicle ? beside(cell, vehicle) : [];
  });
  if (added.every((marks) => marks.length === 0)) return drawings;
  const cells = sheet.cells.map((cell, at) => ({ ...cell, marks: [...cell.marks, ...added[at]!] }));
  const filled: Sheet = { ...sheet, marks: [...sheet.marks, ...added.flat()], cells };
  return [filled, ...later];
}

/** Under the name of a field that was left empty. */
function below({ box }: Cell, words: string): readonly Mark[] {
  return line(words, TYPE.headValue, roomIn(box.width), (shown, type) =>
    lineMark(shown, type, box.x + PAD_X, box.y + PAD_Y + TYPE.small.line),
  );
}

/** At the right of the name of a field that says something already. */
function beside({ name, box }: Cell, words: string): readonly Mark[] {
  const room = roomIn(box.width) - widthMm(`${name}  `, TYPE.small);
  return line(words, TYPE.smallBold, room, (shown, type) =>
    lineMark(shown, type, box.x + box.width - PAD_X, box.y + PAD_Y, { anchor: "end" }),
  );
}

function line(
  words: string,
  type: TypeSize,
  room: number,
  drawn: (shown: string, type: TypeSize) => Mark,
): readonly Mark[] {
  const plain = words.replace(/\s+/g, " ").trim();
  return plain === "" ? [] : [drawn(fitted(plain, type, room), type)];
}
