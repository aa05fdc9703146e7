import { contactForm, switchKind, twoPositions } from "./switchKind.ts";

/** A push button: it springs back to rest when let go. */
export const pushButton = switchKind({
  name: "push-button",
  title: "Push button",
  words: ["button", "momentary", "horn button", "bell push"],
  operator: "push",
  settings: [contactForm("normally open", "common practice, no source")],
  usualControls: (part) => twoPositions(part, "normally open", ["rest", "pressed"], true),
});
