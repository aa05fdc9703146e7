import { switchKind } from "./switchKind.ts";

/** A switch moved by hand, with the continuity table that the circuit writes for it; a panel has several controls. */
export const handSwitch = switchKind({
  name: "switch",
  title: "Switch",
  words: ["rocker", "toggle", "panel", "stalk", "contact", "window switch", "selector"],
  operator: "hand",
});
