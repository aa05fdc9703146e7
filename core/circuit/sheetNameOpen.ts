import type { GridUnits } from "../base/units.ts";
import { type Bounds, boxRound } from "../drawing/measure.ts";
import { NameForm, type NameLines, type NamePlace } from "./sheetNameLines.ts";
import { homes, inside, NAME_GAP, type Round, rounds, someOnRound } from "./sheetNamePlaces.ts";
import { FARTHEST, NO_BOX, type SheetRoom } from "./sheetRoom.ts";
import type { SheetPart } from "./sheetSetup.ts";

/** How far a name stands off at most while it still says all. */
const NEAR: GridUnits = 2.6;

/** A place where a name has room beside all that stood before any name. */
export interface OpenPlace {
  readonly form: NameForm;
  readonly place: NamePlace;
  readonly margin: GridUnits;
  /** False where a word would stand nearer to another part; such a place will do if there is nothing better. */
  readonly isNearest: boolean;
}

/** What is asked for only where places are sought. */
interface Wanted {
  /** Forms of the name from the fullest to the least. */
  readonly forms: () => readonly NameForm[];
  /** Outlines of the parts that the name could be taken for another's at. */
  readonly neighbours: () => readonly Bounds[];
  /** Whether a designator may stand nearer to another part, if nothing better is found. */
  readonly isAnyones: boolean;
}

/**
 * The open places of one name, best first: in the body, where the symbol wants it, near the part, then without the label and
 * farther away. Each is found once, and only when somebody comes so far: names are set twice on the same ground.
 */
export class OpenPlaces {
  private readonly found: OpenPlace[] = [];
  private readonly part: SheetPart;
  private readonly ground: SheetRoom;
  private readonly wanted: Wanted;
  private made: readonly NameForm[] | null = null;
  private rest: Iterator<unknown> | null = null;
  private looked: Bounds = NO_BOX;

  /** On `ground`, where nothing comes or goes as long as places are sought. */
  constructor(part: SheetPart, ground: SheetRoom, wanted: Wanted) {
    this.part = part;
    this.ground = ground;
    this.wanted = wanted;
  }

  get forms(): readonly NameForm[] {
    this.made ??= this.wanted.forms();
    return this.made;
  }

  /** The box round every place that was looked at so far. */
  get reach(): Bounds {
    return this.looked;
  }

  /** All places from the best on. */
  *inOrder(): Generator<OpenPlace> {
    for (let index = 0; ; index++) {
      while (index >= this.found.length) if (!this.findMore()) return;
      yield this.found[index]!;
    }
  }

  /** Looks at the next few places; false where there are no more. */
  private findMore(): boolean {
    this.rest ??= this.seek();
    this.ground.begin();
    const isOver = this.rest.next().done === true;
    this.looked = boxRound(this.looked, this.ground.seen());
    return !isOver;
  }

  /** Puts what is open where it was found, and halts after every few places. */
  private *seek(): Generator<void> {
    const { part, ground, wanted, found } = this;
    const own = part.shape.outline;
    const neighbours = wanted.neighbours();
    for (const { form, places, around, margin, isAnyones } of withoutRepeats(
      triesOf(part, this.forms, wanted.isAnyones),
    )) {
      const put = (place: NamePlace): void => {
        const isNearest = form.isNearestAt(place, own, neighbours);
        if (isNearest || isAnyones) found.push({ form, place, margin, isNearest });
      };
      for (const place of places ?? []) {
        if (form.isFreeAt(place, ground, margin)) put(place);
        yield;
      }
      for (const round of around ?? []) {
        someOnRound(round, (x, y, anchor) => {
          if (form.isFree(x, y, anchor, ground, margin)) put([{ x, y }, anchor]);
          return false;
        });
        yield;
      }
    }
  }
}

interface Try {
  readonly form: NameForm;
  readonly places?: Iterable<NamePlace>;
  readonly around?: Iterable<Round>;
  readonly margin: GridUnits;
  /** True where it may also stand nearer to another part, if nothing better is found. */
  readonly isAnyones?: boolean;
}

function triesOf(part: SheetPart, forms: readonly NameForm[], isAnyones: boolean): readonly Try[] {
  const least = forms.at(-1)!;
  const full = forms.slice(0, -1);
  const inOneLine = new NameForm([least.lines.flat()]);
  return [
    ...full.map((form) => ({ form, places: inside(part, form.lines), margin: 0.4 })),
    ...full.map((form) => ({ form, places: homes(part, form.lines), margin: 0.15 })),
    ...full.map((form) => ({ form, around: rounds(part, form.lines, NAME_GAP, NEAR), margin: 0.1 })),
    { form: least, places: homes(part, least.lines), margin: 0.15 },
    { form: least, around: rounds(part, least.lines, NAME_GAP, FARTHEST), margin: 0, isAnyones },
    { form: inOneLine, around: rounds(part, inOneLine.lines, NAME_GAP, FARTHEST), margin: 0 },
  ];
}

/** Without tries of the same words as those just before them: at the same places they find no more room. */
function withoutRepeats(tries: readonly Try[]): readonly Try[] {
  return tries.filter(({ form, margin }, index) => {
    const before = tries[index - 1];
    return before === undefined || before.margin !== margin || !isSame(before.form.lines, form.lines);
  });
}

function isSame(one: NameLines, other: NameLines): boolean {
  return (
    one.length === other.length &&
    one.every((line, index) => {
      const theirs = other[index]!;
      return line.length === theirs.length && line.every(({ text }, at) => text === theirs[at]!.text);
    })
  );
}
