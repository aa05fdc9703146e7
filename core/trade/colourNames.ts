/** The black-only fill that stands for a colour in print, beside its text code. */
export const HATCHES = [
  "solid",
  "empty",
  "upright",
  "level",
  "falling",
  "rising",
  "dots",
  "crossed",
  "level-dashes",
  "upright-dashes",
  "upright-and-dots",
  "falling-dashes",
  "close-falling",
  "level-and-dots",
  "close-level",
  "wide-level",
  "rising-dashes",
  "rising-and-dots",
  "squares",
  "crossed-and-dots",
  "falling-and-dots",
] as const;
export type Hatch = (typeof HATCHES)[number];

/** A colour of insulation: its name, the sRGB of its swatch, its hatch where ink is black only. */
export interface ColourName {
  readonly name: string;
  readonly hex: string;
  readonly hatch: Hatch;
}

/** Every colour that a code can name. The swatch colours are chosen for the screen; no standard gives them. */
export const COLOUR_NAMES = [
  { name: "black", hex: "#222222", hatch: "solid" },
  { name: "white", hex: "#FFFFFF", hatch: "empty" },
  { name: "red", hex: "#C4211F", hatch: "upright" },
  { name: "blue", hex: "#1F5DB6", hatch: "level" },
  { name: "green", hex: "#1E8A3C", hatch: "falling" },
  { name: "violet", hex: "#7A3E9D", hatch: "rising" },
  { name: "yellow", hex: "#F2C811", hatch: "dots" },
  { name: "brown", hex: "#7A4A21", hatch: "crossed" },
  { name: "grey", hex: "#8C8C8C", hatch: "level-dashes" },
  { name: "pink", hex: "#F29BB8", hatch: "upright-dashes" },
  { name: "orange", hex: "#EE7A12", hatch: "upright-and-dots" },
  { name: "light green", hex: "#7CCB5A", hatch: "falling-dashes" },
  { name: "dark green", hex: "#0E5527", hatch: "close-falling" },
  { name: "light blue", hex: "#82AEE8", hatch: "level-and-dots" },
  { name: "dark blue", hex: "#123A7A", hatch: "close-level" },
  { name: "sky blue", hex: "#5CC3EE", hatch: "wide-level" },
  { name: "tan", hex: "#D2B48C", hatch: "rising-dashes" },
  { name: "gold", hex: "#B8902B", hatch: "rising-and-dots" },
  { name: "turquoise", hex: "#1BA7A6", hatch: "squares" },
  { name: "silver", hex: "#C3C8CC", hatch: "crossed-and-dots" },
  { name: "green and yellow", hex: "#9DBB22", hatch: "falling-and-dots" },
] as const satisfies readonly ColourName[];
export type ColourWord = (typeof COLOUR_NAMES)[number]["name"];

/** The record of a colour by its word. */
export function colourNamed(word: ColourWord): ColourName {
  return COLOUR_NAMES.find((each) => each.name === word)!;
}
