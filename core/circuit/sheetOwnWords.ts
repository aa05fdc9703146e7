import type { GridUnits } from "../base/units.ts";
import type { TextMark } from "../drawing/mark.ts";
import { type Bounds, boundsOf } from "../drawing/measure.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";
import { depth, hangs, rise } from "./sheetType.ts";

/** What lies round the words of symbols. */
export interface OwnWordRooms {
  /** Lines of symbols and wires, which letters keep off. */
  readonly ink: SheetRoom;
  /** The words set so far, and wires, which whole lines of type keep off. */
  readonly written: SheetRoom;
}

/** The words of a symbol that are set in it, and the label that is to be said with its name. */
export interface OwnWords {
  readonly set: readonly TextMark[];
  readonly unset: readonly string[];
}

/**
 * The words of a symbol that stand in it at this sight: a word that has grown keeps its place only where it lies on
 * nothing. Of a symbol with one label that finds no room `unset` has it, to be said with the name. What is set is taken
 * as written.
 */
export function ownWords({ sight }: SheetSetup, part: SheetPart, { ink, written }: OwnWordRooms): OwnWords {
  const wanted = part.words.filter((word) => (sight.hasWords && sight.hasLabels) || isSign(word));
  const set = wanted.flatMap((word): readonly TextMark[] => {
    const points = sight.grown(word.points);
    const isFree = (mark: TextMark) => ink.isFree(lettersOf(mark)) && written.isFree(boundsOf(mark));
    const mark = points === word.points ? word : places(word, points).find(isFree);
    if (mark === undefined) return [];
    written.take(boundsOf(mark));
    return [{ ...mark, of: part.part.id }];
  });
  const labels = part.words.filter((word) => word.role === "text" && !isSign(word));
  const isUnset = labels.length === 1 && !set.some(({ text }) => text === labels[0]!.text);
  return { set, unset: isUnset ? labels.map(({ text }) => text) : [] };
}

/** A letter that is part of a symbol, such as the M of a motor or the plus of a post. */
function isSign({ text, role }: TextMark): boolean {
  return text.length === 1 && role === "text";
}

/** A word in this size: grown upwards from its line, on both sides of its middle, and downwards. */
function places(word: TextMark, points: number): readonly TextMark[] {
  const more: GridUnits = rise(points) - rise(word.points);
  return [0, 0.5, 1].map((share) => ({ ...word, points, at: { x: word.at.x, y: word.at.y + more * share } }));
}

/** The box round the letters that a word has: no higher than capitals, below the line only where one hangs. */
function lettersOf(word: TextMark): Bounds {
  const { y } = word.at;
  return { ...boundsOf(word), top: y - rise(word.points), bottom: y + (hangs(word.text) ? depth(word.points) : 0) };
}
