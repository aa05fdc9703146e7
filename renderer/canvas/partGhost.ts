import type { Circuit, PartPlace } from "../../core/circuit/circuit.ts";
import { placeSymbol } from "../../core/circuit/placeSymbol.ts";
import { restPose } from "../../core/circuit/sheetPose.ts";
import type { Mark, Spot } from "../../core/drawing/mark.ts";
import { firstPart } from "../../core/edit/newPart.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Look } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";
import type { Tool } from "./tool.ts";

/** A part as it would stand, before it is placed. */
export interface PartGhost {
  readonly place: PartPlace;
  readonly marks: readonly Mark[];
}

interface Wanted {
  readonly circuit: Circuit;
  readonly look: Look;
  readonly page: string;
  readonly tool: Extract<Tool, { is: "part" }>;
  /** Where its middle is wanted, grid units. */
  readonly at: Spot;
}

/** The symbol of a new part with its middle at a spot, terminals on whole grid points; null for a kind that is not known. */
export function partGhost({ circuit, look, page, tool, at }: Wanted): PartGhost | null {
  const kind = kindOf(tool.kind);
  if (!kind) return null;
  const view = viewOf(kind, firstPart(kind, kind.letter), circuit.nominalVolts);
  const shape = kind.symbol(view, restPose(kind, view), look);
  const isLying = tool.turn === 90 || tool.turn === 270;
  const [width, height] = isLying ? [shape.height, shape.width] : [shape.width, shape.height];
  const place: PartPlace = {
    page,
    x: Math.round(at.x - width / 2),
    y: Math.round(at.y - height / 2),
    ...(tool.turn !== 0 && { turn: tool.turn }),
    ...(tool.flip && { flip: true }),
  };
  return { place, marks: placeSymbol(shape, place).marks };
}
