import { PART_STATE_WORDS, SHEET_WORDS } from "../base/words/sheet.ts";
import type { GridUnits } from "../base/units.ts";
import type { Anchor, Mark, Spot, TextMark } from "../drawing/mark.ts";
import { type Bounds, boundsOf, wrapText } from "../drawing/measure.ts";
import { standingOf } from "./sheetCondition.ts";
import { otherLinks } from "./sheetElsewhere.ts";
import { connectorsShownByName } from "./sheetPlugs.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import { settingText } from "./sheetSettings.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";
import { depth, lead, rise, type SheetType, widthOf, words } from "./sheetType.ts";

interface Word {
  readonly text: string;
  readonly type: SheetType;
}
/** Lines of the name of a part; the words of one line stand side by side. */
type NameLines = readonly (readonly Word[])[];

const GAP: GridUnits = 0.6;
const BETWEEN_WORDS: GridUnits = 0.5;
/** Widest line of a label before it is broken, and the width it is broken to where that finds no room. */
const WIDE: GridUnits = 13;
const NARROW: GridUnits = 7.2;
/** How far a name stands off at most while it still says all, and where all is crowded. */
const NEAR: GridUnits = 2.6;
const FARTHEST: GridUnits = 16;

/**
 * The names of the parts: designator with its state and plugs, key settings, label and thrown positions, set where each
 * symbol wants its name or, if that is not free, in its body or round it. What is set is taken in the room.
 */
export function nameMarks(setup: SheetSetup, room: SheetRoom): readonly Mark[] {
  return setup.parts.flatMap((part) => {
    const forms = [WIDE, NARROW, 0].map((width) => nameLines(setup, part, width));
    const marks = [...firstFree(room, part, forms)];
    for (const mark of marks) room.take(boundsOf(mark), 0.15);
    for (const mark of standingMarks(setup, part, marks, room)) {
      room.take(boundsOf(mark), 0.15);
      marks.push(mark);
    }
    return marks;
  });
}

/**
 * How a part stands now, beside its name or under it: `pulled in`, `held OPEN`. It is set after the name, which so keeps
 * its place when a switch is thrown.
 */
function standingMarks(setup: SheetSetup, part: SheetPart, name: readonly TextMark[], room: SheetRoom): readonly TextMark[] {
  const { types, live, circuit } = setup;
  if (live === null) return [];
  const { id } = part.part;
  const state = live.condition.out?.includes(id) ? SHEET_WORDS.out : PART_STATE_WORDS[part.state];
  const said = [
    ...(state === undefined ? [] : [{ text: state, type: types.name }]),
    ...standingOf(circuit, live.condition, id).map((text) => ({ text, type: types.volts })),
  ];
  const marks: TextMark[] = [];
  for (const { text, type } of said) {
    const set = [...name, ...marks];
    const mark = besideName(set, text, type, part, room);
    marks.push(mark);
  }
  return marks;
}

/** At the end of the first line of the name, under it, over it, else at the first free place round the part. */
function besideName(set: readonly TextMark[], text: string, type: SheetType, part: SheetPart, room: SheetRoom): TextMark {
  const boxes = set.map(boundsOf);
  const left = Math.min(...boxes.map((box) => box.left));
  const right = Math.max(...boxes.map((box) => box.right));
  const first = set[0]!.at.y;
  const last = Math.max(...set.map(({ at }) => at.y));
  const endOfFirst = Math.max(...boxes.filter((_, index) => set[index]!.at.y === first).map((box) => box.right));
  const { outline } = part.shape;
  const isLeft = right <= outline.left;
  const isInside = left >= outline.left && right <= outline.right;
  const under: Place = isLeft
    ? [{ x: right, y: last + lead(type.points) }, "end"]
    : isInside
      ? [{ x: (left + right) / 2, y: last + lead(type.points) }, "middle"]
      : [{ x: left, y: last + lead(type.points) }, "start"];
  const over: Place = [{ x: under[0].x, y: first - lead(set[0]!.points) }, under[1]];
  const lines = [[{ text, type }]];
  const places: readonly Place[] = [
    [{ x: endOfFirst + BETWEEN_WORDS, y: first }, "start"],
    under,
    over,
    ...around(part, lines, GAP, FARTHEST),
  ];
  const marks = places.map(([at, anchor]) => setLines(lines, at, anchor, part.part.id)[0]!);
  return marks.find((mark) => room.isFree(boundsOf(mark))) ?? marks[1]!;
}

/** The lines of a name, its label broken to a width; without label where the width is 0. */
function nameLines(setup: SheetSetup, part: SheetPart, width: GridUnits): NameLines {
  const { types, circuit } = setup;
  const { id, label = "" } = part.part;
  const word = (text: string, type: SheetType): Word => ({ text, type });
  const setting = settingText(part);
  const isDrawn = part.shape.marks.some((mark) => mark.mark === "text" && plain(mark.text) === plain(setting));
  const labels = label === "" || width === 0 ? [] : wrapText(label, types.name.points, types.name.weight, width);
  return [
    [word(id, types.designator), ...connectorsShownByName(circuit, part).map((plug) => word(plug, types.name))],
    ...(setting === "" || isDrawn ? [] : [[word(setting, types.setting)]]),
    ...labels.map((text) => [word(text, types.name)]),
    ...otherLinks(circuit, part).map((text) => [word(text, types.name)]),
  ];
}

