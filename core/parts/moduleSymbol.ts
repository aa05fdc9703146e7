import type { GridUnits } from "../base/units.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import { line, text } from "../drawing/shapes.ts";
import { textWidth } from "../drawing/type.ts";
import type { PartView, PinRole, Pose, Side, SymbolShape } from "./kind.ts";
import { bodyBox } from "./switchSymbol.ts";

/** Distance between pins of one side, and between those of top and foot. */
const PITCH: GridUnits = 2;
const RAIL_PITCH: GridUnits = 4;
const POINTS = 8;
/** Baseline of the name under the edge or under the names of supplies, and room down to the first pin beneath it. */
const NAME_LINE: GridUnits = 1.9;
const NAME_UNDER_RAILS: GridUnits = 3.5;
const TO_FIRST: GridUnits = 2;
const LABEL_LINE: GridUnits = 2;

interface Pin {
  readonly name: string;
  readonly x: GridUnits;
  readonly y: GridUnits;
  readonly side: Side;
}

/** Width of the longest of some pin names. */
function room(names: readonly string[]): GridUnits {
  return Math.max(0, ...names.map((name) => textWidth(name, POINTS, 400)));
}

/**
 * The box of a module with its name inside: supplies on top, grounds at the foot, inputs and unknown pins at the left,
 * outputs at the right. An output that is driven now carries a bold bar at the edge.
 */
export function moduleSymbol(view: PartView, roles: ReadonlyMap<string, PinRole>, pose: Pose): SymbolShape {
  const those = (...wanted: readonly PinRole[]) =>
    view.terminals.filter((pin) => wanted.includes(roles.get(pin) ?? "unknown"));
  const [supplies, grounds] = [those("supply"), those("ground")];
  const [left, right] = [those("input", "unknown"), those("drives-high", "drives-low")];
  const rails = Math.max(supplies.length, grounds.length);
  const words = Math.max(textWidth(view.part.label ?? "", 9, 400), textWidth(view.part.id, 10.5, 600));
  const width = Math.ceil(Math.max(8, words + 1.4, room(left) + room(right) + 2.4, rails * RAIL_PITCH));
  const nameY = supplies.length > 0 ? NAME_UNDER_RAILS : NAME_LINE;
  const first = Math.ceil(nameY + TO_FIRST + (view.part.label ? LABEL_LINE : 0));
  const last = first + PITCH * (Math.max(left.length, right.length, 1) - 1);
  const height = last + (grounds.length > 0 ? 3 : 2);
  const pins: readonly Pin[] = [
    ...supplies.map((name, index): Pin => ({ name, x: 2 + RAIL_PITCH * index, y: 0, side: "up" })),
    ...grounds.map((name, index): Pin => ({ name, x: 2 + RAIL_PITCH * index, y: height, side: "down" })),
    ...left.map((name, index): Pin => ({ name, x: 0, y: first + PITCH * index, side: "left" })),
    ...right.map((name, index): Pin => ({ name, x: width, y: first + PITCH * index, side: "right" })),
  ];
  const isDriven = (pin: string) =>
    right.includes(pin) && [...pose.closed].some((key) => touches(key, pin, view.terminals));
  return {
    width,
    height,
    terminals: Object.fromEntries(pins.map(({ name, x, y, side }) => [name, { x, y, side }])),
    marks: [bodyBox(width, height), ...pins.flatMap((pin) => pinMarks(pin, isDriven(pin.name)))],
    nameAt: { x: width / 2, y: nameY, anchor: "middle" },
  };
}

function pinMarks({ name, x, y, side }: Pin, isDriven: boolean): readonly Mark[] {
  const labels: Readonly<Record<Side, Spot & { readonly anchor: "start" | "middle" | "end" }>> = {
    up: { x, y: 1.45, anchor: "middle" },
    down: { x, y: y - 0.65, anchor: "middle" },
    left: { x: 0.6, y: y + 0.4, anchor: "start" },
    right: { x: x - 0.6, y: y + 0.4, anchor: "end" },
  };
  const label = labels[side];
  return [
    ...(isDriven ? [line("contact-now", x, y - 0.7, x, y + 0.7)] : []),
    text(name, label.x, label.y, { points: POINTS, role: "text-quiet", anchor: label.anchor }),
  ];
}

/** Whether a contact's key names this pin; names may hold hyphens, so the whole pair is tried. */
function touches(key: string, pin: string, pins: readonly string[]): boolean {
  return pins.some((other) => key === `${pin}-${other}` || key === `${other}-${pin}`);
}
