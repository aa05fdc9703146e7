import { contactForm, switchKind, twoPositions } from "./switchKind.ts";

/** A temperature switch: at rest cold; its contact closes when hot, as for a radiator fan. */
export const temperatureSwitch = switchKind({
  name: "temperature-switch",
  title: "Temperature switch",
  words: ["thermostat", "thermal switch", "fan switch"],
  operator: "temperature",
  settings: [contactForm("normally open", "common practice, no source")],
  usualControls: (part) => twoPositions(part, "normally open", ["cold", "hot"]),
});
