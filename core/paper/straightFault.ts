import type { Millimetres, Share } from "../base/units.ts";
import { STRAIGHT_WORDS as WORDS } from "../base/words/straight.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { chassisMarks } from "../drawing/glyph.ts";
import type { Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import type { Branch, BranchRow } from "../live/branch.ts";
import type { Fault } from "../live/fault.ts";
import { kindOf } from "../parts/catalogue.ts";
import { outline, ring, solidBox, stroke } from "./cell.ts";
import type { RowBand } from "./straightBand.ts";
import { glyphAt, middleLine, stateLine } from "./straightMarks.ts";
import { AT, STRAIGHT_TYPE as TYPE } from "./straightSize.ts";
import { rowVolts } from "./straightWords.ts";

const BOX: { readonly width: Millimetres; readonly height: Millimetres } = { width: 2.4, height: 5 };
const GAP: Millimetres = 1.1;
/** Less than this share of the good current is none. */
const LEAST_SHARE: Share = 0.001;

/** What the side of a fault is drawn with. */
export interface FaultSetting {
  readonly circuit: Circuit;
  readonly faults: readonly Fault[];
  /** The branch with the faults; null where none is planted. */
  readonly faulty: Branch | null;
}

/** The same row with a fault: its volts and state, and a plain line at the right with the parts as boxes. */
export function faultMarks(
  setting: FaultSetting,
  { row, faulty, isSource }: RowBand,
  top: Millimetres,
  bottom: Millimetres,
): readonly Mark[] {
  if (!faulty) return [];
  const y = (top + bottom) / 2;
  const isOpen = opensAt(row, faulty) && !carries(setting.faulty, faulty);
  const half = isOpen ? GAP : 0;
  const begins = isSource || (faulty.is === "ground" && faulty.entry.point === null);
  const ends = faulty.is === "ground" && faulty.exit.point === null;
  return [
    ...(begins ? [] : stateLine(faulty.entry.state, AT.faultLine, top, y - half)),
    ...(ends
      ? chassisMarks({ x: gridUnitsOf(AT.faultLine), y: gridUnitsOf(y) })
      : stateLine(faulty.exit.state, AT.faultLine, y + half, bottom)),
    ...(isOpen ? openMarks(y, faulty.is === "wire") : partMarks(setting, faulty, y)),
    ...(faulty.is === "part" || faulty.is === "inline" ? [middleLine(faulty.name, TYPE.about, AT.faultPart, y)] : []),
    ...(faulty.is === "wire" ? voltMarks(row, faulty, y, isOpen) : []),
  ];
}

/** Where the current is cut: both ends agree in the good circuit, or lie across what does the work, and differ now. */
function opensAt(good: BranchRow, faulty: BranchRow): boolean {
  if (faulty.is === "part" && faulty.isClosed === false) return true;
  if (good.entry.state === faulty.entry.state && good.exit.state === faulty.exit.state) return false;
  return good.entry.state === good.exit.state && faulty.entry.state !== faulty.exit.state;
}

/** Whether current passes a row: the wires beside it tell. */
function carries(faulty: Branch | null, row: BranchRow): boolean {
  const lines = faulty ? [...faulty.lines, ...faulty.controls.flatMap((control) => control.lines)] : [];
  const rows = lines.find((line) => line.rows.includes(row))?.rows ?? [];
  const at = rows.indexOf(row);
  const wire = [row, rows[at - 1], rows[at + 1]].find((each) => each?.is === "wire");
  return wire?.is === "wire" && Math.abs(wire.amps) > LEAST_SHARE * wire.goodAmps;
}

/** Whether a fault sits on a row: on its part or wire, or on a pin that it passes. */
function isOn(row: BranchRow, target: string): boolean {
  const part = row.is === "wire" || row.is === "link" ? null : row.part;
  return [row.name, part, row.entry.point, row.exit.point].includes(target);
}

/** A cut, with its word at the left; on a wire at the right, where no name stands, as its volts take the left. */
function openMarks(y: Millimetres, isWire: boolean): readonly Mark[] {
  return [
    stroke("symbol", AT.faultLine - 2.6, y - GAP, AT.faultLine + 2.6, y - GAP),
    stroke("symbol", AT.faultLine - 2.6, y + GAP, AT.faultLine + 2.6, y + GAP),
    isWire
      ? middleLine(WORDS.open, TYPE.legendTitle, AT.faultPart, y)
      : middleLine(WORDS.open, TYPE.legendTitle, AT.faultLine - 3.4, y, "end"),
  ];
}

function partMarks(setting: FaultSetting, row: BranchRow, y: Millimetres): readonly Mark[] {
  const x = AT.faultLine;
  if (setting.faults.some(({ target }) => isOn(row, target))) {
    const box = { x: x - BOX.width / 2, y: y - 2, width: BOX.width, height: 4 };
    return [solidBox(box), middleLine(WORDS.here, TYPE.legendTitle, x - 2.4, y, "end")];
  }
  if (row.is === "splice") return [ring("joint", x, y, 0.7, true)];
  if (row.is !== "part" && row.is !== "inline") return [];
  const kind = kindOf(partAt(setting.circuit, row.part)?.kind ?? "");
  if (row.isLoad && kind?.role !== "control") {
    const letter = kind?.letter ?? "";
    return [
      ring("field", x, y, 2.6, true),
      ring("symbol-fine", x, y, 2.6),
      middleLine(letter, TYPE.about, x, y, "middle"),
    ];
  }
  const height = row.is === "inline" ? 3 : BOX.height;
  const box = { x: x - BOX.width / 2, y: y - height / 2, width: BOX.width, height };
  return [{ ...outline("field", box), filled: true } as Mark, outline("symbol-fine", box)];
}

/** Volts where a wire begins; where it is cut, those of its far end below. Bold where the state is another. */
function voltMarks(good: BranchRow, faulty: BranchRow, y: Millimetres, isOpen: boolean): readonly Mark[] {
  const differs = good.entry.state !== faulty.entry.state;
  const shift = isOpen ? 1.9 : 0;
  const reading = (end: BranchRow["entry"], at: Millimetres, isBold: boolean): readonly Mark[] => [
    ...glyphAt(end.state, AT.faultGlyph, at),
    middleLine(rowVolts(end.volts), isBold ? TYPE.volts : TYPE.light, AT.faultVolts, at),
  ];
  return [...reading(faulty.entry, y - shift, differs), ...(isOpen ? reading(faulty.exit, y + shift, true) : [])];
}
