import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Expected, Unit } from "../diagnose/step.ts";
import { outline } from "./cell.ts";
import { lineMark } from "./lines.ts";
import { type Piece, space, stack } from "./piece.ts";
import { TYPE } from "./sizes.ts";

/** The field of a reading: large enough for a gloved hand with a pencil. */
export const FIELD: { readonly width: Millimetres; readonly height: Millimetres } = { width: 27, height: 11 };

const TICK: Millimetres = 4;
/** The corner of a field that its unit takes. */
const UNIT_ROOM: Millimetres = 1.1;

/** A box to write a reading in, its unit in the lower right corner; none for what is seen or heard. */
export function fieldPiece(unit: Unit | "Ω" | "", width: Millimetres = FIELD.width): Piece {
  return {
    height: FIELD.height,
    at: (x, y) => [
      outline("field", { x, y, width, height: FIELD.height }),
      ...(unit === ""
        ? []
        : [
            lineMark(
              unit === "ohm" ? "Ω" : unit,
              TYPE.unit,
              x + width - UNIT_ROOM,
              y + FIELD.height - TYPE.unit.line - 0.5,
              {
                anchor: "end",
              },
            ),
          ]),
    ],
  };
}

/** Three small boxes to tick for how a lamp burns: bright, dim, dark. */
export function ticksPiece(width: Millimetres): Piece {
  const words = WORDS.brightness;
  const share = width / words.length;
  return {
    height: TICK + 0.3 + TYPE.tick.line,
    at: (x, y) =>
      words.flatMap((word, i) => {
        const middle = x + share * (i + 0.5);
        const box = outline("place", { x: middle - TICK / 2, y, width: TICK, height: TICK });
        return [box, lineMark(word, TYPE.tick, middle, y + TICK + 0.3, { anchor: "middle" })];
      }),
  };
}

/** The field of a row, with the ticks below where a lamp burns. */
export function readingPiece(unit: Expected["unit"] | "", hasLamp: boolean): Piece {
  const ticks = hasLamp ? [space(1), ticksPiece(FIELD.width)] : [];
  return stack([fieldPiece(unit), ...ticks]);
}