const plain = (text: string) => text.replace(/\s/g, " ");

/**
 * The marks at the first free place: in the body, where the symbol wants them, near the part, then without the label and
 * farther away; where nothing is free, where the symbol wants them.
 */
function firstFree(room: SheetRoom, part: SheetPart, forms: readonly NameLines[]): readonly TextMark[] {
  const least = forms.at(-1)!;
  const full = forms.slice(0, -1);
  const tries = [
    ...full.map((lines) => ({ lines, places: inside(part, lines), margin: 0.4 })),
    ...full.map((lines) => ({ lines, places: homes(part, lines), margin: 0 })),
    ...full.map((lines) => ({ lines, places: around(part, lines, GAP, NEAR), margin: 0.1 })),
    { lines: least, places: homes(part, least), margin: 0 },
    { lines: least, places: around(part, least, GAP, FARTHEST), margin: 0 },
  ];
  for (const { lines, places, margin } of tries) {
    for (const [at, anchor] of places) {
      const marks = setLines(lines, at, anchor, part.part.id);
      if (marks.every((mark) => room.isFree(boundsOf(mark), margin))) return marks;
    }
  }
  return setLines(least, part.shape.nameAt, part.shape.nameAt.anchor, part.part.id);
}

function setLines(lines: NameLines, at: Spot, anchor: Anchor, of: string): readonly TextMark[] {
  let y = at.y;
  return lines.flatMap((line, index) => {
    if (index > 0) y += lead(Math.max(...line.map(({ type }) => type.points)));
    const width = line.reduce((sum, { text, type }) => sum + widthOf(text, type), BETWEEN_WORDS * (line.length - 1));
    let x = anchor === "start" ? at.x : anchor === "end" ? at.x - width : at.x - width / 2;
    return line.map(({ text, type }) => {
      const mark = words(text, { x, y }, type, "start", of);
      x += widthOf(text, type) + BETWEEN_WORDS;
      return mark;
    });
  });
}

type Place = readonly [Spot, Anchor];

/** Height of a name above its first baseline, from there to its last, and below its first down to its foot. */
function heights(lines: NameLines) {
  const up = rise(lines[0]![0]!.type.points);
  const below = lines.slice(1).reduce((sum, line) => sum + lead(Math.max(...line.map(({ type }) => type.points))), 0);
  return { up, below, foot: below + depth(lines.at(-1)![0]!.type.points) };
}

/**
 * Where the symbol wants its name: beside its middle, above or below. A load that lies has it below, where the row of
 * loads has its names.
 */
function* homes(part: SheetPart, lines: NameLines): Generator<Place> {
  const { outline, nameAt } = part.shape;
  const { up, below } = heights(lines);
  const { x, y, anchor } = nameAt;
  const isAbove = y <= outline.top;
  const isBelow = y >= outline.bottom;
  if (isAbove && anchor === "middle" && part.kind.role === "load") yield [{ x, y: outline.bottom + GAP + up }, anchor];
  yield [{ x, y: isAbove ? y - below : isBelow ? y : y - below / 2 }, anchor];
  yield [nameAt, anchor];
}

/** In the body of a part that has one, from its foot up. */
function* inside(part: SheetPart, lines: NameLines): Generator<Place> {
  const { outline, marks } = part.shape;
  if (!marks.some((mark) => mark.mark === "box" && mark.role === "body")) return;
  const { up, foot } = heights(lines);
  const x = (outline.left + outline.right) / 2;
  for (let y = outline.bottom - foot - 0.4; y >= outline.top + up + 0.4; y -= 0.25) yield [{ x, y }, "middle"];
}

/** Right, left, above and below, ever farther away. */
function* around(part: SheetPart, lines: NameLines, from: GridUnits, to: GridUnits): Generator<Place> {
  const { up, foot } = heights(lines);
  for (let away = from; away <= to; away += 1) yield* ring(part.shape.outline, away, up, foot);
}

/** Places round an outline at one distance; each side is tried from its middle outwards. */
function* ring(outline: Bounds, away: GridUnits, up: GridUnits, foot: GridUnits): Generator<Place> {
  const { left, top, right, bottom } = outline;
  const middleX = (left + right) / 2;
  const middleY = (top + bottom) / 2 + (up - foot) / 2;
  for (const shift of fromMiddle((bottom - top) / 2 + away)) {
    yield [{ x: right + away, y: middleY + shift }, "start"];
    yield [{ x: left - away, y: middleY + shift }, "end"];
  }
  for (const shift of fromMiddle((right - left) / 2 + away)) {
    const anchor = shift === 0 ? "middle" : shift < 0 ? "end" : "start";
    yield [{ x: middleX + shift, y: top - away - foot }, anchor];
    yield [{ x: middleX + shift, y: bottom + away + up }, anchor];
  }
}

function* fromMiddle(most: number): Generator<number> {
  yield 0;
  for (let shift = 1; shift <= most; shift++) {
    yield -shift;
    yield shift;
  }
}
