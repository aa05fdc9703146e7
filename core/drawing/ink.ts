import type { WireState } from "../base/states.ts";
import type { Millimetres, Share } from "../base/units.ts";
import type { Role } from "./mark.ts";

/** Colours on a light sheet (screen and colour print), on a dark one, or black ink alone. */
export const PALETTES = ["light", "dark", "black"] as const;
export type Palette = (typeof PALETTES)[number];

/** One line that a role draws. Several strokes of one role run side by side: `offset` is to the right of the way drawn. */
export interface Stroke {
  readonly colour: string;
  readonly width: Millimetres;
  /** Lengths drawn and left out in turn; absent for a solid line. */
  readonly dash?: readonly Millimetres[];
  readonly cap: "butt" | "round";
  readonly offset?: Millimetres;
}

/** What a role comes to: its strokes, the fill of a mark that is filled, and the ground under one that is not. */
export interface Ink {
  readonly strokes: readonly Stroke[];
  /** Present where the role can fill. A mark that is filled and has no strokes is the fill alone. */
  readonly fill?: string;
  /** Laid under a closed mark that is not filled, so that a line passing below does not show through. */
  readonly ground?: string;
}

type Tone = "ink" | "quiet" | "soft" | "ghost" | "edge" | "body" | "paper";
type Hue = "feed" | "return" | "between" | "floating" | "clash";

const TONES: Readonly<Record<Palette, Readonly<Record<Tone | Hue, string>>>> = {
  light: {
    ink: "#16201D",
    quiet: "#44504B",
    soft: "#5C6863",
    ghost: "#B3BCB8",
    edge: "#7A8681",
    body: "#F4F6F5",
    paper: "#FFFFFF",
    feed: "#B84600",
    return: "#006AD1",
    between: "#5E1060",
    floating: "#6E6E6E",
    clash: "#000000",
  },
  dark: {
    ink: "#E8EDEB",
    quiet: "#BAC4C0",
    soft: "#9AA5A0",
    ghost: "#4C555B",
    edge: "#717C82",
    body: "#1B2026",
    paper: "#14181D",
    feed: "#F58323",
    return: "#3B86FB",
    between: "#C3A8C2",
    floating: "#9A9A9A",
    clash: "#FFFFFF",
  },
  black: {
    ink: "#000000",
    quiet: "#000000",
    soft: "#000000",
    ghost: "#000000",
    edge: "#000000",
    body: "#FFFFFF",
    paper: "#FFFFFF",
    feed: "#000000",
    return: "#000000",
    between: "#000000",
    floating: "#000000",
    clash: "#000000",
  },
};

const HUES: Readonly<Record<WireState, Hue>> = {
  powered: "feed",
  "powered-through-load": "feed",
  grounded: "return",
  "grounded-through-load": "return",
  between: "between",
  floating: "floating",
  clash: "clash",
  undecided: "floating",
};

type Pattern = Omit<Stroke, "colour">;

/** A dash this short with round ends is a dot; painters refuse a dash of no length. */
const DOT: Millimetres = 0.01;
const THROUGH_LOAD = [3.2, 1.3] as const;
/** Half the distance between the two lines of a grounded wire. */
const HALF_PAIR = 0.58;

const WIRES: Readonly<Record<WireState, readonly Pattern[]>> = {
  powered: [{ width: 0.8, cap: "butt" }],
  "powered-through-load": [{ width: 0.8, cap: "butt", dash: THROUGH_LOAD }],
  grounded: [
    { width: 0.42, cap: "butt", offset: -HALF_PAIR },
    { width: 0.42, cap: "butt", offset: HALF_PAIR },
  ],
  "grounded-through-load": [
    { width: 0.42, cap: "butt", dash: THROUGH_LOAD, offset: -HALF_PAIR },
    { width: 0.42, cap: "butt", dash: THROUGH_LOAD, offset: HALF_PAIR },
  ],
  between: [{ width: 0.7, cap: "butt", dash: [3.7, 1.1, 0.7, 1.1] }],
  floating: [{ width: 0.7, cap: "round", dash: [DOT, 1.85 - DOT] }],
  clash: [{ width: 1.7, cap: "butt", dash: [0.8, 0.8] }],
  undecided: [{ width: 0.32, cap: "butt" }],
};

