import type { PointId } from "../../core/base/ids.ts";
import type { AssemblyId } from "../../core/edit/assemblies.ts";

/** A quarter turn that a part to be placed has. */
export type Turn = 0 | 90 | 180 | 270;

/** A part of a kind, or a ready assembly, on its way from the catalogue to the drawing. */
export type Dropping = (
  | { readonly is: "part"; readonly kind: string; readonly turn: Turn; readonly flip: boolean }
  | { readonly is: "assembly"; readonly assembly: AssemblyId }
) & {
  /** True while it is dragged: it is placed where the pointer lets go. */
  readonly isDragged?: boolean;
};

/** Wires are drawn; where terminals are gathered already, several at once. */
export interface WireTool {
  readonly is: "wire";
  readonly gathered?: readonly PointId[];
}

/** A lead of an instrument of the bench is clipped on, or the jaws of a clamp are put round a wire. */
export interface LeadTool {
  readonly is: "lead";
  /** Id of the instrument. */
  readonly instrument: string;
  readonly lead: "red" | "black" | "jaws";
  /** Where it is clipped while it is taken elsewhere; null where it hangs free. */
  readonly from: string | null;
}

/** What a press on the drawing does: throw and choose, carry, place what was taken from the catalogue, draw wires, or clip a lead. */
export type Tool = { readonly is: "hand" | "carry" } | Dropping | WireTool | LeadTool;

/** The tool one starts with. */
export const HAND: Tool = { is: "hand" };

/** Carries by two clicks what a drag carries: on what is to move, and on where it goes. */
export const CARRY: Tool = { is: "carry" };

/** True where a tool is the bare hand, which chooses and carries, and has nothing of its own under way. */
export function isHand({ is }: Tool): boolean {
  return is === "hand" || is === "carry";
}

/** Whether a tool places something from the catalogue. */
export function isDropping(tool: Tool): tool is Dropping {
  return tool.is === "part" || tool.is === "assembly";
}

/** The same part turned by a quarter clockwise. */
export function turnedOn(turn: Turn): Turn {
  return ((turn + 90) % 360) as Turn;
}
