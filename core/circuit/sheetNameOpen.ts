import type { GridUnits } from "../base/units.ts";
import type { Bounds } from "../drawing/measure.ts";
import { NameForm, type NameLines, type NamePlace } from "./sheetNameLines.ts";
import { around, homes, inside, NAME_GAP } from "./sheetNamePlaces.ts";
import { boxRound, FARTHEST, NO_BOX, type SheetRoom } from "./sheetRoom.ts";
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
  private rest: Iterator<OpenPlace> | null = null;
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
      const place = this.found[index] ?? this.next();
      if (place === null) return;
      yield place;
    }
  }

  private next(): OpenPlace | null {
    this.rest ??= this.seek();
    this.ground.begin();
    const { done, value } = this.rest.next();
    this.looked = boxRound(this.looked, this.ground.seen());
    if (done) return null;
    this.found.push(value);
    return value;
  }

  private *seek(): Generator<OpenPlace> {
    const { part, ground, wanted } = this;
    const neighbours = wanted.neighbours();
    for (const { form, places, margin, isAnyones } of withoutRepeats(triesOf(part, this.forms, wanted.isAnyones))) {
      for (const place of places) {
        if (!form.isFreeAt(place, ground, margin)) continue;
        const isNearest = form.isNearestAt(place, part.shape.outline, neighbours);
        if (isNearest || isAnyones) yield { form, place, margin, isNearest };
      }
    }
  }
}

interface Try {
  readonly form: NameForm;
  readonly places: Iterable<NamePlace>;
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
    ...full.map((form) => ({ form, places: around(part, form.lines, NAME_GAP, NEAR), margin: 0.1 })),
    { form: least, places: homes(part, least.lines), margin: 0.15 },
    { form: least, places: around(part, least.lines, NAME_GAP, FARTHEST), margin: 0, isAnyones },
    { form: inOneLine, places: around(part, inOneLine.lines, NAME_GAP, FARTHEST), margin: 0 },
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
