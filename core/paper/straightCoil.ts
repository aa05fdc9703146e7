import type { Millimetres } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { outline, stroke } from "./cell.ts";
import { widthMm } from "./lines.ts";
import type { RowBand } from "./straightBand.ts";
import { middleLine } from "./straightMarks.ts";
import { AT, STRAIGHT_TYPE as TYPE } from "./straightSize.ts";
import { feedParts, returnParts } from "./straightWords.ts";

const BOX: { readonly width: Millimetres; readonly height: Millimetres } = { width: 3.6, height: 2.6 };

/** The coil beside the contact that it moves: its terminals with what feeds and what grounds it. */
export function coilMarks(band: RowBand, y: Millimetres): readonly Mark[] {
  const coil = band.controls.find(({ sort }) => sort === "coil");
  if (!coil) return [];
  const x = AT.line - 7.4;
  const own = coil.lines[0]?.rows.find((row) => row.is === "part" && row.part === coil.part);
  const [plus = "", minus = ""] = own?.is === "part" ? own.terminals : [];
  const room = x - 0.8 - AT.part;
  const feed = fitting(plus, feedParts(coil, band.branch), room);
  const back = fitting(minus, returnParts(coil, band.branch), room);
  return [
    outline("symbol", { x: x - BOX.width / 2, y: y - BOX.height / 2, width: BOX.width, height: BOX.height }),
    stroke("symbol-fine", x, y - BOX.height / 2, x, y - 3.4),
    stroke("symbol-fine", x, y + BOX.height / 2, x, y + 3.4),
    stroke("link", x + BOX.width / 2, y, AT.line - 0.8, y),
    middleLine(feed, TYPE.end, x - 0.8, y - 2.9, "end"),
    middleLine(back, TYPE.end, x - 0.8, y + 2.9, "end"),
  ];
}

/** A terminal and the parts on its way, those nearest the coil first to stay where there is no room for all. */
function fitting(terminal: string, parts: readonly string[], room: Millimetres): string {
  for (let left = 0; left < parts.length; left++) {
    const words = `${terminal} ${left > 0 ? "… " : ""}${parts.slice(left).join(", ")}`;
    if (widthMm(words, TYPE.end) <= room) return words;
  }
  return terminal;
}
