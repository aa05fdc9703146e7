import type { Millimetres, Volts } from "../base/units.ts";
import { STRAIGHT_WORDS as WORDS } from "../base/words/straight.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { chassisMarks } from "../drawing/glyph.ts";
import type { Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import type { BranchPart, BranchRow, BranchWire } from "../live/branch.ts";
import { plusBattery, referenceBattery } from "../live/network.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Look } from "../parts/kind.ts";
import { outline, ring, stroke } from "./cell.ts";
import { colourPiece } from "./colourSample.ts";
import { linesOf, widthMm } from "./lines.ts";
import { plainNumber } from "./range.ts";
import type { EndBand, HeadingBand, RowBand } from "./straightBand.ts";
import { coilMarks } from "./straightCoil.ts";
import { chevronAt, glyphAt, middleLine, shifted, stateLine } from "./straightMarks.ts";
import { AT, STRAIGHT_TYPE as TYPE } from "./straightSize.ts";
import { straightSymbol } from "./straightSymbol.ts";
import { aboutPart, aboutRow, endText, placeWords, rowVolts, tapText } from "./straightWords.ts";
import { rowZone } from "./straightZone.ts";

/** What every row is drawn with. */
export interface RowSetting {
  readonly circuit: Circuit;
  readonly look: Look;
  readonly restVolts: Volts;
  /** Whether a branch with a fault stands at the right, which takes room. */
  readonly hasFault: boolean;
}

/** A row between two heights: designator, line, what it is, volts. */
export function rowMarks(setting: RowSetting, band: RowBand, top: Millimetres, bottom: Millimetres): readonly Mark[] {
  const { row } = band;
  const taps = row.taps.length === 0 ? [] : tapMarks(row.is === "wire", tapText(setting.circuit, row.taps), bottom);
  if (row.is === "wire") return [...wireMarks(setting, row, top, bottom), ...taps];
  const y = (top + bottom) / 2;
  const { circuit, look } = setting;
  const { isSource } = band;
  const symbol = straightSymbol(circuit, row, look);
  const isInto = row.is === "ground" && row.exit.point === null;
  const isOutOf = row.is === "ground" && row.entry.point === null;
  const above = isOutOf || isSource ? [] : stateLine(row.entry.state, AT.line, top, y + symbol.top);
  const below = isInto ? [] : stateLine(row.exit.state, AT.line, y + symbol.bottom, bottom);
  return [
    ...above,
    ...below,
    ...zoneMarks(setting, row, y),
    ...(isSource ? sourceMarks(band, y + symbol.top) : []),
    ...shifted(symbol.marks, AT.line, y),
    ...(symbol.sign === "" ? [] : [middleLine(symbol.sign, TYPE.sign, AT.line, y, "middle")]),
    ...(row.is === "link" ? linkMarks(row.name, y) : partMarks(setting, band, row, symbol, y)),
    ...taps,
  ];
}

// ---------------------------------------------------------------- wires

function wireMarks(setting: RowSetting, row: BranchWire, top: Millimetres, bottom: Millimetres): readonly Mark[] {
  const { circuit } = setting;
  const y = (top + bottom) / 2;
  const wire = circuit.wires.find(({ id }) => id === row.wire);
  const colour = colourPiece(circuit, wire?.colour ?? null, AT.mm2 - AT.what - 1);
  return [
    ...stateLine(row.entry.state, AT.line, top, bottom),
    ...(row.goodAmps > 0 ? chevronAt(row.entry.state, AT.line, y) : []),
    middleLine(row.wire, TYPE.joint, AT.end, y),
    ...colour.at(AT.what, y - colour.height / 2),
    ...(wire?.mm2 === undefined ? [] : [middleLine(plainNumber(wire.mm2), TYPE.mm2, AT.mm2 + 3, y, "end")]),
    ...glyphAt(row.entry.state, AT.glyph, y),
    middleLine(rowVolts(row.entry.goodVolts), TYPE.volts, AT.volts, y),
    ...(setting.hasFault ? [] : [stroke("rule-fine", AT.read, y + 1.7, AT.read + READ_WIDTH, y + 1.7)]),
    ...zoneMarks(setting, row, y),
  ];
}

/** Length of the line on which a reading is written. */
const READ_WIDTH: Millimetres = 18;

/** Where a row stands on the drawing, where no fault takes the room. */
function zoneMarks({ circuit, hasFault }: RowSetting, row: BranchRow, y: Millimetres): readonly Mark[] {
  const zone = hasFault ? "" : rowZone(circuit, row);
  return zone === "" ? [] : [middleLine(zone, TYPE.about, AT.zone, y)];
}

// ---------------------------------------------------------------- parts

function partMarks(
  setting: RowSetting,
  band: RowBand,
  row: BranchPart,
  symbol: { readonly top: Millimetres; readonly bottom: Millimetres },
  y: Millimetres,
): readonly Mark[] {
  const { circuit } = setting;
  if (row.is === "splice") return [middleLine(row.name, TYPE.joint, AT.end, y)];
  return [
    middleLine(row.name, TYPE.designator, AT.part, y),
    ...endMarks(circuit, row, symbol, y),
    ...coilMarks(band, y),
    ...aboutMarks(setting, nameOf(circuit, row), detailOf(setting, band, row), y),
  ];
}

function nameOf(circuit: Circuit, row: BranchPart): string {
  const about = aboutPart(circuit, row.part);
  if (row.is !== "ground") return about;
  return row.exit.point === null ? (about === "Ground point" ? WORDS.ground : about) : about;
}

function detailOf(setting: RowSetting, band: RowBand, row: BranchPart): string {
  const { circuit } = setting;
  if (row.is === "ground" && row.exit.point === null) {
    const way = band.back.map((each) => each.name);
    return way.length === 0 ? "" : WORDS.bodyTo([...way, backTo(circuit, band)].join(", "));
  }
  if (band.isSource && row.part === plusBattery(circuit)?.id) return WORDS.atRest(setting.restVolts.toFixed(1));
  return aboutRow(circuit, band);
}

/** Where the way back ends: battery −, or the source that the current came from. */
function backTo(circuit: Circuit, { back }: RowBand): string {
  const point = back.at(-1)?.exit.point ?? "";
  const source = circuit.parts.find(({ id }) => point.startsWith(`${id}.`));
  return source && source !== referenceBattery(circuit) ? source.id : WORDS.toBattery;
}

/** Name above, detail below; one line where there is no detail. Cut into lines where it is too long. */
function aboutMarks({ hasFault }: RowSetting, name: string, detail: string, y: Millimetres): readonly Mark[] {
  const room = (hasFault ? AT.divider : AT.zone) - AT.what - 1;
  const [first = ""] = linesOf(name, TYPE.name, room);
  if (detail === "") return [middleLine(first, TYPE.name, AT.what, y)];
  const [second = ""] = linesOf(detail, TYPE.about, room);
  const half = (TYPE.name.line + TYPE.about.line) / 4;
  return [
    middleLine(first, TYPE.name, AT.what, y - half + 0.1),
    middleLine(second, TYPE.about, AT.what, y + half + 0.2),
  ];
}

/** Names of the terminals at the ends of a symbol, and the ghost's. */
function endMarks(
  circuit: Circuit,
  row: BranchPart,
  { top, bottom }: { readonly top: Millimetres; readonly bottom: Millimetres },
  y: Millimetres,
): readonly Mark[] {
  if (row.is !== "part") return [];
  const ends = [endText(row, 0), endText(row, 1)] as const;
  // Either blade of a fuse will do; all else has its numbers.
  const isFuse = kindOf(partAt(circuit, row.part)?.kind ?? "")?.role === "protection";
  if (isFuse && !ends.some((text) => text.includes("-"))) return [];
  const rest =
    row.restTerminal === null
      ? []
      : [ring("terminal", AT.line + 3, y - 1.2, 0.6), middleLine(row.restTerminal, TYPE.end, AT.line + 4.2, y - 1.2)];
  const [up, down] = [Math.min(top + 0.2, -1.9), Math.max(bottom - 0.2, 1.9)];
  const x = AT.line + (row.contacts.length > 0 ? 1.6 : 3.6);
  const upper =
    row.restTerminal === null
      ? [middleLine(ends[0], TYPE.end, x, y + up)]
      : [middleLine(ends[0], TYPE.end, AT.line - 1.6, y + up, "end")];
  return [...upper, middleLine(ends[1], TYPE.end, x, y + down), ...rest];
}

/** The battery's way from the body: ground point, chassis sign and strap to its upper post. */
function sourceMarks(band: RowBand, top: Millimetres): readonly Mark[] {
  const up = top - 2;
  const [ground] = band.back;
  if (!ground) return [stroke("wire-grounded", AT.line, up - 0.4, AT.line, top)];
  const x = AT.line - 9;
  return [
    stroke("wire-grounded", AT.line, top, AT.line, up, x, up, x, up + 1.6),
    ...chassisMarks({ x: gridUnitsOf(x), y: gridUnitsOf(up + 1.6) }),
    middleLine(ground.name, TYPE.end, x - 3.4, up + 2, "end"),
  ];
}

// ---------------------------------------------------------------- joints

function linkMarks(name: string, y: Millimetres): readonly Mark[] {
  return [middleLine(WORDS.pageLink(name), TYPE.about, AT.what, y)];
}

/** A stub to the left of the line with what hangs on it, at the boundary below a row. */
function tapMarks(isAboveBoundary: boolean, words: string, bottom: Millimetres): readonly Mark[] {
  const y = bottom + (isAboveBoundary ? -1 : 1);
  const from = AT.line - 7;
  const room = from - AT.part - 0.8;
  const lines = linesOf(words, TYPE.tap, room);
  const first = y - ((lines.length - 1) * TYPE.tap.line) / 2;
  return [
    stroke("symbol", from, y, AT.line, y),
    ring("joint", AT.line, y, 0.8, true),
    ...lines.map((line, index) => middleLine(line, TYPE.tap, from - 0.8, first + index * TYPE.tap.line, "end")),
  ];
}

// ---------------------------------------------------------------- ends and headings

/** Where a line begins or ends: its name beside it; a letter in a box where it goes over to another sheet. */
export function endMarksOf(band: EndBand, top: Millimetres, bottom: Millimetres): readonly Mark[] {
  const y = (top + bottom) / 2;
  const side = 4;
  if (band.letter === "") {
    const word = `${band.isStart ? WORDS.from : WORDS.to} ${placeWords(band.words)}`;
    return [middleLine(word, TYPE.about, AT.end, y), ring("joint", AT.line, band.isStart ? bottom : top, 0.8, true)];
  }
  return [
    outline("place", { x: AT.line - side / 2, y: y - side / 2, width: side, height: side }, 0.8),
    middleLine(band.letter, TYPE.name, AT.line, y, "middle"),
    middleLine(band.words, TYPE.about, AT.end, y),
  ];
}

/** The heading of a line that is not the first, over a fine rule. */
export function headingMarks(band: HeadingBand, bottom: Millimetres): readonly Mark[] {
  const y = bottom - 3.4;
  const width = widthMm(band.words, TYPE.heading);
  return [
    middleLine(band.words, TYPE.heading, AT.where, y),
    ...(band.note === "" ? [] : [middleLine(band.note, TYPE.about, AT.where + width + 2.4, y)]),
    stroke("rule-fine", AT.where, bottom - 0.8, AT.right, bottom - 0.8),
  ];
}
