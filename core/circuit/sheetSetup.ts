import type { PartId, WireId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, Volts } from "../base/units.ts";
import type { Mark, TextMark } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Doing, Look } from "../parts/kind.ts";
import type { Circuit, Condition, Page } from "./circuit.ts";
import type { PlacedShape } from "./placeSymbol.ts";
import { type SheetArea, sheetArea } from "./sheetArea.ts";
import { type PagePart, type SheetPage, sheetPage } from "./sheetPage.ts";
import { livePose } from "./sheetPose.ts";
import { farTo, printedAt, type Sight, zoomedTo } from "./sheetSight.ts";
import type { SheetTypes } from "./sheetType.ts";

/** Live state of a wire as a sheet shows it: at its from end and its to end; amps positive from -> to. */
export interface SheetWireLive {
  readonly state: readonly [WireState, WireState];
  readonly volts: readonly [Volts | null, Volts | null];
  readonly amps: Amps;
  /** The conductor itself is open. */
  readonly isBroken: boolean;
  readonly alwaysFed: boolean;
  readonly weak: boolean;
}

/** How a part stands now: its state (`pulled-in`, `melted`, "" for none), its work, and the keys of its closed contacts. */
export interface SheetPartLive {
  readonly state: string;
  readonly doing: Doing["doing"] | null;
  readonly closed: ReadonlySet<string>;
}

/** The live state that a sheet can show; `liveOf` of the live room gives one. */
export interface SheetLive {
  readonly condition: Condition;
  readonly wires: ReadonlyMap<WireId, SheetWireLive>;
  readonly parts: ReadonlyMap<PartId, SheetPartLive>;
}

/** A sheet that is read from the back of a room: few words, large whatever the zoom. */
export interface SheetFar {
  /** Height of type, in pixels at the zoom. */
  readonly pixels: number;
  /** Parts and wires that have words; null for all. */
  readonly named: ReadonlySet<PartId | WireId> | null;
  /** What of the page is seen: all words stand in it. */
  readonly seen: Bounds;
}

/** What a sheet is drawn from. */
export interface SheetRequest {
  readonly circuit: Circuit;
  /** Id of the page. */
  readonly page: string;
  /** Absent for a plain drawing at rest in ink. */
  readonly live?: SheetLive;
  /** Which faults the live state is with, in words for the banner; none where empty or absent. */
  readonly putIn?: string;
  readonly look?: Look;
  /** False leaves out frame, banner, legend and title block, as the bench does; usual with a zoom. */
  readonly framed?: boolean;
  /** Share of its own size that the page is printed at; type grows so that none is under 7.5 points on paper. */
  readonly printScale?: number;
  /**
   * On a screen instead of paper: 1 at 100 %. Symbols and wires lie as on paper; words are set as the zoom can show them,
   * on all of the sheet, for nothing frames it.
   */
  readonly zoom?: number;
  /** With a zoom: seen from afar. */
  readonly far?: SheetFar;
  /** Number of this sheet and how many there are. */
  readonly sheet?: readonly [number, number];
  readonly code?: string;
}

/** A part standing on the page, its symbol in page coordinates. */
export interface SheetPart extends PagePart {
  readonly shape: PlacedShape;
  /** State now; that of rest without live state. */
  readonly state: string;
  /** Words of the symbol that are yet to be set: all of them on a screen, where they have no room of their own; else none. */
  readonly words: readonly TextMark[];
}

/** Everything that the steps of drawing one sheet share. */
export interface SheetSetup extends Pick<SheetPage, "spots" | "wires" | "wiresAt"> {
  readonly circuit: Circuit;
  readonly page: Page;
  readonly live: SheetLive | null;
  /** Faults in words; empty where there is none. */
  readonly putIn: string;
  readonly look: Look;
  readonly area: SheetArea;
  readonly sight: Sight;
  /** The types of the sight. */
  readonly types: SheetTypes;
  readonly parts: readonly SheetPart[];
  /** Parts and wires that have words; null for all. */
  readonly named: ReadonlySet<PartId | WireId> | null;
}

