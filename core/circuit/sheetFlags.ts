import type { WireId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import { SHEET_WORDS } from "../base/words/sheet.ts";
import type { LineMark, Mark, Spot } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import { pointsToGrid } from "../drawing/type.ts";
import type { Wire } from "./circuit.ts";
import type { TerminalSpot } from "./placeSymbol.ts";
import { whereIs } from "./sheetElsewhere.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { depth, rise, widthOf, words } from "./sheetType.ts";

/** A wire end that goes on elsewhere: a short line to a dashed flag that names the other end and where it is. */
export interface LooseEnd {
  readonly wire: WireId;
  readonly end: 0 | 1;
  readonly corners: readonly [Spot, Spot];
  readonly box: Bounds;
  readonly marks: readonly Mark[];
}

const HEIGHT: GridUnits = 1.9;
const TIP: GridUnits = 0.9;
const PAD: GridUnits = 0.5;
/** From the outline of a flag to words that fill it. */
const EDGE: GridUnits = 0.1;
const SHORTEST: GridUnits = 2;
const LONGEST: GridUnits = 14;

/** Wires with exactly one end on this page, as flags. What is set is taken in the room. */
export function looseEnds(setup: SheetSetup, room: SheetRoom): readonly LooseEnd[] {
  return setup.wires.flatMap(({ wire, ends: [from, to] }) => {
    if (from !== undefined && to === undefined) return [looseEnd(setup, room, wire, 0, from)];
    if (from === undefined && to !== undefined) return [looseEnd(setup, room, wire, 1, to)];
    return [];
  });
}

/** The flag of one end of a wire. */
export function looseEnd(setup: SheetSetup, room: SheetRoom, wire: Wire, end: 0 | 1, spot: TerminalSpot): LooseEnd {
  const type = setup.types.flag;
  const width = widthOf(flagTexts(setup, wire, end)[0], type) + 2 * PAD + TIP;
  let length = SHORTEST;
  while (length < LONGEST && !room.isFree(boxAt(spot, length, width))) length++;
  const box = boxAt(spot, length, width);
  room.take(box, 0.3);
  return {
    wire: wire.id,
    end,
    corners: [spot, stepFrom(spot, length)],
    box,
    marks: flagMarks(setup, wire, end, box, spot),
  };
}

/** The same flag with its words set for another sight: as much as its box has room for. */
export function flagSeen(setup: SheetSetup, wire: Wire, loose: LooseEnd, spot: TerminalSpot): LooseEnd {
  return { ...loose, marks: flagMarks(setup, wire, loose.end, loose.box, spot) };
}

/** What a flag says, from most to least: the point it goes on to and where that is. */
function flagTexts({ circuit }: SheetSetup, wire: Wire, end: 0 | 1): readonly [string, ...string[]] {
  const other = end === 0 ? wire.to : wire.from;
  const where = whereIs(circuit, other);
  return [`${SHEET_WORDS.to}\u00A0${other} · ${where}`, where];
}

function flagMarks(setup: SheetSetup, wire: Wire, end: 0 | 1, box: Bounds, spot: TerminalSpot): readonly Mark[] {
  const type = setup.types.flag;
  const text = flagTexts(setup, wire, end).find((each) => fits(setup, each, box));
  const middle = (box.left + box.right) / 2 + (spot.side === "left" ? -TIP / 2 : spot.side === "right" ? TIP / 2 : 0);
  const up = rise(type.points) / 2;
  const drop = setup.sight.isScreen ? Math.min(up, HEIGHT / 2 - EDGE - depth(type.points)) : up;
  const at = { x: middle, y: (box.top + box.bottom) / 2 + drop };
  return [outline(box, spot, wire.id), ...(text === undefined ? [] : [words(text, at, type, "middle", wire.id)])];
}

/** On paper a flag is as wide as its words; on a screen they have grown, and must lie in it. */
function fits({ sight, types: { flag } }: SheetSetup, text: string, box: Bounds): boolean {
  if (!sight.isScreen) return true;
  const isLow = pointsToGrid(flag.points) <= HEIGHT - 2 * EDGE;
  return sight.hasWords && isLow && widthOf(text, flag) <= box.right - box.left - TIP;
}

function stepFrom({ x, y, side }: TerminalSpot, length: GridUnits): Spot {
  if (side === "up") return { x, y: y - length };
  if (side === "down") return { x, y: y + length };
  return { x: side === "left" ? x - length : x + length, y };
}

function boxAt(spot: TerminalSpot, length: GridUnits, width: GridUnits): Bounds {
  const { x, y } = stepFrom(spot, length);
  if (spot.side === "right") return { left: x, top: y - HEIGHT / 2, right: x + width, bottom: y + HEIGHT / 2 };
  if (spot.side === "left") return { left: x - width, top: y - HEIGHT / 2, right: x, bottom: y + HEIGHT / 2 };
  const top = spot.side === "up" ? y - HEIGHT : y;
  return { left: x - width / 2, top, right: x + width / 2, bottom: top + HEIGHT };
}

/** Dashed, with a point towards the wire where that comes from the side. */
function outline({ left, top, right, bottom }: Bounds, { side }: TerminalSpot, of: string): LineMark {
  const middle = (top + bottom) / 2;
  const corner = (x: number, y: number): Spot => ({ x, y });
  const spots =
    side === "right"
      ? [
          corner(left, middle),
          corner(left + TIP, top),
          corner(right, top),
          corner(right, bottom),
          corner(left + TIP, bottom),
        ]
      : side === "left"
        ? [
            corner(right, middle),
            corner(right - TIP, bottom),
            corner(left, bottom),
            corner(left, top),
            corner(right - TIP, top),
          ]
        : [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)];
  return { mark: "line", spots, role: "link", closed: true, of };
}
