import type { PartId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import { PART_STATE_WORDS, SHEET_WORDS, WORKING_WORDS } from "../base/words/sheet.ts";
import type { TextMark } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import { type OffRest, offRest, standingOn } from "./sheetCondition.ts";
import { BETWEEN_WORDS, NameForm, type NamePlace } from "./sheetNameLines.ts";
import { NAME_GAP, rounds, someOnRound } from "./sheetNamePlaces.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetLive, SheetPart, SheetSetup } from "./sheetSetup.ts";
import { lead, type SheetType } from "./sheetType.ts";

interface Word {
  readonly text: string;
  readonly type: SheetType;
}

/**
 * How each part stands now and what it does, beside its name or under it: `pulled in`, `held OPEN`, `runs forward`. It is set after all names, which so
 * keep their places when a switch is thrown. On a screen a word that finds no room is left out. What is set is taken in
 * the room.
 */
export function standingMarks(
  setup: SheetSetup,
  names: ReadonlyMap<PartId, readonly TextMark[]>,
  room: SheetRoom,
): readonly TextMark[] {
  const { live, sight } = setup;
  if (live === null || !sight.hasWords) return [];
  const standing = offRest(setup.circuit, live.condition);
  return setup.parts.flatMap((part) => {
    const set = [...(names.get(part.part.id) ?? [])];
    const count = set.length;
    if (count === 0) return [];
    for (const word of wordsOf(setup, part, live, standing)) {
      const mark = firstFree(setup, part, set, word, room) ?? (sight.isScreen ? null : under(part, set, word));
      if (mark === null) continue;
      room.takeWord(mark, sight.besideWords);
      set.push(mark);
    }
    return set.slice(count);
  });
}

function wordsOf(
  { types, sight }: SheetSetup,
  { part: { id }, state }: SheetPart,
  { condition, parts }: SheetLive,
  standing: readonly OffRest[],
): readonly Word[] {
  const word = condition.out?.includes(id) ? SHEET_WORDS.out : PART_STATE_WORDS[state];
  const works = WORKING_WORDS[parts.get(id)?.doing ?? ""];
  return [
    ...(word === undefined ? [] : [{ text: word, type: types.name }]),
    ...(works === undefined ? [] : [{ text: works, type: types.volts }]),
    ...standingOn(standing, id, sight.isScreen).map((text) => ({ text, type: types.volts })),
  ];
}

function firstFree(
  { sight }: SheetSetup,
  part: SheetPart,
  name: readonly TextMark[],
  word: Word,
  room: SheetRoom,
): TextMark | null {
  const form = new NameForm([[word]]);
  const gap = Math.max(BETWEEN_WORDS, sight.besideGlyph);
  const setAt = (place: NamePlace) => form.marksAt(place, part.part.id)[0]!;
  const beside = besideName(name, word.type, part, gap).find((place) => form.isFreeAt(place, room, 0));
  if (beside !== undefined) return setAt(beside);
  for (const round of rounds(part, form.lines, NAME_GAP, sight.farthestState)) {
    let mark: TextMark | null = null;
    someOnRound(round, (x, y, anchor) => {
      if (form.isFree(x, y, anchor, room, 0)) mark = setAt([{ x, y }, anchor]);
      return mark !== null;
    });
    if (mark !== null) return mark;
  }
  return null;
}

/** The word under the name, whatever lies there. */
function under(part: SheetPart, name: readonly TextMark[], word: Word): TextMark {
  return new NameForm([[word]]).marksAt(besideName(name, word.type, part)[1], part.part.id)[0]!;
}

/** At the end of the first line of a name, under it and over it, in line at the side that is nearer to the part. */
function besideName(
  name: readonly TextMark[],
  type: SheetType,
  { shape: { outline } }: SheetPart,
  gap: GridUnits = BETWEEN_WORDS,
): readonly [NamePlace, NamePlace, NamePlace] {
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
    [{ x: end + gap, y: first }, "start"],
    [{ x, y: last + lead(type.points) }, anchor],
    [{ x, y: first - lead(name[0]!.points) }, anchor],
  ];
}
