import { placeSymbol } from "../../core/circuit/placeSymbol.ts";
import { restPose } from "../../core/circuit/sheetPose.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { firstPart, firstTurn } from "../../core/edit/newPart.ts";
import type { Kind, Look } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";

/** The symbol of a kind at rest as it is first drawn, without words. Grid units. */
export function kindMarks(kind: Kind, volts: number, look: Look): readonly Mark[] {
  const view = viewOf(kind, firstPart(kind, `${kind.letter}1`), volts);
  const place = { page: "", x: 0, y: 0, turn: firstTurn(kind) };
  return placeSymbol(kind.symbol(view, restPose(kind, view), look), place).marks.filter(({ mark }) => mark !== "text");
}
