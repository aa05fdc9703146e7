import { figure } from "../base/figure.ts";
import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { printedPosition } from "../circuit/positionWords.ts";
import type { BranchLine, BranchRow, Goes } from "../diagnose/branchTable.ts";
import { ohmsText } from "../diagnose/figureText.ts";
import { isBySense, type Step, type Unit, type Window } from "../diagnose/step.ts";
import type { Mark } from "../drawing/mark.ts";
import { outline, solidBox } from "./cell.ts";
import { expectPiece } from "./expectCell.ts";
import { readingPiece } from "./fields.ts";
import { type Block, type GridCell, glued, gridRow, roomIn } from "./grid.ts";
import { lineMark, paragraph } from "./lines.ts";
import { type Piece, stack } from "./piece.ts";
import { plainNumber, unitSign } from "./range.ts";
import { cautionStrip, numberCell, probeCell, type RowSetting, rowCell, sided } from "./row.ts";
import { setPiece, sweepSetPiece } from "./setCell.ts";
import { TYPE } from "./sizes.ts";
import { sweepPiece } from "./sweepCell.ts";

/** Widths of the columns of a branch sheet; together the width of the sheet. */
export const BRANCH_COLUMNS = {
  row: 13,
  probe: 55.5,
  set: 25,
  expect: 30,
  reading: 29,
  go: 33.5,
} as const satisfies Readonly<Record<string, Millimetres>>;

const ROW: Millimetres = 24;
const SWEEP_ROW: Millimetres = 36;
const BOX: { readonly width: Millimetres; readonly height: Millimetres } = { width: 8.5, height: 6.2 };
const GO_PAD: Millimetres = 1;

/** A row with its lines: what was read, and where to go. */
export function branchRow(setting: RowSetting, { step, lines }: BranchRow): Block {
  const { circuit, restVolts, matters, told } = setting;
  const own = step.cautions.filter((caution) => !told.has(caution));
  const { row, probe, set, expect, reading, go } = BRANCH_COLUMNS;
  const front = [numberCell(step.number, false, row), probeCell(circuit, step, probe)];
  const middle: readonly GridCell[] =
    step.sweepOf === null
      ? [
          rowCell("set", set, setPiece(circuit, step, matters, roomIn(set, 1))),
          rowCell("expect", expect, expectPiece(step, restVolts, roomIn(expect, 1))),
          { name: "reading", width: reading, padX: 1, padY: 1, piece: readingOf(step) },
        ]
      : [
          rowCell("set", set, sweepSetPiece(circuit, step, step.settings, matters, roomIn(set, 1))),
          { name: "sweep", width: expect + reading, padX: 0, padY: 0, piece: sweepPiece(step.settings) },
        ];
  const last = { name: "go", width: go, padX: GO_PAD, padY: 0.8, piece: linesPiece(step, lines) };
  const block = gridRow(step.sweepOf === null ? ROW : SWEEP_ROW, [...front, ...middle, last]);
  return sided(own.length === 0 ? block : glued(block, cautionStrip(own)));
}

function readingOf({ instrument, settings }: Step): Piece {
  const expect = settings[0]?.expect;
  return readingPiece(isBySense(instrument) ? "" : (expect?.unit ?? "V"), expect?.lamp != null);
}

function linesPiece(step: Step, lines: readonly BranchLine[]): Piece {
  const room = BRANCH_COLUMNS.go - 2 * GO_PAD;
  return stack(
    lines.map((line) => {
      const words = stack([
        paragraph(line.word, TYPE.smallBold, room - BOX.width - 1),
        paragraph(limitsText(step, line.windows), TYPE.small, room - BOX.width - 1),
      ]);
      const height = Math.max(words.height, BOX.height);
      return {
        height,
        at: (x: Millimetres, y: Millimetres): readonly Mark[] => [
          ...words.at(x, y),
          ...boxMarks(line.goes, x + room - BOX.width, y),
        ],
      };
    }),
    0.9,
  );
}

/** The box that says where to go: a row's number in an outline, a verdict's letter white on black. */
export function boxMarks(goes: Goes, x: Millimetres, y: Millimetres): readonly Mark[] {
  const box = { x, y, width: BOX.width, height: BOX.height };
  const top = y + (BOX.height - TYPE.minutes.line) / 2;
  const middle = x + BOX.width / 2;
  if ("row" in goes)
    return [outline("field", box, 1), lineMark(String(goes.row), TYPE.minutes, middle, top, { anchor: "middle" })];
  return [solidBox(box), lineMark(goes.verdict, TYPE.minutes, middle, top, { anchor: "middle", role: "paper" })];
}

/** Limits of a line as they are compared: "below 10.8", of a sweep by position; "" where a word says it all. */
export function limitsText(step: Step, windows: readonly Window[]): string {
  const unit = step.settings[0]?.expect.unit ?? "V";
  const limits = windows.map((window) => limitText(window, unit));
  if (step.sweepOf === null) return limits[0] ?? "";
  return windows
    .flatMap((_, index) =>
      limits[index] === "" ? [] : [`${printedPosition(step.settings[index]!.position)} ${limits[index]}`],
    )
    .join(", ");
}

function limitText({ low, high }: Window, unit: Unit): string {
  const text = (read: number): string => {
    if (unit === "mV") return `${plainNumber(Math.round(read * 10_000) / 10)} mV`;
    if (unit === "ohm") return ohmsText(read).replace("ohm", unitSign(unit));
    const plain = figure(read, Math.round(read * 10) === read * 10 ? 1 : 2);
    return unit === "A" ? `${plain} A` : plain;
  };
  if (!Number.isFinite(low) && !Number.isFinite(high)) return "";
  if (!Number.isFinite(low)) return WORDS.below(text(high));
  return Number.isFinite(high) ? WORDS.limits(text(low), text(high)) : WORDS.up(text(low));
}
