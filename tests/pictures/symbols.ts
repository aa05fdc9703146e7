import type { Circuit, PartPlace } from "../../core/circuit/circuit.ts";
import { emptyCircuit } from "../../core/circuit/emptyCircuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import type { Drawing } from "../../core/drawing/mark.ts";
import { millimetresOf } from "../../core/drawing/scale.ts";
import { firstPart } from "../../core/edit/newPart.ts";
import { KINDS } from "../../core/parts/catalogue.ts";
import type { Look } from "../../core/parts/kind.ts";

/** Parts to a row, and the room of each, grid units. */
const ACROSS = 6;
const CELL = { width: 27, height: 22 } as const;
/** From the corner of its room to the part, so that names on either side have place. */
const INSET = { x: 10, y: 6 } as const;

/** Every kind of part as it comes from the catalogue, at rest and with its terminals named, turned so far. */
export function symbols(look: Look, turn: NonNullable<PartPlace["turn"]>): Drawing {
  const sheet = sheetOf({ circuit: circuitOf(turn), page: "p1", look, framed: false });
  if (!sheet.ok) throw new Error(`refused: ${sheet.refusal.code}`);
  return sheet.value;
}

function circuitOf(turn: NonNullable<PartPlace["turn"]>): Circuit {
  const parts = KINDS.map((kind, index) => ({ ...firstPart(kind, `${kind.letter}${index + 1}`), label: kind.title }));
  const places = parts.map(({ id }, index): readonly [string, PartPlace] => [
    id,
    {
      page: "p1",
      x: (index % ACROSS) * CELL.width + INSET.x,
      y: Math.floor(index / ACROSS) * CELL.height + INSET.y,
      ...(turn !== 0 && { turn }),
    },
  ]);
  const rows = Math.ceil(KINDS.length / ACROSS);
  const [page] = emptyCircuit("Symbols").pages;
  const size = { widthMm: millimetresOf(ACROSS * CELL.width), heightMm: millimetresOf(rows * CELL.height) };
  return {
    ...emptyCircuit("Symbols"),
    pages: [{ ...page!, ...size }],
    parts,
    placement: { parts: Object.fromEntries(places), wires: {} },
  };
}
