import type { Mark } from "../drawing/mark.ts";
import { box, line, solid } from "../drawing/shapes.ts";
import type { Look } from "./kind.ts";

/** Outlines that several symbols share. All stand upright on the line x, between top and bottom. */

/** A resistor: a rectangle, or a zigzag of six strokes; 1.6 wide unless told otherwise. */
export function resistorBody(look: Look, x: number, top: number, bottom: number, width = 1.6): readonly Mark[] {
  const height = bottom - top;
  if (look === "iec") return [box("symbol", x - width / 2, top, width, height)];
  const spots = [x, top];
  for (let turn = 0; turn < 6; turn++)
    spots.push(x + (turn % 2 === 0 ? width : -width) / 2, top + (height * (turn + 0.5)) / 6);
  return [line("symbol", ...spots, x, bottom)];
}

/** A diode that passes current downwards: an outline with the lead through it, or a filled triangle. */
export function diodeBody(look: Look, x: number, top: number, bottom: number): readonly Mark[] {
  const bar = line("symbol", x - 1.1, bottom, x + 1.1, bottom);
  if (look === "na") return [solid("symbol", x - 1.1, top, x + 1.1, top, x, bottom), bar];
  return [
    { ...line("symbol", x - 1.1, top, x + 1.1, top, x, bottom), closed: true } as Mark,
    line("symbol", x, top, x, bottom),
    bar,
  ];
}

/** An arrow from one spot to another, its head 0.7 long. */
export function arrow(fromX: number, fromY: number, toX: number, toY: number): readonly Mark[] {
  const length = Math.hypot(toX - fromX, toY - fromY);
  const alongX = (toX - fromX) / length;
  const alongY = (toY - fromY) / length;
  const backX = toX - 0.7 * alongX;
  const backY = toY - 0.7 * alongY;
  const [acrossX, acrossY] = [-0.3 * alongY, 0.3 * alongX];
  return [
    line("symbol-fine", fromX, fromY, backX, backY),
    solid("symbol-fine", toX, toY, backX + acrossX, backY + acrossY, backX - acrossX, backY - acrossY),
  ];
}
