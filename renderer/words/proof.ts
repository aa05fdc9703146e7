import type { Circuit } from "../../core/circuit/circuit.ts";
import type { ProofRow } from "../../core/diagnose/proofRow.ts";
import { type Probe, probeText, type Reading } from "../../core/diagnose/reading.ts";
import type { Expected } from "../../core/diagnose/step.ts";
import { beforeUnit } from "../../core/paper/proofRow.ts";
import { valueText } from "./reading.ts";

/** What a row of a proof run reads. */
export function probeOfRow({ step }: ProofRow): Probe {
  const { point: red, black, instrument, lampTo } = step;
  return { red, black, instrument, lampTo, condition: step.settings[0]!.condition };
}

/** The last reading of a row that counts, or null. */
export function readIn(readings: readonly Reading[], row: ProofRow): Reading | null {
  const key = probeText(probeOfRow(row));
  return readings.filter((each) => each.standing !== "struck" && probeText(each) === key).at(-1) ?? null;
}

/** What a row shows with the fault there, to type against. */
export function beforeExpected(row: ProofRow): Expected {
  const unit = beforeUnit(row);
  const value = unit === "mV" ? 1000 * row.before : row.before;
  return { low: value, high: value, unit, lamp: null, word: null };
}

/** What was read before: "11.8 V read". */
export function beforeSaid(circuit: Circuit, reading: Reading | null): string {
  return reading === null ? "" : `${valueText(circuit, reading)} read`;
}

/** What was read after and whether it proves the row. */
export function afterSaid(circuit: Circuit, row: ProofRow, reading: Reading | null): string {
  if (reading === null) return "";
  const isIn = isMended(row, reading);
  return `${valueText(circuit, reading)}: ${isIn ? "mended, as far as this row tells" : "outside, so masked or not mended"}`;
}

/** Whether a reading lies in the window of a mended circuit. */
export function isMended({ step }: ProofRow, { volts }: Reading): boolean {
  const { low, high, unit } = step.settings[0]!.expect;
  const value = (volts ?? 0) * (unit === "mV" ? 1000 : 1);
  return volts !== null && value >= low - HAIR && value <= high + HAIR;
}

const HAIR = 1e-6;
