import type { Outcome } from "../base/outcome.ts";
import { ok, refuse } from "../base/outcome.ts";
import type { ColourName, ColourWord } from "./colourNames.ts";
import { colourNamed } from "./colourNames.ts";
import type { Source } from "./source.ts";
import { MEMORY, published } from "./source.ts";

/** The colour of an insulation: base first, then the tracer or the two stripes. */
export interface WireColour {
  readonly base: ColourName;
  readonly stripes: readonly ColourName[];
}

/**
 * True where the base is orange: on a vehicle the sign of more than 60 V DC, to be taken as live (NFPA, Electric and
 * Hybrid Vehicle Quick Reference, 2014; AIS-038 draft of September 2019, 5.1.1.5.3, with the text of UN R100).
 */
export function isHighVoltageColour(colour: WireColour): boolean {
  return colour.base.name === "orange";
}

/** The code sets a circuit can be written in. Never guessed from a wire: the same letters mean other colours elsewhere. */
export const COLOUR_SETS = ["iec60757", "din72551", "german", "japanese", "north-american"] as const;
export type ColourSet = (typeof COLOUR_SETS)[number];

/** One code of a set. */
export interface ColourCode {
  readonly code: string;
  readonly colour: ColourWord;
  readonly source: Source;
}

const IEC = published("IEC 60757, list of codes as an article at tnlab.org gives it");
const DIN = published("DIN introductory note on DIN 72551-7");

function codes(source: Source, list: Readonly<Record<string, ColourWord>>): readonly ColourCode[] {
  return Object.entries(list).map(([code, colour]) => ({ code, colour, source }));
}

/**
 * Every set's codes; the first code of a colour is the one written. IEC 60757 is published. Of DIN 72551-7 only BL, OR,
 * GN, RD and BN were seen (DIN introductory note); its other codes, and the German, Japanese and North American letters,
 * are from memory.
 */
export const COLOUR_CODES: Readonly<Record<ColourSet, readonly ColourCode[]>> = {
  iec60757: codes(IEC, {
    BK: "black",
    BN: "brown",
    RD: "red",
    OG: "orange",
    YE: "yellow",
    GN: "green",
    BU: "blue",
    VT: "violet",
    GY: "grey",
    WH: "white",
    PK: "pink",
    GD: "gold",
    TQ: "turquoise",
    SR: "silver",
    GNYE: "green and yellow",
  }),
  din72551: [
    ...codes(DIN, { BL: "blue", OR: "orange", GN: "green", RD: "red", BN: "brown" }),
    ...codes(MEMORY, { BK: "black", YE: "yellow", VT: "violet", GY: "grey", WH: "white", PK: "pink" }),
  ],
  german: codes(MEMORY, {
    sw: "black",
    br: "brown",
    rt: "red",
    ge: "yellow",
    gn: "green",
    bl: "blue",
    vi: "violet",
    li: "violet",
    gr: "grey",
    ws: "white",
    rs: "pink",
    or: "orange",
  }),
  japanese: codes(MEMORY, {
    B: "black",
    W: "white",
    R: "red",
    G: "green",
    L: "blue",
    Y: "yellow",
    O: "orange",
    V: "violet",
    P: "pink",
    Br: "brown",
    Gr: "grey",
    Lg: "light green",
    Sb: "sky blue",
  }),
  "north-american": codes(MEMORY, {
    BLK: "black",
    WHT: "white",
    RED: "red",
    GRN: "green",
    "DK GRN": "dark green",
    "LT GRN": "light green",
    BLU: "blue",
    "DK BLU": "dark blue",
    "LT BLU": "light blue",
    YEL: "yellow",
    ORN: "orange",
    PPL: "violet",
    TAN: "tan",
    GRY: "grey",
    BRN: "brown",
    PNK: "pink",
  }),
};

/** Base, tracer, second stripe: DIN 72551-7:2014-12 knows no more. */
const MOST_COLOURS = 3;

function squeeze(text: string): string {
  return text.replace(/\s+/g, "");
}

