import type { Part, Position } from "./kind.ts";
import { switchKind } from "./switchKind.ts";

/** Off, accessory, on, and start springing back to on, between terminals of DIN 72552 (75 from memory). */
const POSITIONS: readonly Position[] = [
  { name: "off", joins: [] },
  { name: "accessory", joins: [["30", "75"]] },
  {
    name: "on",
    joins: [
      ["30", "75"],
      ["30", "15"],
    ],
  },
  {
    name: "start",
    joins: [
      ["30", "15"],
      ["30", "50"],
    ],
    springsBackTo: "on",
  },
];

function usualPositions(part: Part): readonly Position[] {
  const has = (terminal: string): boolean => part.terminals?.includes(terminal) ?? true;
  return POSITIONS.map((position) => ({ ...position, joins: position.joins.filter(([a, b]) => has(a) && has(b)) }));
}

/** The key switch: 30 to 15, 50 and 75 in four positions, unless the circuit writes its own. */
export const ignitionSwitch = switchKind({
  name: "ignition-switch",
  title: "Ignition switch",
  words: ["key", "ignition", "starter switch"],
  operator: "key",
  usualControls: (part) => [{ name: "", positions: usualPositions(part) }],
});
