import type { PartId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import { PART_STATE_WORDS, SHEET_WORDS } from "../base/words/sheet.ts";
import type { TextMark } from "../drawing/mark.ts";
import { boundsOf, wrapText } from "../drawing/measure.ts";
import { standingOf } from "./sheetCondition.ts";
import { otherLinks } from "./sheetElsewhere.ts";
import {
  around,
  BETWEEN_WORDS,
  homes,
  inside,
  NAME_GAP,
  type NameLines,
  type NamePlace,
  setLines,
} from "./sheetNamePlaces.ts";
import { connectorsShownByName } from "./sheetPlugs.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import { settingText } from "./sheetSettings.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";
import { lead, type SheetType } from "./sheetType.ts";

/** Widest line of a label before it is broken, and the width it is broken to where that finds no room. */
const WIDE: GridUnits = 13;
const NARROW: GridUnits = 7.2;
/** How far a name stands off at most while it still says all, and where all is crowded. */
const NEAR: GridUnits = 2.6;
const FARTHEST: GridUnits = 16;

/**
 * The names of the parts: designator with its plugs, key settings, label. They are set in the body of the part, where its
 * symbol wants its name, or round it. What is set is taken in the room.
 */
export function nameMarks(setup: SheetSetup, room: SheetRoom): ReadonlyMap<PartId, readonly TextMark[]> {
  const names = new Map<PartId, readonly TextMark[]>();
  for (const part of setup.parts) {
    const forms = [WIDE, NARROW, 0].map((width) => nameLines(setup, part, width));
    const marks = firstFree(room, part, forms);
    for (const mark of marks) room.take(boundsOf(mark), 0.15);
    names.set(part.part.id, marks);
  }
  return names;
}

/**
 * How each part stands now, beside its name or under it: `pulled in`, `held OPEN`. It is set after all names, which so
 * keep their places when a switch is thrown. What is set is taken in the room.
 */
export function standingMarks(
  setup: SheetSetup,
  names: ReadonlyMap<PartId, readonly TextMark[]>,
  room: SheetRoom,
): readonly TextMark[] {
  return setup.parts.flatMap((part) => {
    const set = [...(names.get(part.part.id) ?? [])];
    const count = set.length;
    for (const { text, type } of standingWords(setup, part)) {
      const lines = [[{ text, type }]];
      const places = [...besideName(set, type, part), ...around(part, lines, NAME_GAP, FARTHEST)];
      const tried = places.map(([at, anchor]) => setLines(lines, at, anchor, part.part.id)[0]!);
      const mark = tried.find((each) => room.isFree(boundsOf(each))) ?? tried[1]!;
      room.take(boundsOf(mark), 0.15);
      set.push(mark);
    }
    return set.slice(count);
  });
}

function standingWords({ types, live, circuit }: SheetSetup, { part: { id }, state }: SheetPart) {
  if (live === null) return [];
  const word = live.condition.out?.includes(id) ? SHEET_WORDS.out : PART_STATE_WORDS[state];
  return [
    ...(word === undefined ? [] : [{ text: word, type: types.name }]),
    ...standingOf(circuit, live.condition, id).map((text) => ({ text, type: types.volts })),
  ];
}

/** At the end of the first line of a name, under it and over it, in line at the side that is nearer to the part. */
function besideName(
  name: readonly TextMark[],
  type: SheetType,
  { shape: { outline } }: SheetPart,
): readonly NamePlace[] {
  const boxes = name.map(boundsOf);
  const left = Math.min(...boxes.map((box) => box.left));
  const right = Math.max(...boxes.map((box) => box.right));
  const first = name[0]!.at.y;
  const last = Math.max(...name.map(({ at }) => at.y));
  const end = Math.max(...boxes.filter((_, index) => name[index]!.at.y === first).map((box) => box.right));
  const isInside = left >= outline.left && right <= outline.right;
  const [x, anchor] = isInside
    ? ([(left + right) / 2, "middle"] as const)
    : right <= outline.left
      ? ([right, "end"] as const)
      : ([left, "start"] as const);
  return [
    [{ x: end + BETWEEN_WORDS, y: first }, "start"],
    [{ x, y: last + lead(type.points) }, anchor],
    [{ x, y: first - lead(name[0]!.points) }, anchor],
  ];
}

/** The lines of a name, its label broken to a width; without label where the width is 0. */
function nameLines(setup: SheetSetup, part: SheetPart, width: GridUnits): NameLines {
  const { types, circuit } = setup;
  const { id, label = "" } = part.part;
  const word = (text: string, type: SheetType) => ({ text, type });
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
    ...full.map((lines) => ({ lines, places: homes(part, lines), margin: 0.15 })),
    ...full.map((lines) => ({ lines, places: around(part, lines, NAME_GAP, NEAR), margin: 0.1 })),
    { lines: least, places: homes(part, least), margin: 0.15 },
    { lines: least, places: around(part, least, NAME_GAP, FARTHEST), margin: 0 },
  ];
  for (const { lines, places, margin } of tries) {
    for (const [at, anchor] of places) {
      const marks = setLines(lines, at, anchor, part.part.id);
      if (marks.every((mark) => room.isFree(boundsOf(mark), margin))) return marks;
    }
  }
  return setLines(least, part.shape.nameAt, part.shape.nameAt.anchor, part.part.id);
}