/** Places the symbols of a page, each as it stands now; those that stand as they did when `stood` was last asked come from there. */
export function setUpSheet(request: SheetRequest, page: Page, stood = new StoodMemory()): SheetSetup {
  const { circuit, live = null, putIn = "", look = "iec", printScale = 1, zoom, far } = request;
  const near = zoom === undefined ? printedAt(printScale) : zoomedTo(zoom);
  const sight = far === undefined || zoom === undefined ? near : farTo(zoom, far.pixels);
  const area = sheetArea(page);
  const { parts, spots, wires, wiresAt } = sheetPage(circuit, page.id, look);
  return {
    circuit,
    page,
    live,
    putIn,
    look,
    area: far ? { ...area, outer: far.seen, frame: far.seen } : area,
    sight,
    types: sight.types,
    parts: stood.stand(parts, live, sight),
    named: far?.named ?? null,
    spots,
    wires,
    wiresAt,
  };
}

/** Only what has words of a sheet, and the room that this leaves them. */
export function namedOf(setup: SheetSetup): SheetSetup {
  const { named, parts } = setup;
  return named === null ? setup : { ...setup, parts: parts.filter(({ part }) => named.has(part.id)) };
}

/** Whether something of a sheet has words. */
export function isNamed({ named }: SheetSetup, id: PartId | WireId): boolean {
  return named === null || named.has(id);
}

/** The parts of one page at one sight as they last stood. */
export class StoodMemory {
  private parts: readonly PagePart[] = [];
  private lives: readonly (SheetPartLive | undefined)[] = [];
  private stood: readonly SheetPart[] = [];

  /** Every part as it stands now: the same object where nothing is said of it that was not said last time. */
  stand(parts: readonly PagePart[], live: SheetLive | null, sight: Sight): readonly SheetPart[] {
    const lives = parts.map(({ part }) => live?.parts.get(part.id));
    const stood = parts.map((part, index) => {
      const isSame = part === this.parts[index] && standAlike(lives[index], this.lives[index]);
      return isSame ? this.stood[index]! : standing(part, lives[index], sight);
    });
    this.parts = parts;
    this.lives = lives;
    this.stood = stood;
    return stood;
  }
}

/** Whether a part stands the same with both: with the same contacts closed, in the same state. */
function standAlike(one: SheetPartLive | undefined, other: SheetPartLive | undefined): boolean {
  if (!one || !other) return one === other;
  if (one.state !== other.state || one.closed.size !== other.closed.size) return false;
  return one.closed === other.closed || [...one.closed].every((key) => other.closed.has(key));
}

function standing(part: PagePart, now: SheetPartLive | undefined, sight: Sight): SheetPart {
  const pose = now ? livePose(part.rest, now) : part.rest;
  const whole = part.placed(pose);
  if (sight.isScreen) return onScreen(part, pose.state, whole);
  const grows = (mark: Mark): mark is TextMark => mark.mark === "text" && sight.grown(mark.points) !== mark.points;
  const shape = whole.marks.some(grows)
    ? {
        ...whole,
        marks: whole.marks.map((mark) => (grows(mark) ? { ...mark, points: sight.grown(mark.points) } : mark)),
      }
    : whole;
  return { ...part, shape, state: pose.state, words: [] };
}

/** A part with its words apart: the same object for the same pose of the same part. */
function onScreen(part: PagePart, state: string, whole: PlacedShape): SheetPart {
  const known = partsOnScreen(part).get(whole);
  if (known !== undefined) return known;
  const made = { ...part, ...parted(whole), state };
  partsOnScreen(part).set(whole, made);
  return made;
}

const partsOnScreen = remember((_part: PagePart) => new Map<PlacedShape, SheetPart>());

/** A symbol without its words, and those. */
function parted(whole: PlacedShape): Pick<SheetPart, "shape" | "words"> {
  return {
    shape: { ...whole, marks: whole.marks.filter(({ mark }) => mark !== "text") },
    words: whole.marks.filter((mark): mark is TextMark => mark.mark === "text"),
  };
}
