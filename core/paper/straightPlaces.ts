import type { Millimetres } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Mark } from "../drawing/mark.ts";
import { stroke } from "./cell.ts";
import { linesOf } from "./lines.ts";
import { middleLine } from "./straightMarks.ts";
import type { LaidSheet } from "./straightPages.ts";
import { AT, ROWS, STRAIGHT_TYPE as TYPE } from "./straightSize.ts";

/** Parts one after the other behind the same trim. */
interface Place {
  readonly access: string;
  /** Where the heading above it ends. */
  readonly ceiling: Millimetres;
  readonly top: Millimetres;
  bottom: Millimetres;
}

/** Brackets round what lies behind the same trim, with what must come off beside them. */
export function placeMarks(circuit: Circuit, sheet: LaidSheet): readonly Mark[] {
  const places = placesOn(sheet);
  return places.flatMap((place, index): readonly Mark[] => {
    const group = circuit.access.find(({ id }) => id === place.access);
    if (!group) return [];
    const middle = (place.top + place.bottom) / 2;
    const neighbours = [places[index - 1], places[index + 1]].flatMap((other) =>
      other ? [Math.abs((other.top + other.bottom) / 2 - middle)] : [],
    );
    const room = Math.max(place.bottom - place.top, Math.min(...neighbours, 40) - 0.4);
    const lines = fitting(group.label, room);
    const highest = place.ceiling + TYPE.where.line / 2;
    const first = Math.max(highest, middle - ((lines.length - 1) * TYPE.where.line) / 2);
    const [top, bottom] = [place.top + 0.5, place.bottom - 0.5];
    return [
      stroke("symbol", AT.bracket - 1.2, top, AT.bracket, top, AT.bracket, bottom, AT.bracket - 1.2, bottom),
      ...lines.map((line, at) => middleLine(line, TYPE.where, AT.where, first + at * TYPE.where.line)),
    ];
  });
}

function placesOn(sheet: LaidSheet): readonly Place[] {
  const places: Place[] = [];
  let open: Place | null = null;
  let ceiling: Millimetres = ROWS.top;
  for (const { band, top, bottom } of sheet) {
    if (band.is !== "row") {
      open = null;
      if (band.is === "heading") ceiling = bottom;
      continue;
    }
    if (band.row.is === "wire" || band.row.is === "link") continue;
    if (open && band.access === open.access) open.bottom = bottom;
    else {
      open = band.access === null ? null : { access: band.access, ceiling, top, bottom };
      if (open) places.push(open);
    }
  }
  return places;
}

/** All of the words where there is room for their lines, else their first clause, else as many lines as there is room for. */
function fitting(label: string, room: Millimetres): readonly string[] {
  const most = Math.max(1, Math.floor(room / TYPE.where.line));
  const width = AT.bracket - 2.4 - AT.where;
  const all = linesOf(label, TYPE.where, width);
  if (all.length <= most) return all;
  const clause = linesOf(label.split(/[;,]/)[0]!, TYPE.where, width);
  return clause.slice(0, most);
}
