import { contactForm, switchKind, twoPositions } from "./switchKind.ts";

/** A limit switch: the mechanism moves it at the end of its travel. It opens there unless the circuit says otherwise. */
export const limitSwitch = switchKind({
  name: "limit-switch",
  title: "Limit switch",
  words: ["end stop", "micro switch", "door switch", "position switch"],
  operator: "limit",
  settings: [contactForm("normally closed", "common practice, no source")],
  usualControls: (part) => twoPositions(part, "normally closed", ["free", "at-end"]),
});
