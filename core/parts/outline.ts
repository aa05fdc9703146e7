import type { Mark } from "../drawing/mark.ts";
import { line } from "../drawing/shapes.ts";
import type { PartView, SymbolShape, TestPointSpec } from "./kind.ts";

/**
 * The outline most two-ended parts share: 4 wide, 8 high, the first terminal at the top, leads drawn from the
 * terminals to the body, whose top and bottom edges are given. The name stands to the right.
 */
export function twoEnded(
  terminals: readonly string[],
  body: readonly Mark[],
  edges: readonly [number, number],
): SymbolShape {
  const [top = "1", bottom = "2"] = terminals;
  return {
    width: 4,
    height: 8,
    terminals: { [top]: { x: 2, y: 0, side: "up" }, [bottom]: { x: 2, y: 8, side: "down" } },
    marks: [line("symbol", 2, 0, 2, edges[0]), line("symbol", 2, edges[1], 2, 8), ...body],
    nameAt: { x: 4.6, y: 3.6, anchor: "start" },
  };
}

/** Both ends of a load can be probed. */
export function loadTestPoints(view: PartView): readonly TestPointSpec[] {
  return view.terminals.map((terminal) => ({ terminal, touches: "terminal" }));
}
