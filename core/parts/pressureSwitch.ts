import { contactForm, switchKind, twoPositions } from "./switchKind.ts";

/** A pressure switch: at rest without pressure, its contact closed as for an oil warning lamp. */
export const pressureSwitch = switchKind({
  name: "pressure-switch",
  title: "Pressure switch",
  words: ["oil pressure", "brake light switch", "vacuum switch", "refrigerant pressure"],
  operator: "pressure",
  settings: [contactForm("normally closed", "common practice, no source")],
  usualControls: (part) => twoPositions(part, "normally closed", ["no-pressure", "pressure"]),
});
