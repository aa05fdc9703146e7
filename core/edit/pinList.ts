import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { COLOUR_CODES, type ColourSet, colourText, parseColour } from "../trade/colours.ts";
import { isPlaceName } from "./faceRows.ts";

/** A row of a pin list as it was read. */
export interface PinRow {
  readonly text: string;
  /** Name of the place; empty where the row has none. */
  readonly pin: string;
  /** Insulation colour as the code set writes it; null where none was read. */
  readonly colour: string | null;
  /** What stands after number and colour. */
  readonly words: string;
  /** Why the row cannot be taken: `pin-missing`, `pin-spelling`, `pin-twice` or a wrong colour. */
  readonly wrong: Refusal | null;
}

/** Signs of a row that are read at most. */
const MOST_SIGNS = 400;
/** A colour of so many codes may stretch over as many words: "DK GRN/LT BLU". */
const MOST_WORDS = 3;
/** Letters that are joined without a mark are taken for two codes at most, so that words are none. */
const MOST_JOINED = 1;
/** Two or three short codes with a mark between: surely meant as a colour. */
const MARKED = /^[A-Za-z]{1,3}(?:[/*-][A-Za-z]{1,3}){1,2}$/;

/**
 * Reads a pasted pin list: number, colour, words; one pin a line, or parted by semicolons or by slashes between spaces.
 * "Pin" before a number and a mark after it are passed over. Every row comes back, with what is wrong with it.
 */
export function pinList(text: string, codes: Circuit["colourCodes"]): readonly PinRow[] {
  const seen = new Set<string>();
  return text
    .split(/[\r\n;]+|\s\/\s/)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== "")
    .map((piece) => {
      const row = rowOf(piece, codes);
      const isAgain = row.wrong === null && seen.has(row.pin);
      seen.add(row.pin);
      return isAgain ? { ...row, wrong: refuse("pin-twice", { pin: row.pin }).refusal } : row;
    });
}

function rowOf(text: string, codes: Circuit["colourCodes"]): PinRow {
  // No row of a list is so long; what is pasted may be anything.
  if (text.length > MOST_SIGNS) {
    const pin = text.slice(0, MOST_SIGNS);
    return { text: pin, pin: "", colour: null, words: pin, wrong: refuse("pin-spelling", { text: pin, pin }).refusal };
  }
  const [, pin = "", tail = ""] =
    /^(?:(?:pin|cavity|place)\s+)?(\S+?)(?:[:.)=,]*\s+|[:.)=,]+$|$)(.*)$/isu.exec(text) ?? [];
  const rest = unmarked(tail);
  const row = { text, pin, colour: null, words: rest };
  if (/^\D{2,}$/.test(pin) && colourIn(pin, codes)) {
    return { ...row, pin: "", words: text, wrong: refuse("pin-missing", { text }).refusal };
  }
  if (!isPlaceName(pin)) return { ...row, wrong: refuse("pin-spelling", { text, pin }).refusal };
  const words = rest.split(/\s+/);
  for (let count = Math.min(MOST_WORDS, words.length); count > 0; count--) {
    const colour = colourIn(words.slice(0, count).join(" "), codes);
    if (colour?.ok) return { ...row, colour: colour.value, words: unmarked(words.slice(count).join(" ")), wrong: null };
    if (colour && count === 1) return { ...row, wrong: colour.refusal };
  }
  return { ...row, wrong: null };
}

/** Words without a dash or colon that parts them from what stands before. */
function unmarked(words: string): string {
  return words.trim().replace(/^[-\u2013:=]\s+/, "");
}

/** The colour that a piece of text is meant as; null where it is none. */
function colourIn(text: string, codes: Circuit["colourCodes"]): Outcome<string> | null {
  if (text === "") return null;
  if (codes === "free") return /^[A-Z]{1,3}(?:[/*-][A-Z]{1,3})*$/.test(text) ? ok(text) : null;
  const read = parseColour(text, codes);
  if (!read.ok) return MARKED.test(text) ? read : null;
  const written = colourText(read.value, codes);
  if (!written.ok || /[/*-]/.test(text) || isCode(text, codes)) return written;
  const isJoined = text === text.toUpperCase() || written.value.replaceAll("/", "") === text;
  return isJoined && !/\s/.test(text) && read.value.stripes.length <= MOST_JOINED ? written : null;
}

function isCode(text: string, codes: ColourSet): boolean {
  return COLOUR_CODES[codes].some(({ code }) => code.toLowerCase() === text.toLowerCase());
}
