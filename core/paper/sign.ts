import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { type Instrument, isBySense } from "../diagnose/step.ts";
import type { Mark } from "../drawing/mark.ts";
import { ring, stroke } from "./cell.ts";
import { lineMark, paragraph } from "./lines.ts";
import { beside, type Piece } from "./piece.ts";
import { TYPE } from "./sizes.ts";

/** What a sign stands for: a meter on volts or on ohms, a clamp, or a lamp that loads the wire. */
export type Sign = "volts" | "ohms" | "amps" | "lamp";

const RADIUS: Millimetres = 2.4;
const LETTERS = { volts: "V", ohms: "Ω", amps: "A" } as const;

/** The sign of an instrument, 5 mm high: a letter in a circle, or the lamp's cross. */
export function signPiece(sign: Sign): Piece {
  return {
    height: 2 * RADIUS + 0.4,
    at(x, y) {
      const [cx, cy] = [x + RADIUS + 0.2, y + RADIUS + 0.2];
      const circle = ring("field", cx, cy, RADIUS);
      if (sign === "lamp") return [circle, ...crossMarks(cx, cy, RADIUS)];
      const type = TYPE.cavityMarked;
      return [circle, lineMark(LETTERS[sign], type, cx, cy - type.line / 2, { anchor: "middle" })];
    },
  };
}

/** Signs of the instruments that are no lamp. */
const METERS: Readonly<Partial<Record<Instrument, Sign>>> = {
  "meter volts": "volts",
  "meter ohms": "ohms",
  clamp: "amps",
};

function crossMarks(cx: Millimetres, cy: Millimetres, radius: Millimetres): readonly Mark[] {
  const arm = radius * Math.SQRT1_2;
  return [
    stroke("field", cx - arm, cy - arm, cx + arm, cy + arm),
    stroke("field", cx - arm, cy + arm, cx + arm, cy - arm),
  ];
}

/** The signs of a row's instruments and their name, on a line of 6 mm; of a look or a sound the name alone. */
export function instrumentPiece(instrument: Instrument, room: Millimetres, isLampAlone = false): Piece {
  if (isBySense(instrument)) {
    const words = paragraph(WORDS.senses[instrument], TYPE.instrument, room);
    return { ...words, height: Math.max(6, words.height) };
  }
  const alone = METERS[instrument];
  const signs: readonly Sign[] = alone ? [alone] : isLampAlone ? ["lamp"] : ["lamp", "volts"];
  const words = WORDS.instruments[instrument];
  const pitch = 2 * RADIUS + 1.4;
  const left = signs.length * pitch + 0.4;
  const line = beside(
    [
      ...signs.map((sign, i) => ({ x: i * pitch, piece: signPiece(sign) })),
      { x: left, piece: paragraph(words, TYPE.instrument, room - left) },
    ],
    "middle",
  );
  return { ...line, height: Math.max(6, line.height) };
}
