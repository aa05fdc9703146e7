import type { Anchor, Mark, Role, Spot, Weight } from "./mark.ts";

/** Short ways to write the marks that symbols share. Coordinates in grid units, type in points. */

/** A run of straight lines through x, y pairs. */
export function line(role: Role, ...xy: readonly number[]): Mark {
  const spots: Spot[] = [];
  for (let i = 0; i + 1 < xy.length; i += 2) spots.push({ x: xy[i]!, y: xy[i + 1]! });
  return { mark: "line", spots, role };
}

/** A closed, filled outline through x, y pairs. */
export function solid(role: Role, ...xy: readonly number[]): Mark {
  return { ...line(role, ...xy), closed: true, filled: true } as Mark;
}

/** A circle round x, y. */
export function circle(role: Role, x: number, y: number, radius: number, filled = false): Mark {
  return { mark: "circle", at: { x, y }, radius, role, filled };
}

/** A box with its top left at x, y. */
export function box(role: Role, x: number, y: number, width: number, height: number, corner = 0): Mark {
  return { mark: "box", at: { x, y }, width, height, corner, role };
}

/** The same, filled. */
export function filledBox(role: Role, x: number, y: number, width: number, height: number, corner = 0): Mark {
  return { mark: "box", at: { x, y }, width, height, corner, role, filled: true };
}

/** Part of a circle, angles in degrees clockwise from three o'clock. */
export function arc(role: Role, x: number, y: number, radius: number, from: number, to: number): Mark {
  return { mark: "arc", at: { x, y }, radius, from, to, role };
}

/** A line of type with its baseline at y. */
export function text(
  words: string,
  x: number,
  y: number,
  options: { points?: number; weight?: Weight; anchor?: Anchor; role?: Role } = {},
): Mark {
  const { points = 8, weight = 400, anchor = "start", role = "text" } = options;
  return { mark: "text", at: { x, y }, text: words, points, weight, anchor, role };
}

/** The small ring of a terminal. */
export function terminalRing(x: number, y: number): Mark {
  return circle("terminal", x, y, 0.3);
}
