import type { Millimetres, Volts } from "../base/units.ts";
import type { ProofRow } from "../diagnose/proofRow.ts";
import type { Unit } from "../diagnose/step.ts";
import { fieldPiece } from "./fields.ts";
import { type Block, glued, gridRow, roomIn } from "./grid.ts";
import { paragraph } from "./lines.ts";
import { notesCell } from "./notesCell.ts";
import { space, stack } from "./piece.ts";
import { minusText } from "./range.ts";
import { cautionStrip, numberCell, probeCell, type RowSetting, rowCell, sided } from "./row.ts";
import { setPiece } from "./setCell.ts";
import { TYPE } from "./sizes.ts";

/** Widths of the columns of a proof run; together the width of the sheet. */
export const PROOF_COLUMNS = {
  row: 13,
  probe: 56,
  set: 26,
  before: 28,
  after: 32,
  tells: 31,
} as const satisfies Readonly<Record<string, Millimetres>>;

const ROW: Millimetres = 24;

/** A row of a proof run: what the fault shows and what a mended circuit does, each over a field for what was read. */
export function proofRowBlock({ circuit, matters, told }: RowSetting, row: ProofRow): Block {
  const { step } = row;
  const own = step.cautions.filter((caution) => !told.has(caution));
  const column = (name: "before" | "after", words: string, unit: Unit) => {
    const room = roomIn(PROOF_COLUMNS[name], 1);
    const value = paragraph(words, TYPE.proofValue, room);
    return rowCell(name, PROOF_COLUMNS[name], stack([value, space(1), fieldPiece(unit, room)]));
  };
  const block = gridRow(ROW, [
    numberCell(step.number, false, PROOF_COLUMNS.row),
    probeCell(circuit, step, PROOF_COLUMNS.probe),
    rowCell("set", PROOF_COLUMNS.set, setPiece(circuit, step, matters, roomIn(PROOF_COLUMNS.set, 1))),
    column("before", beforeText(row), beforeUnit(row)),
    column("after", windowText(row), step.settings[0]!.expect.unit),
    notesCell(step.why, PROOF_COLUMNS.tells),
  ]);
  return sided(own.length === 0 ? block : glued(block, cautionStrip(own)));
}

/** Volts from which millivolts are written as volts: across a blown fuse stands the battery. */
const IN_VOLTS_FROM: Volts = 1;

/** The unit that is read in with the fault there. */
export function beforeUnit({ before, step }: Pick<ProofRow, "before" | "step">): Unit {
  return Math.abs(before) < IN_VOLTS_FROM ? step.settings[0]!.expect.unit : "V";
}

/** What the fault shows, with its unit: hundredths of a volt or whole millivolts. */
export function beforeText(row: Pick<ProofRow, "before" | "step">): string {
  return beforeUnit(row) === "mV" ? `${minusText(1000 * row.before, 0)} mV` : `${minusText(row.before, 2)} V`;
}

/** The window of a mended circuit, with its unit. */
export function windowText({ step }: Pick<ProofRow, "step">): string {
  const { low, high, unit } = step.settings[0]!.expect;
  const digits = unit === "mV" ? 0 : 2;
  return `${minusText(low, digits)} – ${minusText(high, digits)} ${unit}`;
}
