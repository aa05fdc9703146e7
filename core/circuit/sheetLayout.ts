import type { PartId, WireId } from "../base/ids.ts";
import { LastOfEach, remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import type { Mark, Spot, TextMark } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import type { Look } from "../parts/kind.ts";
import type { Circuit, Page } from "./circuit.ts";
import type { PlacedShape, TerminalSpot } from "./placeSymbol.ts";
import type { RouteMemory } from "./routeMemory.ts";
import { flagSeen, type LooseEnd, looseEnd, looseEnds } from "./sheetFlags.ts";
import { SheetMemory } from "./sheetMemory.ts";
import { type NameMemory, nameMarks } from "./sheetNames.ts";
import { type OwnWordRooms, type OwnWords, ownWords } from "./sheetOwnWords.ts";
import { FROM_SYMBOL, inkBoxes, SheetRoom } from "./sheetRoom.ts";
import { sheetRoutes } from "./sheetRoutes.ts";
import {
  isNamed,
  namedOf,
  type SheetFar,
  type SheetPart,
  type SheetRequest,
  type SheetSetup,
  setUpSheet,
} from "./sheetSetup.ts";
import { type Step, Steps } from "./sheetSteps.ts";
import { type TerminalMemory, terminalMarks } from "./sheetTerminals.ts";
import type { SheetWire, WireWay } from "./sheetWire.ts";
import { layWires } from "./sheetWireLaying.ts";
import { dotMarks, lineMarks } from "./sheetWireMarks.ts";

/** What of a sheet is the same however its parts stand, so that nothing moves when a switch is thrown. */
export interface SheetLayout {
  readonly ways: readonly WireWay[];
  readonly loose: readonly LooseEnd[];
  /** Words that belong to symbols and are no part of their marks. */
  readonly words: readonly TextMark[];
  readonly names: ReadonlyMap<PartId, readonly TextMark[]>;
  readonly terminals: readonly Mark[];
  /** Symbols in every pose, wires, dots, flags, words, terminals and names. */
  readonly room: SheetRoom;
  /** Words, terminals and names alone. */
  readonly written: SheetRoom;
  /** Of the page at this sight, whatever its layout. */
  readonly memory: SheetMemory;
}

/** Words, loose ends, terminals and names, which are the same in every state. */
export const stillMarks = remember(({ words, loose, terminals, names }: SheetLayout): readonly Mark[] => [
  ...words,
  ...loose.flatMap(({ marks }) => marks),
  ...terminals,
  ...[...names.values()].flat(),
]);

/** How far words keep from the middle of wires, letters and the whole of their line. */
const FROM_WIRE: GridUnits = 0.36;
const LINE_FROM_WIRE: GridUnits = 0.12;
/** How far words of a symbol that have grown keep from its lines. */
const WITHIN_SYMBOL: GridUnits = 0.06;

/** Layouts of a circuit by page, look, and scale or zoom, and its wires as they are laid by page, look and scale. */
const layoutsOf = remember((_circuit: Circuit) => new Map<string, SheetLayout>());
const laidOf = remember((_circuit: Circuit) => new Map<string, Laid>());

/** The wires of a page and its loose ends, as they lie on paper of one scale. */
type Laid = Pick<SheetLayout, "ways" | "loose">;

/** How many pages, looks, scales and zooms keep what was laid and set for them last. */
const MOST_KEPT = 8;
const laidLast = new LastOfEach<LaidMemory>(MOST_KEPT);
const setLast = new LastOfEach<WordMemory>(MOST_KEPT);

/** The layout of a page, remembered for each circuit. At any zoom wires and flags lie as they do on paper. */
export function layoutOf(request: SheetRequest, page: Page): SheetLayout {
  const { circuit, look = "iec", printScale = 1, zoom, far } = request;
  const layouts = layoutsOf(circuit);
  const key = `${page.id} ${look} ${zoom === undefined ? printScale : `at ${zoom}`}${far ? farKey(far) : ""}`;
  const known = layouts.get(key);
  if (known !== undefined) return known;
  const sized = zoom === undefined ? { printScale } : { zoom, ...(far && { far }) };
  const setup = setUpSheet({ circuit, page: page.id, look, ...sized }, page);
  const wires =
    zoom === undefined ? laid({ ...request, printScale }, page) : seenAgain(setup, laid(onPaper(request), page));
  const { layout, memory } = setWords(setup, wires, setLast.get(key));
  // What is seen from afar moves with the view: it would push out what is drawn again and again.
  if (!far) setLast.set(key, memory);
  layouts.set(key, layout);
  return layout;
}

function farKey({ pixels, named, seen }: SheetFar): string {
  return ` far ${pixels} ${named === null ? "" : [...named].join(" ")} ${Object.values(seen).join(" ")}`;
}

/** The wires of a page as they lie on it, without any words. */
export function waysOn(circuit: Circuit, page: Page, look: Look = "iec"): readonly WireWay[] {
  return laid({ circuit, look, printScale: 1 }, page).ways;
}

/** What wires are laid for: a page at a scale on paper. */
type Plain = Pick<SheetRequest, "circuit" | "look" | "printScale">;

function onPaper({ circuit, look }: SheetRequest): Plain {
  return { circuit, ...(look && { look }), printScale: 1 };
}

/** The wires as they lie on paper, laid from nothing but for what is left of those that were laid last for such a page. */
function laid({ circuit, look = "iec", printScale = 1 }: Plain, page: Page): Laid {
  const all = laidOf(circuit);
  const key = `${page.id} ${look} ${printScale}`;
  const known = all.get(key);
  if (known !== undefined) return known;
  const setup = setUpSheet({ circuit, page: page.id, look, printScale }, page);
  const { routes, loose, memory } = routed(setup, laidLast.get(key));
  laidLast.set(key, memory);
  const made = { ways: waysOf(setup, routes, loose), loose };
  all.set(key, made);
  return made;
}

/** The same wires at another sight: the words of flags are set for it. */
function seenAgain(setup: SheetSetup, { ways, loose }: Laid): Laid {
  const wires = new Map(setup.wires.map((each) => [each.wire.id, each]));
  const flags = loose.flatMap((each): readonly LooseEnd[] => {
    const { wire, ends } = wires.get(each.wire)!;
    const spot = ends[each.end];
    return spot === undefined || !isNamed(setup, wire.id) ? [] : [flagSeen(setup, wire, each, spot)];
  });
  return { ways, loose: flags };
}

/** What was set for a page last, and the room that it was set in as it was before. */
interface WordMemory {
  readonly drawn: SheetMemory;
  readonly room: SheetRoom;
  readonly own: OwnWordMemory | null;
  readonly terminals: TerminalMemory;
  readonly names: NameMemory;
}

/**
 * Sets the words of a page round all that is drawn; seen from afar round what has words, for the rest is faint. What is
 * left of the words set last is taken from them.
 */
function setWords(
  whole: SheetSetup,
  { ways, loose }: Laid,
  before: WordMemory | null,
): { readonly layout: SheetLayout; readonly memory: WordMemory } {
  const plain = namedOf(whole);
  const wires = layWires(plain, ways).filter(({ wire }) => isNamed(plain, wire.id));
  const base = symbolRoom(plain);
  for (const { box } of loose) base.take(box, 0.3);
  const inked = plain.sight.isScreen
    ? { ink: symbolRoom(plain, WITHIN_SYMBOL), written: new SheetRoom(plain.area.outer) }
    : null;
  takeWires(plain, wires, [
    [base, FROM_WIRE],
    ...(inked
      ? ([
          [inked.ink, FROM_WIRE],
          [inked.written, LINE_FROM_WIRE],
        ] as const)
      : []),
  ]);
  const own = inked && setOwnWords(plain, inked, before?.own ?? null);
  const setup = own ? withOwnWords(plain, own.words) : plain;
  const words = own ? [...own.words.values()].flatMap(({ set }) => set) : [];
  for (const word of words) base.take(boundsOf(word), FROM_SYMBOL);
  const room = base.copy();
  const place = { room, differs: before && base.differences(before.room) };
  const said: ReadonlyMap<PartId, OwnWords> = own?.words ?? new Map();
  const terminals = terminalMarks(setup, place, said, before?.terminals ?? null);
  const { names, memory } = nameMarks(setup, place, said, before?.names ?? null);
  const drawn = before?.drawn ?? new SheetMemory();
  const written = new SheetRoom(plain.area.frame);
  for (const mark of [...words, ...terminals.marks, ...[...names.values()].flat()]) written.take(boundsOf(mark));
  return {
    layout: { ways, loose, words, names, terminals: terminals.marks, room, written, memory: drawn },
    memory: { drawn, room: base, own: own?.memory ?? null, terminals: terminals.memory, names: memory },
  };
}

/** Takes the lines of all wires and their dots in rooms, the lines with the margin of each. */
function takeWires(
  setup: SheetSetup,
  wires: readonly SheetWire[],
  rooms: readonly (readonly [SheetRoom, GridUnits])[],
): void {
  const lines = lineMarks(setup, wires).flatMap(inkBoxes);
  const dots = dotMarks(wires).map(boundsOf);
  for (const [room, margin] of rooms) {
    for (const box of lines) room.take(box, margin);
    for (const box of dots) room.take(box, 0.1);
  }
}

/** The rooms for the words of symbols as they were before any was set, and what was set in them. */
interface OwnWordMemory {
  readonly rooms: OwnWordRooms;
  readonly steps: ReadonlyMap<PartId, Step<OwnWords>>;
}

/** The words of symbols that have room among their marks, and those that have none, by part. */
function setOwnWords(setup: SheetSetup, rooms: OwnWordRooms, before: OwnWordMemory | null) {
  const written = rooms.written.copy();
  const steps = new Steps<OwnWords>(
    [
      { room: rooms.ink, differs: before && rooms.ink.differences(before.rooms.ink) },
      { room: written, differs: before && rooms.written.differences(before.rooms.written) },
    ],
    before?.steps ?? null,
    setup.parts.map(({ part }) => part.id),
  );
  const words = new Map(
    setup.parts.map((part) => {
      const { id } = part.part;
      return [id, steps.set(id, [part.placed], () => ownWords(setup, part, { ink: rooms.ink, written }))] as const;
    }),
  );
  return { words, memory: { rooms, steps: steps.done() } };
}

/** The parts with the words that are set in their symbols. */
function withOwnWords(setup: SheetSetup, words: ReadonlyMap<PartId, OwnWords>): SheetSetup {
  const parts = setup.parts.map((part): SheetPart => {
    const { set } = words.get(part.part.id)!;
    return set.length === 0 ? part : { ...part, shape: { ...part.shape, marks: [...part.shape.marks, ...set] } };
  });
  return { ...setup, parts };
}

/** How the wires of a page were laid last, and the room of its flags and terminals as it was before any was named. */
interface LaidMemory {
  readonly routes: RouteMemory;
  readonly room: SheetRoom;
  readonly terminals: TerminalMemory;
}

/** Routes the wires round symbols and flags, off the words beside terminals; one without a way becomes two loose ends. */
export function routed(
  setup: SheetSetup,
  before: LaidMemory | null = null,
): {
  readonly routes: ReadonlyMap<WireId, readonly Spot[]>;
  readonly loose: readonly LooseEnd[];
  readonly memory: LaidMemory;
} {
  const base = symbolRoom(setup);
  for (const spot of wiredSpots(setup)) base.take(exitBox(spot), 0.1);
  const loose: LooseEnd[] = [...looseEnds(setup, base)];
  const room = base.copy();
  const place = { room, differs: before && base.differences(before.room) };
  const terminals = terminalMarks(setup, place, new Map(), before?.terminals ?? null);
  const symbolWords = setup.parts.flatMap(({ shape }) => shape.marks).filter(({ mark }) => mark === "text");
  const words = [...symbolWords, ...terminals.marks].map(boundsOf);
  const flags = loose.map(({ box }) => box);
  const { corners: routes, memory } = sheetRoutes(setup, flags, words, before?.routes);
  for (const { wire, ends } of setup.wires) {
    const [from, to] = ends;
    if (from === undefined || to === undefined || (routes.get(wire.id)?.length ?? 0) > 1) continue;
    loose.push(looseEnd(setup, room, wire, 0, from), looseEnd(setup, room, wire, 1, to));
  }
  return { routes, loose, memory: { routes: memory, room: base, terminals: terminals.memory } };
}

function waysOf(
  { wires }: SheetSetup,
  routes: ReadonlyMap<WireId, readonly Spot[]>,
  loose: readonly LooseEnd[],
): readonly WireWay[] {
  return wires.flatMap(({ wire }): readonly WireWay[] => {
    const corners = routes.get(wire.id);
    if (corners !== undefined && corners.length > 1) return [{ wire, corners }];
    return loose
      .filter((each) => each.wire === wire.id)
      .map(({ end, corners: [spot, tip] }) => ({ wire, end, corners: end === 0 ? [spot, tip] : [tip, spot] }));
  });
}

/** A room that holds the symbols: all of each at rest, and its blades wherever they may lie. */
function symbolRoom({ area, parts, sight }: SheetSetup, margin = FROM_SYMBOL): SheetRoom {
  const { left, top, right, bottom } = sight.isScreen ? area.outer : area.drawing;
  const room = new SheetRoom({ left: left + 0.8, top: top + 0.8, right: right - 0.8, bottom: bottom - 0.8 });
  for (const part of parts) {
    room.takeAll(inkOf(part.shape), margin);
    room.takeAll(bladesOf(part), margin);
  }
  return room;
}

/** Edges of the boxes round the ink of a symbol. */
const inkOf = remember((shape: PlacedShape) => edgesOf(shape.marks));

const bladesKept = new WeakMap<SheetPart["placed"], readonly GridUnits[]>();

/** The same for the blades of a part in every pose but its rest. */
function bladesOf({ placed, blades }: SheetPart): readonly GridUnits[] {
  const known = bladesKept.get(placed);
  if (known !== undefined) return known;
  const made = edgesOf(blades());
  bladesKept.set(placed, made);
  return made;
}

function edgesOf(marks: readonly Mark[]): readonly GridUnits[] {
  return marks.flatMap(inkBoxes).flatMap(({ left, top, right, bottom }) => [left, top, right, bottom]);
}

function wiredSpots({ wires }: SheetSetup): readonly TerminalSpot[] {
  return wires.flatMap(({ ends }) => ends.filter((spot) => spot !== undefined));
}

/** The first units of a wire before its terminal, which names must leave free. */
function exitBox({ x, y, side }: TerminalSpot) {
  const reach = 2.5;
  return {
    left: side === "left" ? x - reach : x - 0.3,
    right: side === "right" ? x + reach : x + 0.3,
    top: side === "up" ? y - reach : y - 0.3,
    bottom: side === "down" ? y + reach : y + 0.3,
  };
}