function codeFor(piece: string, set: ColourSet): ColourCode | undefined {
  const wanted = squeeze(piece).toLowerCase();
  return COLOUR_CODES[set].find((each) => squeeze(each.code).toLowerCase() === wanted);
}

/** Every way to read joined letters as one to four codes of the set, capitals or not. */
function readings(text: string, set: ColourSet, room = MOST_COLOURS + 1): readonly (readonly ColourCode[])[] {
  if (text === "") return [[]];
  if (room === 0) return [];
  return COLOUR_CODES[set].flatMap((each) => {
    const code = squeeze(each.code);
    if (text.slice(0, code.length).toLowerCase() !== code.toLowerCase()) return [];
    return readings(text.slice(code.length), set, room - 1).map((rest) => [each, ...rest]);
  });
}

/** IEC 60757:2021 lets green and yellow stand joined only as the one code GNYE. */
function splitsGreenAndYellow(reading: readonly ColourCode[], set: ColourSet): boolean {
  return set === "iec60757" && reading.some((each, i) => each.code === "GN" && reading[i + 1]?.code === "YE");
}

function readJoined(text: string, set: ColourSet): Outcome<readonly ColourCode[]> {
  const all = readings(text, set).filter((reading) => !splitsGreenAndYellow(reading, set));
  const hasBothCases = /[a-z]/.test(text) && /[A-Z]/.test(text);
  const exact = all.filter((reading) => reading.map((each) => squeeze(each.code)).join("") === text);
  const kept = all.length > 1 && hasBothCases ? exact : all;
  if (kept.length === 1) return ok(kept[0]!);
  if (all.length === 0) return refuse("colour-unknown", { text, piece: text, set });
  return refuse("colour-ambiguous", {
    text,
    set,
    readings: all.map((reading) => reading.map((each) => each.code).join("/")).join(", "),
  });
}

function readApart(pieces: readonly string[], text: string, set: ColourSet): Outcome<readonly ColourCode[]> {
  const found: ColourCode[] = [];
  for (const piece of pieces) {
    const code = codeFor(piece, set);
    if (!code) return refuse("colour-unknown", { text, piece: piece.trim(), set });
    found.push(code);
  }
  return ok(found);
}

function read(text: string, set: ColourSet): Outcome<readonly ColourCode[]> {
  if (/[/\-*]/.test(text)) return readApart(text.split(/[/\-*]/), text, set);
  const whole = readApart(text.split(/\s+/), text, set);
  return whole.ok && /\s/.test(text) ? whole : readJoined(squeeze(text), set);
}

/**
 * The colour that a person wrote: base first, then tracer, as vehicle diagrams do (DIN 72551-7), never sorted. Takes "/",
 * "-", "*", a space or nothing between codes. Refuses `colour-empty`, `colour-unknown`, `colour-ambiguous` (joined
 * letters with two readings), `colour-too-many` (over two stripes) and `colour-stripe-is-base`.
 */
export function parseColour(code: string, set: ColourSet): Outcome<WireColour> {
  const text = code.trim();
  if (text === "") return refuse("colour-empty");
  const found = read(text, set);
  if (!found.ok) return found;
  const [base, ...stripes] = found.value;
  if (stripes.length >= MOST_COLOURS) return refuse("colour-too-many", { text, stripes: stripes.length });
  if (stripes.some((stripe) => stripe.colour === base!.colour)) return refuse("colour-stripe-is-base", { text });
  return ok({ base: colourNamed(base!.colour), stripes: stripes.map((stripe) => colourNamed(stripe.colour)) });
}

/** The one way this set writes the colour: base/tracer. Refuses `colour-not-in-set` where the set has no code for it. */
export function colourText(colour: WireColour, set: ColourSet): Outcome<string> {
  const written: string[] = [];
  for (const { name } of [colour.base, ...colour.stripes]) {
    const code = COLOUR_CODES[set].find((each) => each.colour === name);
    if (!code) return refuse("colour-not-in-set", { colour: name, set });
    written.push(code.code);
  }
  return ok(written.join("/"));
}
