import type { PartId, WireId } from "../base/ids.ts";
import { LastOfEach, remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import type { Mark, Spot, TextMark } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import type { Circuit, Page } from "./circuit.ts";
import type { TerminalSpot } from "./placeSymbol.ts";
import type { RouteMemory } from "./routeMemory.ts";
import { flagSeen, type LooseEnd, looseEnd, looseEnds } from "./sheetFlags.ts";
import { nameMarks } from "./sheetNames.ts";
import { ownWords } from "./sheetOwnWords.ts";
import { otherPoses } from "./sheetPose.ts";
import { FROM_SYMBOL, SheetRoom } from "./sheetRoom.ts";
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
import { terminalMarks } from "./sheetTerminals.ts";
import { layWires, type SheetWire, type WireWay } from "./sheetWire.ts";
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
}

/** How far words keep from the middle of wires, letters and the whole of their line. */
const FROM_WIRE: GridUnits = 0.36;
const LINE_FROM_WIRE: GridUnits = 0.12;
/** How far words of a symbol that have grown keep from its lines. */
const WITHIN_SYMBOL: GridUnits = 0.06;

/** Layouts of a circuit by page, look, and scale or zoom. */
const layoutsOf = remember((_circuit: Circuit) => new Map<string, SheetLayout>());

/** How many pages, looks and scales keep how their wires were laid last. */
const MOST_KEPT = 6;
const laidLast = new LastOfEach<RouteMemory>(MOST_KEPT);

/** The layout of a page, remembered for each circuit. At any zoom wires and flags lie as they do on paper. */
export function layoutOf(request: SheetRequest, page: Page): SheetLayout {
  const { circuit, look = "iec", printScale = 1, zoom, far } = request;
  const layouts = layoutsOf(circuit);
  const key = `${page.id} ${look} ${zoom === undefined ? printScale : `at ${zoom}`}${far ? farKey(far) : ""}`;
  const known = layouts.get(key);
  if (known !== undefined) return known;
  const plain = { circuit, page: page.id, look };
  const layout =
    zoom === undefined
      ? layOut(setUpSheet({ ...plain, printScale }, page), key)
      : layOutAgain(setUpSheet({ ...plain, zoom, ...(far && { far }) }, page), layoutOf(plain, page));
  layouts.set(key, layout);
  return layout;
}

function farKey({ pixels, named, seen }: SheetFar): string {
  return ` far ${pixels} ${named === null ? "" : [...named].join(" ")} ${Object.values(seen).join(" ")}`;
}

/** Laid from nothing, but for what is left of the wires as they were laid last under this key. */
function layOut(setup: SheetSetup, key: string): SheetLayout {
  const { routes, loose, memory } = routed(setup, laidLast.get(key));
  laidLast.set(key, memory);
  return setWords(setup, waysOf(setup, routes, loose), loose);
}

/** The layout of the same page at another sight. */
function layOutAgain(setup: SheetSetup, { ways, loose }: SheetLayout): SheetLayout {
  const wires = new Map(setup.wires.map((each) => [each.wire.id, each]));
  const flags = loose.flatMap((each): readonly LooseEnd[] => {
    const { wire, ends } = wires.get(each.wire)!;
    const spot = ends[each.end];
    return spot === undefined || !isNamed(setup, wire.id) ? [] : [flagSeen(setup, wire, each, spot)];
  });
  return setWords(setup, ways, flags);
}

/** Sets the words of a page round all that is drawn; seen from afar round what has words, for the rest is faint. */
function setWords(whole: SheetSetup, ways: readonly WireWay[], loose: readonly LooseEnd[]): SheetLayout {
  const plain = namedOf(whole);
  const wires = layWires(plain, ways).filter(({ wire }) => isNamed(plain, wire.id));
  const room = symbolRoom(plain);
  for (const { box } of loose) room.take(box, 0.3);
  takeWires(room, plain, wires, FROM_WIRE);
  const { setup, words, unset } = withOwnWords(plain, wires);
  for (const word of words) room.take(boundsOf(word), FROM_SYMBOL);
  const terminals = terminalMarks(setup, room);
  const names = nameMarks(setup, room, unset);
  const written = new SheetRoom(plain.area.frame);
  for (const mark of [...words, ...terminals, ...[...names.values()].flat()]) written.take(boundsOf(mark));
  return { ways, loose, words, names, terminals, room, written };
}

function takeWires(room: SheetRoom, setup: SheetSetup, wires: readonly SheetWire[], margin: GridUnits): void {
  for (const mark of lineMarks(setup, wires)) room.takeMark(mark, margin);
  for (const mark of dotMarks(wires)) room.take(boundsOf(mark), 0.1);
}

/** The parts with the words of their symbols that have room among their marks, and the words that have none. */
function withOwnWords(setup: SheetSetup, wires: readonly SheetWire[]) {
  if (!setup.sight.isScreen) return { setup, words: [], unset: new Map<PartId, readonly string[]>() };
  const rooms = { ink: symbolRoom(setup, WITHIN_SYMBOL), written: new SheetRoom(setup.area.outer) };
  takeWires(rooms.ink, setup, wires, FROM_WIRE);
  takeWires(rooms.written, setup, wires, LINE_FROM_WIRE);
  const found = setup.parts.map((part) => ({ part, ...ownWords(setup, part, rooms) }));
  const parts = found.map(({ part, set }): SheetPart => {
    return { ...part, shape: { ...part.shape, marks: [...part.shape.marks, ...set] } };
  });
  const unset = new Map(found.map(({ part, unset }) => [part.part.id, unset]));
  return { setup: { ...setup, parts }, words: found.flatMap(({ set }) => set), unset };
}

/** Routes the wires round symbols and flags, off the words beside terminals; one without a way becomes two loose ends. */
export function routed(
  setup: SheetSetup,
  before: RouteMemory | null = null,
): {
  readonly routes: ReadonlyMap<WireId, readonly Spot[]>;
  readonly loose: readonly LooseEnd[];
  readonly memory: RouteMemory;
} {
  const room = symbolRoom(setup);
  for (const spot of wiredSpots(setup)) room.take(exitBox(spot), 0.1);
  const loose: LooseEnd[] = [...looseEnds(setup, room)];
  const symbolWords = setup.parts.flatMap(({ shape }) => shape.marks).filter(({ mark }) => mark === "text");
  const words = [...symbolWords, ...terminalMarks(setup, room)].map(boundsOf);
  const flags = loose.map(({ box }) => box);
  const { corners: routes, memory } = sheetRoutes(setup, flags, words, before);
  for (const { wire, ends } of setup.wires) {
    const [from, to] = ends;
    if (from === undefined || to === undefined || (routes.get(wire.id)?.length ?? 0) > 1) continue;
    loose.push(looseEnd(setup, room, wire, 0, from), looseEnd(setup, room, wire, 1, to));
  }
  return { routes, loose, memory };
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
  for (const { kind, view, rest, shape, placed } of parts) {
    for (const mark of shape.marks) room.takeMark(mark, margin);
    for (const pose of otherPoses(kind, view, rest)) {
      const blades = placed(pose).marks.filter((mark) => "role" in mark && mark.role === "contact-now");
      for (const mark of blades) room.takeMark(mark, margin);
    }
  }
  return room;
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
