import type { PartId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { TextMark } from "../drawing/mark.ts";
import { type Bounds, boundsOf, gapBetween, wrapText } from "../drawing/measure.ts";
import { otherLinks } from "./sheetElsewhere.ts";
import { around, homes, inside, NAME_GAP, type NameLines, type NamePlace, setLines } from "./sheetNamePlaces.ts";
import { connectorsShownByName } from "./sheetPlugs.ts";
import { FARTHEST, type SheetRoom } from "./sheetRoom.ts";
import { settingText } from "./sheetSettings.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";
import type { SheetType } from "./sheetType.ts";

/** Widest line of a label before it is broken, and the width it is broken to where that finds no room. */
const WIDE: GridUnits = 13;
const NARROW: GridUnits = 7.2;
/** How far a name stands off at most while it still says all. */
const NEAR: GridUnits = 2.6;

/**
 * The names of the parts: designator with its plugs, key settings, label. They are set in the body of the part, where its
 * symbol wants its name, or round it. `unset` are words of the symbol that have no room in it. On a screen a name that
 * finds no room at all is set before the others, or left out. What is set is taken in the room.
 */
export function nameMarks(
  setup: SheetSetup,
  room: SheetRoom,
  unset: ReadonlyMap<PartId, readonly string[]>,
): ReadonlyMap<PartId, readonly TextMark[]> {
  const first = setNames(setup, setup.parts, room.copy(), unset);
  const without = setup.parts.filter(({ part }) => first.get(part.id)!.length === 0);
  const others = setup.parts.filter((part) => !without.includes(part));
  const names = without.length === 0 ? first : setNames(setup, [...without, ...others], room.copy(), unset);
  for (const mark of [...names.values()].flat()) room.takeWord(mark, setup.sight.besideWords);
  return names;
}

function setNames(
  setup: SheetSetup,
  parts: readonly SheetPart[],
  room: SheetRoom,
  unset: ReadonlyMap<PartId, readonly string[]>,
): ReadonlyMap<PartId, readonly TextMark[]> {
  const names = new Map<PartId, readonly TextMark[]>();
  for (const part of parts) {
    const own = unset.get(part.part.id) ?? [];
    const forms = [WIDE, NARROW, 0].map((width) => nameLines(setup, part, own, width));
    const marks = firstFree(setup, room, part, forms, neighboursOf(part, parts));
    for (const mark of marks) room.takeWord(mark, setup.sight.besideWords);
    names.set(part.part.id, marks);
  }
  return names;
}

/** The lines of a name, its label broken to a width; without label where the width is 0. */
function nameLines(setup: SheetSetup, part: SheetPart, unset: readonly string[], width: GridUnits): NameLines {
  const { types, circuit, sight } = setup;
  const { id, label = "" } = part.part;
  const word = (text: string, type: SheetType) => ({ text, type });
  if (!sight.hasWords) return [[word(id, types.designator)]];
  const setting = settingText(part);
  const isDrawn = part.shape.marks.some((mark) => mark.mark === "text" && plain(mark.text) === plain(setting));
  const own = unset.filter((text) => plain(text) !== plain(setting));
  const labels = label === "" || width === 0 ? [] : wrapText(label, types.name.points, types.name.weight, width);
  return [
    [word(id, types.designator), ...connectorsShownByName(circuit, part).map((plug) => word(plug, types.name))],
    ...(setting === "" || isDrawn ? [] : [[word(setting, types.setting)]]),
    ...labels.map((text) => [word(text, types.name)]),
    ...(width === 0 ? [] : own.map((text) => [word(text, types.setting)])),
    ...otherLinks(circuit, part).map((text) => [word(text, types.name)]),
  ];
}

const plain = (text: string) => text.replace(/\s/g, " ");

/**
 * The marks at the first free place: in the body, where the symbol wants them, near the part, then without the label and
 * farther away. Every word stands nearer to its own part than to any other, so that nobody takes one for the other's; only
 * a designator that finds no such place stands where it can. Where nothing is free, where the symbol wants them;
 * none on a screen.
 */
function firstFree(
  { sight }: SheetSetup,
  room: SheetRoom,
  part: SheetPart,
  forms: readonly NameLines[],
  neighbours: readonly Bounds[],
): readonly TextMark[] {
  const least = forms.at(-1)!;
  const full = forms.slice(0, -1);
  const short = inOneLine(least);
  const last = { lines: least, margin: 0 };
  const tries = [
    ...full.map((lines) => ({ lines, places: inside(part, lines), margin: 0.4 })),
    ...full.map((lines) => ({ lines, places: homes(part, lines), margin: 0.15 })),
    ...full.map((lines) => ({ lines, places: around(part, lines, NAME_GAP, NEAR), margin: 0.1 })),
    { lines: least, places: homes(part, least), margin: 0.15 },
    { ...last, places: around(part, least, NAME_GAP, FARTHEST) },
    { ...last, lines: short, places: around(part, short, NAME_GAP, FARTHEST) },
    { ...last, places: around(part, least, NAME_GAP, FARTHEST), isAnyones: true },
  ];
  for (const { lines, places, margin, isAnyones = false } of tries as readonly Try[]) {
    for (const [at, anchor] of places) {
      const marks = setLines(lines, at, anchor, part.part.id);
      if (!marks.every((mark) => room.isFree(boundsOf(mark), margin))) continue;
      if (isAnyones || marks.every((mark) => isNearest(boundsOf(mark), part.shape.outline, neighbours))) return marks;
    }
  }
  return sight.isScreen ? [] : setLines(least, part.shape.nameAt, part.shape.nameAt.anchor, part.part.id);
}

/** A name without its label, its lines one after the other. */
function inOneLine(lines: NameLines): NameLines {
  return [lines.flat()];
}

interface Try {
  readonly lines: NameLines;
  readonly places: Iterable<NamePlace>;
  readonly margin: GridUnits;
  /** True where it may also stand nearer to another part. */
  readonly isAnyones?: boolean;
}

/** How far a part may be from another for its name to come near that one. */
const NEIGHBOUR: GridUnits = FARTHEST + WIDE;

/** Outlines of the parts that a name could be taken for. */
function neighboursOf(part: SheetPart, parts: readonly SheetPart[]): readonly Bounds[] {
  const own = part.shape.outline;
  return parts.flatMap(({ shape: { outline } }) =>
    outline !== own && gapBetween(own, outline) <= NEIGHBOUR ? [outline] : [],
  );
}

function isNearest(word: Bounds, own: Bounds, others: readonly Bounds[]): boolean {
  const away = gapBetween(word, own);
  return others.every((other) => gapBetween(word, other) > away);
}
