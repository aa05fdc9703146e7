import { contactForm, switchKind, twoPositions } from "./switchKind.ts";

/** A level switch: at rest with the tank full; its float closes the contact when the level is low. */
export const levelSwitch = switchKind({
  name: "level-switch",
  title: "Level switch",
  words: ["float switch", "coolant level", "washer level", "brake fluid"],
  operator: "level",
  settings: [contactForm("normally open", "common practice, no source")],
  usualControls: (part) => twoPositions(part, "normally open", ["full", "low"]),
});
