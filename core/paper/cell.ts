import type { Millimetres } from "../base/units.ts";
import { strokesOf } from "../drawing/ink.ts";
import type { Mark, Role } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";

/** A box on the sheet, in millimetres from the sheet's top left; y down. */
export interface Box {
  readonly x: Millimetres;
  readonly y: Millimetres;
  readonly width: Millimetres;
  readonly height: Millimetres;
}

/** A box of a sheet and all that was drawn for it: nothing of it may reach beyond the box. */
export interface Cell {
  readonly name: string;
  readonly box: Box;
  readonly marks: readonly Mark[];
}

/** Marks of a part of a sheet, and the cells they were drawn into. */
export interface Drawn {
  readonly marks: readonly Mark[];
  readonly cells: readonly Cell[];
}

/** Several parts of a sheet as one, painted in this order. */
export function together(...parts: readonly Drawn[]): Drawn {
  return { marks: parts.flatMap((part) => part.marks), cells: parts.flatMap((part) => part.cells) };
}

/** Lines and boxes that belong to no cell. They carry no type: type is always drawn through `inCell`. */
export function ruled(...marks: readonly Mark[]): Drawn {
  return { marks, cells: [] };
}

/** Marks drawn into a box, remembered together so that a test can hold them to it. */
export function inCell(name: string, box: Box, marks: readonly Mark[]): Drawn {
  return { marks, cells: [{ name, box, marks }] };
}

/** Width of the line of a role, in millimetres. */
export function lineWidth(role: Role): Millimetres {
  return strokesOf(role, "black").strokes[0]?.width ?? 0;
}

/** The outline of a box, its line wholly inside. */
export function outline(role: Role, box: Box, corner: Millimetres = 0): Mark {
  const inset = lineWidth(role) / 2;
  return {
    mark: "box",
    at: { x: gridUnitsOf(box.x + inset), y: gridUnitsOf(box.y + inset) },
    width: gridUnitsOf(box.width - 2 * inset),
    height: gridUnitsOf(box.height - 2 * inset),
    corner: gridUnitsOf(corner),
    role,
  };
}

/** A box of solid ink. */
export function solidBox(box: Box): Mark {
  return {
    mark: "box",
    at: { x: gridUnitsOf(box.x), y: gridUnitsOf(box.y) },
    width: gridUnitsOf(box.width),
    height: gridUnitsOf(box.height),
    role: "solid",
    filled: true,
  };
}

/** A straight line through x, y pairs in millimetres. */
export function stroke(role: Role, ...xy: readonly Millimetres[]): Mark {
  const spots = [];
  for (let i = 0; i + 1 < xy.length; i += 2) spots.push({ x: gridUnitsOf(xy[i]!), y: gridUnitsOf(xy[i + 1]!) });
  return { mark: "line", spots, role };
}

/** A circle round x, y, all in millimetres. */
export function ring(role: Role, x: Millimetres, y: Millimetres, radius: Millimetres, filled = false): Mark {
  return { mark: "circle", at: { x: gridUnitsOf(x), y: gridUnitsOf(y) }, radius: gridUnitsOf(radius), role, filled };
}
