import type { GridUnits } from "../base/units.ts";
import type { Anchor, Spot, TextMark } from "../drawing/mark.ts";
import { type Bounds, gapBetween } from "../drawing/measure.ts";
import { ASCENT, DESCENT, pointsToGrid } from "../drawing/type.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import { lead, type SheetType, widthOf, words } from "./sheetType.ts";

interface Word {
  readonly text: string;
  readonly type: SheetType;
}

/** Lines of the name of a part; the words of one line stand side by side. */
export type NameLines = readonly (readonly Word[])[];

/** The first baseline of a name, and how its lines are anchored there. */
export type NamePlace = readonly [Spot, Anchor];

/** Between the words of one line. */
export const BETWEEN_WORDS: GridUnits = 0.5;

interface MeasuredLine {
  /** From the baseline before; 0 for the first. */
  readonly lead: GridUnits;
  readonly width: GridUnits;
  readonly words: readonly (Word & { readonly width: GridUnits; readonly up: GridUnits; readonly down: GridUnits })[];
}

/** The lines of a name, measured once to be tried at many places. */
export class NameForm {
  readonly lines: NameLines;
  private readonly measured: readonly MeasuredLine[];
  /** Left, top, right and bottom of each word at the place last tried. */
  private readonly boxes: GridUnits[] = [];

  constructor(lines: NameLines) {
    this.lines = lines;
    this.measured = lines.map(measuredLine);
  }

  /** The words set from a first baseline down. */
  marksAt([at, anchor]: NamePlace, of: string): readonly TextMark[] {
    let y = at.y;
    return this.measured.flatMap((line) => {
      y += line.lead;
      let x = leftOf(line, at.x, anchor);
      return line.words.map(({ text, type, width }) => {
        const mark = words(text, { x, y }, type, "start", of);
        x += width + BETWEEN_WORDS;
        return mark;
      });
    });
  }

  /** True where every word, grown by `margin`, is free in the room. */
  isFreeAt([{ x, y }, anchor]: NamePlace, room: SheetRoom, margin: GridUnits): boolean {
    return this.isFree(x, y, anchor, room, margin);
  }

  /** The same for a place by its numbers. */
  isFree(x: GridUnits, y: GridUnits, anchor: Anchor, room: SheetRoom, margin: GridUnits): boolean {
    const boxes = this.boxesAt(x, y, anchor);
    for (let i = 0; i < boxes.length; i += 4) {
      if (!room.hasRoom(boxes[i]! - margin, boxes[i + 1]! - margin, boxes[i + 2]! + margin, boxes[i + 3]! + margin))
        return false;
    }
    return true;
  }

  /** True where every word is nearer to its own part than to any other. */
  isNearestAt([{ x, y }, anchor]: NamePlace, own: Bounds, others: readonly Bounds[]): boolean {
    const boxes = this.boxesAt(x, y, anchor);
    for (let i = 0; i < boxes.length; i += 4) {
      const word = { left: boxes[i]!, top: boxes[i + 1]!, right: boxes[i + 2]!, bottom: boxes[i + 3]! };
      const away = gapBetween(word, own);
      if (!others.every((other) => gapBetween(word, other) > away)) return false;
    }
    return true;
  }

  private boxesAt(at: GridUnits, first: GridUnits, anchor: Anchor): readonly GridUnits[] {
    const { boxes } = this;
    let y = first;
    let count = 0;
    for (const line of this.measured) {
      y += line.lead;
      let x = leftOf(line, at, anchor);
      for (const { width, up, down } of line.words) {
        boxes[count++] = x;
        boxes[count++] = y - up;
        boxes[count++] = x + width;
        boxes[count++] = y + down;
        x += width + BETWEEN_WORDS;
      }
    }
    return boxes;
  }
}

function measuredLine(line: readonly Word[], index: number): MeasuredLine {
  const measured = line.map(({ text, type }) => {
    const size = pointsToGrid(type.points);
    return { text, type, width: widthOf(text, type), up: ASCENT * size, down: DESCENT * size };
  });
  return {
    lead: index === 0 ? 0 : lead(Math.max(...line.map(({ type }) => type.points))),
    width: measured.reduce((sum, { width }) => sum + width, BETWEEN_WORDS * (line.length - 1)),
    words: measured,
  };
}

function leftOf({ width }: MeasuredLine, x: GridUnits, anchor: Anchor): GridUnits {
  return anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
}
