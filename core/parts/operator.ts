import type { GridUnits } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { arc, box, circle, line, text } from "../drawing/shapes.ts";

/** What moves a switch: a hand, a pushing finger, a key, or a condition. */
export type Operator = "hand" | "push" | "key" | "limit" | "pressure" | "level" | "temperature";

/** The sign of what moves a switch at x, y (its middle), and the dashed link from it to the blade at `bladeX`. */
export function operatorMarks(operator: Operator, x: GridUnits, y: GridUnits, bladeX: GridUnits): readonly Mark[] {
  const { marks, right } = SIGNS[operator](x, y);
  return [...marks, line("link", right, y, Math.max(right, bladeX), y)];
}

interface Sign {
  readonly marks: readonly Mark[];
  readonly right: GridUnits;
}

const SIGNS: Readonly<Record<Operator, (x: GridUnits, y: GridUnits) => Sign>> = {
  hand: (x, y) => ({ marks: [line("symbol", x, y - 0.9, x, y + 0.9)], right: x }),
  push: (x, y) => ({ marks: [line("symbol", x + 0.6, y - 0.9, x, y - 0.9, x, y + 0.9, x + 0.6, y + 0.9)], right: x }),
  key: (x, y) => ({
    marks: [
      circle("symbol", x - 0.4, y, 0.5),
      line("symbol", x + 0.1, y, x + 1.1, y),
      line("symbol", x + 0.9, y, x + 0.9, y + 0.5),
      line("symbol", x + 0.5, y, x + 0.5, y + 0.5),
    ],
    right: x + 1.1,
  }),
  limit: (x, y) => ({ marks: [circle("symbol", x, y, 0.55), circle("symbol", x, y, 0.12, true)], right: x + 0.55 }),
  pressure: (x, y) => lettered("p", x, y),
  level: (x, y) => ({
    marks: [line("symbol", x - 0.8, y, x + 0.8, y), arc("symbol", x, y, 0.6, 0, 180)],
    right: x + 0.8,
  }),
  temperature: (x, y) => lettered("t°", x, y),
};

function lettered(letter: string, x: GridUnits, y: GridUnits): Sign {
  return {
    marks: [box("symbol-fine", x - 0.9, y - 0.9, 1.8, 1.8), text(letter, x, y + 0.4, { anchor: "middle" })],
    right: x + 0.9,
  };
}
