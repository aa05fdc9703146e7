import type { WireState } from "../base/states.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import { terminalKey } from "./sheetPage.ts";
import { isPlugApart } from "./sheetPlugs.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";

/**
 * The marks of a symbol, each lead from a terminal in the state of the wire that ends there, so that a wire is seen up
 * to the part that it feeds. Behind a plug that is apart, and without live state, leads are ink.
 */
export function symbolMarks(setup: SheetSetup, part: SheetPart): readonly Mark[] {
  const { id } = part.part;
  const states = Object.entries(part.shape.terminals).flatMap(([terminal, spot]) => {
    const state = stateAt(setup, id, terminal);
    return state === null ? [] : [{ spot, state }];
  });
  return part.shape.marks.map((mark): Mark => {
    if (mark.mark !== "line" || mark.role !== "symbol" || mark.spots.length !== 2 || mark.closed) {
      return { ...mark, of: id };
    }
    const ends = states.find(({ spot }) => mark.spots.some((end) => isSame(end, spot)));
    return { ...mark, of: id, ...(ends && { role: `wire-${ends.state}` as const }) };
  });
}

function isSame(one: Spot, other: Spot): boolean {
  return Math.abs(one.x - other.x) < 1e-9 && Math.abs(one.y - other.y) < 1e-9;
}

/** The state of the first wire that ends on a terminal; null where none does, or its plug is apart. */
function stateAt(setup: SheetSetup, part: string, terminal: string): WireState | null {
  for (const { wire, end } of setup.wiresAt.get(terminalKey(part, terminal)) ?? []) {
    if (isPlugApart(setup, end === 0 ? wire.from : wire.to)) continue;
    const state = setup.live?.wires.get(wire.id)?.state[end];
    if (state !== undefined) return state;
  }
  return null;
}
