import type { GridUnits } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { arc, box, line, text } from "../drawing/shapes.ts";
import { diodeBody, resistorBody } from "./bodies.ts";
import type { ContactGroup } from "./contacts.ts";
import type { Look, PartView, Pose, SymbolShape } from "./kind.ts";
import { bladeMiddle, bodyBox, contactMarks, layOutContacts, linkEnd, terminalSpots } from "./switchSymbol.ts";

const COIL_ASIDE: GridUnits = 2;
const SUPPRESSOR_ASIDE: GridUnits = 4;

/** Contacts at the left, the coil at the right with its minus at the top and its plus at the foot, and a link to the blades. */
export function relaySymbol(
  view: PartView,
  contacts: ContactGroup,
  [plus, minus]: readonly [string, string],
  pose: Pose,
  look: Look,
): SymbolShape {
  const terminals = view.terminals.filter((terminal) => terminal !== plus && terminal !== minus);
  const layout = layOutContacts(
    [contacts],
    terminals,
    contacts.contacts.slice(0, 1).map(({ a }) => a),
  );
  const x = Math.ceil(layout.width + COIL_ASIDE);
  const middle = bladeMiddle(layout);
  const fitted = view.word("suppression");
  const width = x + (fitted === "none" ? 3 : SUPPRESSOR_ASIDE + 2);
  const names = [
    text(minus, x + 0.45, 1.45, { role: "text-quiet" }),
    text(plus, x + 0.45, layout.height - 0.65, { role: "text-quiet" }),
  ];
  return {
    width,
    height: layout.height,
    terminals: {
      ...terminalSpots(layout),
      [minus]: { x, y: 0, side: "up" },
      [plus]: { x, y: layout.height, side: "down" },
    },
    marks: [
      bodyBox(width, layout.height),
      line("link", linkEnd(layout, pose), middle, look === "iec" ? x - 1.8 : x, middle),
      ...coilMarks(x, middle, layout.height, look),
      ...suppressorMarks(fitted, x, middle, look),
      ...names,
      ...contactMarks(layout, pose, false),
    ],
    nameAt: { x: width + 0.6, y: 2, anchor: "start" },
  };
}

/** IEC: a rectangle with leads at its long sides; North America: three loops. */
function coilMarks(x: GridUnits, middle: GridUnits, height: GridUnits, look: Look): readonly Mark[] {
  if (look === "na") {
    const loops = [-1.2, 0, 1.2].map((away) => arc("symbol", x, middle + away, 0.6, 270, 450));
    return [line("symbol", x, 0, x, middle - 1.8), ...loops, line("symbol", x, middle + 1.8, x, height)];
  }
  return [
    line("symbol", x, 0, x, middle - 1.3),
    box("symbol", x - 1.8, middle - 1.3, 3.6, 2.6),
    line("symbol", x, middle + 1.3, x, height),
  ];
}

/** What lies across the coil: the diode points from 85 at the top away from 86, its bar towards 86. */
function suppressorMarks(fitted: string, coilX: GridUnits, middle: GridUnits, look: Look): readonly Mark[] {
  if (fitted === "none") return [];
  const x = coilX + SUPPRESSOR_ASIDE;
  const [top, foot] = [middle - 1, middle + 1];
  const body = fitted === "diode" ? diodeBody(look, x, top, foot) : resistorBody(look, x, top, foot);
  return [
    line("symbol", coilX, middle - 2.4, x, middle - 2.4, x, top),
    line("symbol", x, foot, x, middle + 2.4, coilX, middle + 2.4),
    ...body,
  ];
}
