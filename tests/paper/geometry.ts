import type { BoxMark, LineMark, Mark, TextMark } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOf } from "../../core/drawing/measure.ts";
import { millimetresOf, POINT_MM } from "../../core/drawing/scale.ts";
import { CAP_HEIGHT } from "../../core/drawing/type.ts";
import { FOOT, SHEET, type Sheet } from "../../core/paper/page.ts";

/** What is off by less than this many millimetres is rounding. */
const HAIR = 0.02;

/** Everything that is wrong with how a sheet is laid out, in words; empty for a good sheet. */
export function faultsOf(sheet: Sheet): readonly string[] {
  const texts = sheet.marks.filter((mark) => mark.mark === "text").filter((mark) => mark.text.trim() !== "");
  return [
    ...outsideCells(sheet),
    ...textsWithoutCell(sheet, texts),
    ...overSheet(sheet),
    ...overEachOther(texts),
    ...acrossBoxes(sheet, texts),
    ...acrossLines(sheet, texts),
    ...writtenInFields(sheet, texts),
  ];
}

/** Bounds of a mark in millimetres. */
export function millimetreBounds(mark: Mark): Bounds {
  const { left, top, right, bottom } = boundsOf(mark);
  return {
    left: millimetresOf(left),
    top: millimetresOf(top),
    right: millimetresOf(right),
    bottom: millimetresOf(bottom),
  };
}

function described(mark: Mark): string {
  const { left, top } = millimetreBounds(mark);
  const words = mark.mark === "text" ? `"${mark.text}"` : mark.mark;
  return `${words} at ${left.toFixed(1)}, ${top.toFixed(1)}`;
}

/** Marks of a cell that are higher or wider than its box. */
function outsideCells({ cells }: Sheet): readonly string[] {
  return cells.flatMap(({ name, box, marks }) =>
    marks.flatMap((mark) => {
      const bounds = millimetreBounds(mark);
      const isInside =
        bounds.left >= box.x - HAIR &&
        bounds.top >= box.y - HAIR &&
        bounds.right <= box.x + box.width + HAIR &&
        bounds.bottom <= box.y + box.height + HAIR;
      return isInside ? [] : [`${name}: ${described(mark)} leaves its cell`];
    }),
  );
}

function textsWithoutCell({ cells }: Sheet, texts: readonly TextMark[]): readonly string[] {
  const held = new Set<Mark>(cells.flatMap(({ marks }) => marks));
  return texts.filter((mark) => !held.has(mark)).map((mark) => `${described(mark)} belongs to no cell`);
}

/** What leaves the sheet, and cells that reach into the foot. */
function overSheet({ marks, cells }: Sheet): readonly string[] {
  const off = marks.filter((mark) => {
    const { left, top, right, bottom } = millimetreBounds(mark);
    // A line's bounds take half its width at its ends too, where nothing is drawn.
    const over = mark.mark === "line" ? 0.25 + HAIR : HAIR;
    return left < -over || top < -over || right > SHEET.width + over || bottom > SHEET.height + over;
  });
  const footTop = SHEET.height - FOOT.height;
  const low = cells.filter(({ name, box }) => name !== "foot" && box.y + box.height > footTop);
  return [
    ...off.map((mark) => `${described(mark)} leaves the sheet`),
    ...low.map(({ name }) => `${name} reaches the foot`),
  ];
}

function overlaps(one: Bounds, other: Bounds): boolean {
  return (
    one.left < other.right - HAIR &&
    other.left < one.right - HAIR &&
    one.top < other.bottom - HAIR &&
    other.top < one.bottom - HAIR
  );
}

/** The room that capitals and figures of a line take, without the tails that lines below may reach into. */
function lettersOf(mark: TextMark): Bounds {
  if (mark.turn) return millimetreBounds(mark);
  const { left, right } = millimetreBounds(mark);
  const baseline = millimetresOf(mark.at.y);
  return { left, right, top: baseline - CAP_HEIGHT * mark.points * POINT_MM, bottom: baseline };
}

function overEachOther(texts: readonly TextMark[]): readonly string[] {
  const boxes = texts.map(lettersOf);
  return texts.flatMap((mark, i) =>
    texts.slice(i + 1).flatMap((other, j) => {
      const isOver = overlaps(boxes[i]!, boxes[i + 1 + j]!);
      return isOver ? [`${described(mark)} over ${described(other)}`] : [];
    }),
  );
}

/** Type stands wholly inside or wholly outside of every box. */
function acrossBoxes({ marks }: Sheet, texts: readonly TextMark[]): readonly string[] {
  const boxes = marks.filter((mark): mark is BoxMark => mark.mark === "box");
  return texts.flatMap((text) => {
    const letters = lettersOf(text);
    return boxes.flatMap((box) => {
      const edge = millimetreBounds(box);
      const isInside =
        letters.left > edge.left &&
        letters.right < edge.right &&
        letters.top > edge.top &&
        letters.bottom < edge.bottom;
      return isInside || !overlaps(letters, edge) ? [] : [`${described(text)} crosses ${described(box)}`];
    });
  });
}

/** No level or upright line goes through type. */
function acrossLines({ marks }: Sheet, texts: readonly TextMark[]): readonly string[] {
  const lines = marks.filter(
    (mark): mark is LineMark => mark.mark === "line" && mark.spots.length === 2 && isStraight(mark),
  );
  return texts.flatMap((text) => {
    const letters = lettersOf(text);
    return lines.flatMap((line) =>
      overlaps(letters, millimetreBounds(line)) ? [`${described(text)} crosses a line`] : [],
    );
  });
}

function isStraight({ spots: [one, other] }: LineMark): boolean {
  return one!.x === other!.x || one!.y === other!.y;
}

/** A field of a reading holds nothing but its unit. */
function writtenInFields({ marks }: Sheet, texts: readonly TextMark[]): readonly string[] {
  const fields = marks.filter((mark): mark is BoxMark => mark.mark === "box" && isField(mark));
  return texts.flatMap((text) =>
    text.text === "V" ||
    text.text === "mV" ||
    text.text === "A" ||
    text.text === "Ω" ||
    !fields.some((field) => overlaps(lettersOf(text), millimetreBounds(field)))
      ? []
      : [`${described(text)} stands in a field`],
  );
}

function isField({ role, width, height, corner = 0 }: BoxMark): boolean {
  const [wide, high] = [millimetresOf(width), millimetresOf(height)];
  return role === "field" && corner === 0 && high > 9 && high < 12 && wide > 12 && wide < 28;
}

/** Words of a sheet's cells of this name, top down. */
export function wordsIn(sheet: Sheet, name: string): readonly string[] {
  return sheet.cells
    .filter((cell) => cell.name === name)
    .map(({ marks }) => marks.flatMap((mark) => (mark.mark === "text" ? [mark.text] : [])).join(" "));
}

/** All words of a sheet. */
export function allWords(sheet: Sheet): string {
  return sheet.marks.flatMap((mark) => (mark.mark === "text" ? [mark.text] : [])).join(" ");
}
