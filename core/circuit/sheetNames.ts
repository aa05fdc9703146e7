import type { ConnectorId, PartId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { TextMark } from "../drawing/mark.ts";
import { type Bounds, wrapText } from "../drawing/measure.ts";
import { otherLinks } from "./sheetElsewhere.ts";
import { NameForm, type NameLines } from "./sheetNameLines.ts";
import { OpenPlaces } from "./sheetNameOpen.ts";
import { neighboursWithin } from "./sheetNeighbours.ts";
import type { OwnWords } from "./sheetOwnWords.ts";
import { connectorsShownByName } from "./sheetPlugs.ts";
import { type Differences, FARTHEST, type SheetRoom } from "./sheetRoom.ts";
import { settingText } from "./sheetSettings.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";
import { type Step, type StepRoom, Steps } from "./sheetSteps.ts";
import type { SheetType } from "./sheetType.ts";

/** Widest line of a label before it is broken, and the width it is broken to where that finds no room. */
const WIDE: GridUnits = 13;
const NARROW: GridUnits = 7.2;

/** How the names of a page were set, at first and, where some had found no room, a second time. */
export interface NameMemory {
  readonly first: NameSteps;
  readonly second: NameSteps | null;
  /** Outlines of all parts: none may be nearer to a name than its own. */
  readonly outlines: ReadonlySet<Bounds>;
}

type NameSteps = ReadonlyMap<PartId, Step<readonly TextMark[]>>;

/**
 * The names of the parts: designator with its plugs, key settings, label. They are set in the body of the part, where its
 * symbol wants its name, or round it. `own` has words of the symbols, and those that have no room in them. On a screen a
 * name that finds no room at all is set before the others, or left out. What is set is taken in the room.
 */
export function nameMarks(
  setup: SheetSetup,
  { room, differs }: StepRoom,
  own: ReadonlyMap<PartId, OwnWords>,
  before: NameMemory | null,
): { readonly names: ReadonlyMap<PartId, readonly TextMark[]>; readonly memory: NameMemory } {
  const named = namedParts(setup, room, own);
  const outlines = new Set(setup.parts.map(({ shape }) => shape.outline));
  if (before && differs) markOther(differs, outlines, before.outlines);
  const tried = () => ({ room: room.copy(), differs: differs?.copy() ?? null });
  const first = setNames(setup, named, tried(), before?.first ?? null);
  const isWithout = ({ part }: Named) => first.get(part.part.id)!.value.length === 0;
  const without = named.filter(isWithout);
  const others = named.filter((each) => !isWithout(each));
  const second =
    without.length === 0 ? null : setNames(setup, [...without, ...others], tried(), before?.second ?? null);
  const names = new Map([...(second ?? first)].map(([id, { value }]) => [id, value]));
  for (const marks of names.values()) for (const mark of marks) room.takeWord(mark, setup.sight.besideWords);
  return { names, memory: { first, second, outlines } };
}

/** Marks what may lie nearer to another part, or no longer so, than it did before. */
function markOther(differs: Differences, now: ReadonlySet<Bounds>, before: ReadonlySet<Bounds>): void {
  const other = [...[...now].filter((each) => !before.has(each)), ...[...before].filter((each) => !now.has(each))];
  for (const { left, top, right, bottom } of other)
    differs.mark([left - NEIGHBOUR, top - NEIGHBOUR, right + NEIGHBOUR, bottom + NEIGHBOUR]);
}

/** A part and the places where its name has room. */
interface Named {
  readonly part: SheetPart;
  /** All that its name is made of. */
  readonly made: readonly unknown[];
  readonly places: OpenPlaces;
}

function namedParts(setup: SheetSetup, ground: SheetRoom, own: ReadonlyMap<PartId, OwnWords>): readonly Named[] {
  const neighboursOf = neighboursWithin(setup.parts, NEIGHBOUR);
  return setup.parts.map((part) => {
    const words = own.get(part.part.id);
    const said = { plugs: connectorsShownByName(setup.circuit, part), links: otherLinks(setup.circuit, part) };
    const form = (width: GridUnits) =>
      new NameForm(nameLines(setup, part, { ...said, unset: words?.unset ?? [] }, width));
    return {
      part,
      made: [part.placed, words, said.plugs.join(" "), said.links.join("\n")],
      places: new OpenPlaces(part, ground, {
        forms: () => [form(WIDE), form(NARROW), form(0)],
        neighbours: () => neighboursOf(part),
        isAnyones: setup.sight.hasLabels,
      }),
    };
  });
}

function setNames(
  { sight }: SheetSetup,
  parts: readonly Named[],
  place: StepRoom,
  before: NameSteps | null,
): NameSteps {
  const steps = new Steps<readonly TextMark[]>(
    [place],
    before,
    parts.map(({ part }) => part.part.id),
  );
  for (const each of parts) {
    steps.set(each.part.part.id, each.made, () => {
      const marks = firstFree(each, place.room) ?? (sight.isScreen ? [] : whereWanted(each));
      for (const mark of marks) place.room.takeWord(mark, sight.besideWords);
      return marks;
    });
  }
  return steps.done();
}

/** What a name says beside what its part does. */
interface Said {
  readonly plugs: readonly ConnectorId[];
  readonly links: readonly string[];
  /** Words of the symbol that have no room in it. */
  readonly unset: readonly string[];
}

/** The lines of a name, its label broken to a width; without label where the width is 0. */
function nameLines({ types, sight }: SheetSetup, part: SheetPart, said: Said, width: GridUnits): NameLines {
  const { id, label = "" } = part.part;
  const word = (text: string, type: SheetType) => ({ text, type });
  if (!sight.hasWords || !sight.hasLabels) return [[word(id, types.designator)]];
  const setting = settingText(part);
  const isDrawn = part.shape.marks.some((mark) => mark.mark === "text" && plain(mark.text) === plain(setting));
  const own = said.unset.filter((text) => plain(text) !== plain(setting));
  const labels = label === "" || width === 0 ? [] : wrapText(label, types.name.points, types.name.weight, width);
  return [
    [word(id, types.designator), ...said.plugs.map((plug) => word(plug, types.name))],
    ...(setting === "" || isDrawn ? [] : [[word(setting, types.setting)]]),
    ...labels.map((text) => [word(text, types.name)]),
    ...(width === 0 ? [] : own.map((text) => [word(text, types.setting)])),
    ...said.links.map((text) => [word(text, types.name)]),
  ];
}

const plain = (text: string) => text.replace(/\s/g, " ");

/**
 * The marks at the first place that is free of other names too. Every word stands nearer to its own part than to any other, so
 * that nobody takes one for the other's; only a designator that finds no such place stands where it can, unless few words
 * are all there is. Null where nothing is free.
 */
function firstFree({ part, places }: Named, room: SheetRoom): readonly TextMark[] | null {
  room.ask(part.shape.outline);
  let anyones: readonly TextMark[] | null = null;
  let found: readonly TextMark[] | null = null;
  for (const { form, place, margin, isNearest } of places.inOrder()) {
    if (!isNearest && anyones !== null) continue;
    if (!form.isFreeAt(place, room, margin)) continue;
    const marks = form.marksAt(place, part.part.id);
    if (isNearest) {
      found = marks;
      break;
    }
    anyones = marks;
  }
  room.ask(places.reach);
  return found ?? anyones;
}

/** The least of a name where the symbol wants it. */
function whereWanted({ part, places }: Named): readonly TextMark[] {
  const { nameAt } = part.shape;
  return places.forms.at(-1)!.marksAt([nameAt, nameAt.anchor], part.part.id);
}

/** How far a part may be from another for its name to come near that one. */
const NEIGHBOUR: GridUnits = FARTHEST + WIDE;