/** Glyphs that are outlines; the others are filled. */
const GLYPH_EDGES: Readonly<Partial<Record<WireState, Pattern>>> = {
  "powered-through-load": { width: 0.38, cap: "butt" },
  "grounded-through-load": { width: 0.38, cap: "butt" },
  floating: { width: 0.42, cap: "butt" },
  clash: { width: 0.7, cap: "butt" },
  undecided: { width: 0.45, cap: "round" },
};

interface Recipe {
  readonly line?: Pattern;
  readonly tone?: Tone;
  readonly fill?: Tone;
  readonly ground?: Tone;
}

const RECIPES: Readonly<Record<Exclude<Role, `wire-${WireState}` | `glyph-${WireState}` | "contact-rest">, Recipe>> = {
  symbol: { line: { width: 0.5, cap: "butt" }, fill: "ink" },
  "symbol-fine": { line: { width: 0.3, cap: "butt" }, fill: "ink" },
  "contact-now": { line: { width: 1.1, cap: "round" }, fill: "ink" },
  link: { line: { width: 0.32, cap: "butt", dash: [0.5, 1.1] }, tone: "quiet" },
  body: { line: { width: 0.26, cap: "butt" }, tone: "edge", fill: "body" },
  terminal: { line: { width: 0.42, cap: "butt" }, fill: "ink", ground: "paper" },
  joint: { line: { width: 0.42, cap: "butt" }, fill: "ink" },
  ray: { line: { width: 0.5, cap: "round" }, fill: "ink" },
  chevron: { fill: "ink" },
  swatch: { line: { width: 0.28, cap: "butt" }, tone: "edge" },
  frame: { line: { width: 0.25, cap: "butt" }, fill: "ink" },
  "frame-heavy": { line: { width: 0.7, cap: "butt" }, fill: "ink" },
  caution: { line: { width: 0.9, cap: "butt" }, fill: "ink" },
  table: { line: { width: 0.5, cap: "butt" }, fill: "ink" },
  field: { line: { width: 0.4, cap: "butt" }, fill: "paper" },
  place: { line: { width: 0.35, cap: "butt" }, fill: "paper" },
  rule: { line: { width: 0.25, cap: "butt" }, fill: "ink" },
  "rule-fine": { line: { width: 0.18, cap: "butt" }, fill: "ink" },
  "rule-dotted": { line: { width: 0.18, cap: "round", dash: [DOT, 0.6 - DOT] } },
  text: { fill: "ink" },
  "text-quiet": { fill: "quiet" },
  solid: { fill: "ink" },
  paper: { fill: "paper" },
};

/**
 * How a role is drawn: strokes and fill for this palette. Sizes are the same in all palettes, in millimetres of paper;
 * only a contact's place at rest is a faint bar in colour and a thin dashed line in black.
 */
export function strokesOf(role: Role, palette: Palette): Ink {
  const tones = TONES[palette];
  if (role.startsWith("wire-")) return wireInk(role.slice("wire-".length) as WireState, tones);
  if (role.startsWith("glyph-")) return glyphInk(role.slice("glyph-".length) as WireState, tones);
  if (role === "contact-rest") return restInk(palette);
  const { line, tone = "ink", fill, ground } = RECIPES[role as keyof typeof RECIPES];
  return {
    strokes: line ? [{ ...line, colour: tones[tone] }] : [],
    ...(fill && { fill: tones[fill] }),
    ...(ground && { ground: tones[ground] }),
  };
}

/** The plain colour of the sheet in this palette, for what painters lay under everything. */
export function paperColour(palette: Palette): string {
  return TONES[palette].paper;
}

/** How much of its ink is left of what is dimmed: seen, but behind what is drawn in full. */
export function dimmedShare(palette: Palette): Share {
  return palette === "dark" ? 0.26 : 0.22;
}

function wireInk(state: WireState, tones: (typeof TONES)[Palette]): Ink {
  const colour = tones[HUES[state]];
  return { strokes: WIRES[state].map((pattern) => ({ ...pattern, colour })), fill: colour };
}

function glyphInk(state: WireState, tones: (typeof TONES)[Palette]): Ink {
  const colour = tones[HUES[state]];
  const edge = GLYPH_EDGES[state];
  return { strokes: edge ? [{ ...edge, colour }] : [], fill: colour, ground: tones.paper };
}

function restInk(palette: Palette): Ink {
  const colour = TONES[palette].ghost;
  const line: Pattern =
    palette === "black" ? { width: 0.22, cap: "butt", dash: [0.9, 0.7] } : { width: 0.64, cap: "round" };
  return { strokes: [{ ...line, colour }], fill: colour };
}
