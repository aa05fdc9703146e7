import type { WireId } from "../base/ids.ts";
import type { Outcome } from "../base/outcome.ts";
import { ok, refuse } from "../base/outcome.ts";
import type { Drawing, Mark, Spot } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import type { TerminalSpot } from "./placeSymbol.ts";
import { type LooseEnd, looseEnd, looseEnds } from "./sheetFlags.ts";
import { bannerMarks, frameMarks } from "./sheetFrame.ts";
import { legendMarks } from "./sheetLegend.ts";
import { symbolMarks } from "./sheetLeads.ts";
import { nameMarks } from "./sheetNames.ts";
import { SheetRoom } from "./sheetRoom.ts";
import { sheetRoutes } from "./sheetRoutes.ts";
import { type SheetRequest, type SheetSetup, setUpSheet } from "./sheetSetup.ts";
import { tagMarks } from "./sheetTags.ts";
import { terminalMarks } from "./sheetTerminals.ts";
import { titleMarks } from "./sheetTitle.ts";
import { leastPoints } from "./sheetType.ts";
import { layWires, type WireWay } from "./sheetWire.ts";
import { currentMarks, dotMarks, lineMarks } from "./sheetWireMarks.ts";

export type { SheetLive, SheetPartLive, SheetRequest, SheetWireLive } from "./sheetSetup.ts";

/** Words keep this far from lines of symbols and from the middle of wires. */
const FROM_SYMBOL = 0.18;
const FROM_WIRE = 0.5;

/**
 * A page of a circuit as marks: symbols as they stand, wires routed and in their states, names, tags, loose ends and,
 * unless left out, frame, banner, legend and title block. Refuses `page-unknown`.
 */
export function sheetOf(request: SheetRequest): Outcome<Drawing> {
  const { circuit, framed = true, printScale = 1 } = request;
  const page = circuit.pages.find(({ id }) => id === request.page);
  if (page === undefined) return refuse("page-unknown", { page: request.page });
  const setup = setUpSheet(request, page);
  const drawn = drawingMarks(setup).map((mark) => legible(mark, printScale));
  const number = circuit.pages.indexOf(page) + 1;
  const { sheet = [number, circuit.pages.length], code = "" } = request;
  const frame = framed
    ? [
        ...frameMarks(setup.area, printScale),
        ...bannerMarks(setup, printScale),
        ...legendMarks(setup, printScale),
        ...titleMarks(setup, { sheet, code, printScale }),
      ]
    : [];
  const { width, height } = setup.area;
  return ok({ width, height, marks: [...frame, ...drawn], title: `${circuit.title}: ${page.title}` });
}

/** Bodies lie under the wires, all else of the symbols over them, and tags over everything. */
function drawingMarks(setup: SheetSetup): readonly Mark[] {
  const symbols = setup.parts.flatMap((part) => symbolMarks(setup, part));
  const { routes, loose } = layOut(setup, symbols);
  const room = roomWith(setup, symbols);
  for (const { box } of loose) room.take(box, 0.2);
  const wires = layWires(setup, waysOf(setup, routes, loose));
  const lines = lineMarks(setup, wires);
  const dots = dotMarks(wires);
  for (const mark of lines) room.takeMark(mark, FROM_WIRE);
  for (const mark of dots) room.take(boundsOf(mark), 0.1);
  const names = [...terminalMarks(setup, room), ...nameMarks(setup, room)];
  const isBody = (mark: Mark) => "role" in mark && mark.role === "body";
  return [
    ...symbols.filter(isBody),
    ...lines,
    ...dots,
    ...currentMarks(wires),
    ...symbols.filter((mark) => !isBody(mark)),
    ...loose.flatMap(({ marks }) => marks),
    ...names,
    ...tagMarks(setup, wires, room),
  ];
}

function waysOf({ circuit }: SheetSetup, routes: ReadonlyMap<WireId, readonly Spot[]>, loose: readonly LooseEnd[]): readonly WireWay[] {
  return circuit.wires.flatMap((wire): readonly WireWay[] => {
    const corners = routes.get(wire.id);
    if (corners !== undefined && corners.length > 1) return [{ wire, corners }];
    return loose
      .filter((each) => each.wire === wire.id)
      .map(({ end, corners: [spot, tip] }) => ({ wire, end, corners: end === 0 ? [spot, tip] : [tip, spot] }));
  });
}

/** Routes the wires round symbols and flags, off the words beside terminals; one without a way becomes two loose ends. */
function layOut(setup: SheetSetup, symbols: readonly Mark[]) {
  const room = roomWith(setup, symbols);
  for (const spot of wiredSpots(setup)) room.take(exitBox(spot), 0.1);
  const loose: LooseEnd[] = [...looseEnds(setup, room)];
  const ownWords = symbols.filter(({ mark }) => mark === "text");
  const words = [...ownWords, ...terminalMarks(setup, room)].map(boundsOf);
  const routes: ReadonlyMap<WireId, readonly Spot[]> = sheetRoutes(setup, loose.map(({ box }) => box), words);
  for (const wire of setup.circuit.wires) {
    const from = setup.spots.get(wire.from);
    const to = setup.spots.get(wire.to);
    if (from === undefined || to === undefined || routes.has(wire.id)) continue;
    loose.push(looseEnd(setup, room, wire, 0, from), looseEnd(setup, room, wire, 1, to));
  }
  return { routes, loose };
}

function roomWith({ area }: SheetSetup, symbols: readonly Mark[]): SheetRoom {
  const { left, top, right, bottom } = area.drawing;
  const room = new SheetRoom({ left: left + 0.8, top: top + 0.8, right: right - 0.8, bottom: bottom - 0.8 });
  for (const mark of symbols) room.takeMark(mark, FROM_SYMBOL);
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

function legible(mark: Mark, printScale: number): Mark {
  return mark.mark === "text" ? { ...mark, points: leastPoints(mark.points, printScale) } : mark;
}
