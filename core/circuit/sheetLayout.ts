import type { PartId, WireId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Mark, Spot, TextMark } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import type { Circuit, Page } from "./circuit.ts";
import { placeSymbol, type TerminalSpot } from "./placeSymbol.ts";
import { type LooseEnd, looseEnd, looseEnds } from "./sheetFlags.ts";
import { nameMarks } from "./sheetNames.ts";
import { posesOf } from "./sheetPose.ts";
import { SheetRoom } from "./sheetRoom.ts";
import { sheetRoutes } from "./sheetRoutes.ts";
import { type SheetRequest, type SheetSetup, setUpSheet } from "./sheetSetup.ts";
import { terminalMarks } from "./sheetTerminals.ts";
import { layWires, type WireWay } from "./sheetWire.ts";
import { dotMarks, lineMarks } from "./sheetWireMarks.ts";

/** What of a sheet is the same however its parts stand, so that nothing moves when a switch is thrown. */
export interface SheetLayout {
  readonly ways: readonly WireWay[];
  readonly names: ReadonlyMap<PartId, readonly TextMark[]>;
  readonly terminals: readonly Mark[];
  /** Flags of wires that go on elsewhere. */
  readonly flags: readonly Mark[];
  /** What all this takes, symbols in every pose included. */
  readonly room: SheetRoom;
}

/** Words keep this far from lines of symbols and from the middle of wires. */
export const FROM_SYMBOL = 0.18;
const FROM_WIRE = 0.36;

/** Layouts of a circuit by page, look and scale. */
const layoutsOf = remember((_circuit: Circuit) => new Map<string, SheetLayout>());

/** The layout of a page, remembered for each circuit. */
export function layoutOf(request: SheetRequest, page: Page): SheetLayout {
  const { circuit, look = "iec", printScale = 1 } = request;
  const layouts = layoutsOf(circuit);
  const key = `${page.id} ${look} ${printScale}`;
  const known = layouts.get(key);
  if (known !== undefined) return known;
  const layout = layOut(setUpSheet({ circuit, page: page.id, look, printScale }, page));
  layouts.set(key, layout);
  return layout;
}

function layOut(setup: SheetSetup): SheetLayout {
  const { routes, loose } = routed(setup);
  const ways = waysOf(setup, routes, loose);
  const wires = layWires(setup, ways);
  const room = symbolRoom(setup);
  for (const { box } of loose) room.take(box, 0.2);
  for (const mark of lineMarks(setup, wires)) room.takeMark(mark, FROM_WIRE);
  for (const mark of dotMarks(wires)) room.take(boundsOf(mark), 0.1);
  const terminals = terminalMarks(setup, room);
  const names = nameMarks(setup, room);
  return { ways, names, terminals, flags: loose.flatMap(({ marks }) => marks), room };
}

/** Routes the wires round symbols and flags, off the words beside terminals; one without a way becomes two loose ends. */
function routed(setup: SheetSetup) {
  const room = symbolRoom(setup);
  for (const spot of wiredSpots(setup)) room.take(exitBox(spot), 0.1);
  const loose: LooseEnd[] = [...looseEnds(setup, room)];
  const ownWords = setup.parts.flatMap(({ shape }) => shape.marks).filter(({ mark }) => mark === "text");
  const words = [...ownWords, ...terminalMarks(setup, room)].map(boundsOf);
  const flags = loose.map(({ box }) => box);
  const routes: ReadonlyMap<WireId, readonly Spot[]> = sheetRoutes(setup, flags, words);
  for (const wire of setup.circuit.wires) {
    const from = setup.spots.get(wire.from);
    const to = setup.spots.get(wire.to);
    if (from === undefined || to === undefined || routes.has(wire.id)) continue;
    loose.push(looseEnd(setup, room, wire, 0, from), looseEnd(setup, room, wire, 1, to));
  }
  return { routes, loose };
}

function waysOf(
  { circuit }: SheetSetup,
  routes: ReadonlyMap<WireId, readonly Spot[]>,
  loose: readonly LooseEnd[],
): readonly WireWay[] {
  return circuit.wires.flatMap((wire): readonly WireWay[] => {
    const corners = routes.get(wire.id);
    if (corners !== undefined && corners.length > 1) return [{ wire, corners }];
    return loose
      .filter((each) => each.wire === wire.id)
      .map(({ end, corners: [spot, tip] }) => ({ wire, end, corners: end === 0 ? [spot, tip] : [tip, spot] }));
  });
}

/** A room that holds the symbols: all of each at rest, and its blades wherever they may lie. */
function symbolRoom({ area, parts, look, circuit }: SheetSetup): SheetRoom {
  const { left, top, right, bottom } = area.drawing;
  const room = new SheetRoom({ left: left + 0.8, top: top + 0.8, right: right - 0.8, bottom: bottom - 0.8 });
  for (const { part, kind, view, shape } of parts) {
    for (const mark of shape.marks) room.takeMark(mark, FROM_SYMBOL);
    const place = circuit.placement.parts[part.id]!;
    for (const pose of posesOf(kind, view).slice(1)) {
      const { marks } = placeSymbol(kind.symbol(view, pose, look), place);
      const blades = marks.filter((mark) => "role" in mark && mark.role === "contact-now");
      for (const mark of blades) room.takeMark(mark, FROM_SYMBOL);
    }
  }
  return room;
}

function wiredSpots({ circuit, spots }: SheetSetup): readonly TerminalSpot[] {
  return circuit.wires.flatMap(({ from, to }) => [from, to]).flatMap((end) => spots.get(end) ?? []);
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
