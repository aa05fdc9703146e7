import type { Millimetres } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { parseColour } from "../trade/colours.ts";
import { paragraph, widthMm } from "./lines.ts";
import { beside, type Piece, stack } from "./piece.ts";
import { TYPE } from "./sizes.ts";

const SWATCH: { readonly width: Millimetres; readonly height: Millimetres } = { width: 9, height: 3.4 };
const GAP: Millimetres = 1.4;

/** The swatch of a colour code; nothing where the circuit's set does not know the code. */
function swatchPiece(circuit: Circuit, code: string): Piece | null {
  if (circuit.colourCodes === "free") return null;
  const colour = parseColour(code, circuit.colourCodes);
  if (!colour.ok) return null;
  const { base, stripes } = colour.value;
  const [width, height] = [gridUnitsOf(SWATCH.width), gridUnitsOf(SWATCH.height)];
  const at = (x: Millimetres, y: Millimetres): readonly Mark[] => [
    { mark: "swatch", at: { x: gridUnitsOf(x), y: gridUnitsOf(y) }, width, height, base, stripes },
  ];
  return { height: SWATCH.height, at };
}

/** Swatch and text code of a wire's colour, the code below where it does not fit beside. Nothing for no colour. */
export function colourPiece(circuit: Circuit, code: string | null, room: Millimetres): Piece {
  if (code === null || code === "") return stack([]);
  const swatch = swatchPiece(circuit, code);
  if (!swatch) return paragraph(code, TYPE.colour, room);
  const left = SWATCH.width + GAP;
  if (left + widthMm(code, TYPE.colour) > room) return stack([swatch, paragraph(code, TYPE.colour, room)], 0.3);
  return beside(
    [
      { x: 0, piece: swatch },
      { x: left, piece: paragraph(code, TYPE.colour, room - left) },
    ],
    "middle",
  );
}
