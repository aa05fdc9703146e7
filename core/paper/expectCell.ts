import type { Millimetres, Volts } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import { milliampsText } from "../diagnose/drain.ts";
import { type Expected, isBySense, type Step } from "../diagnose/step.ts";
import { TEST_LAMPS } from "../trade/instruments.ts";
import { paragraph, type Runs, runs, runsWidth } from "./lines.ts";
import { type Piece, space, stack } from "./piece.ts";
import { closeRange, expectText, plainNumber, unitSign } from "./range.ts";
import { instrumentPiece } from "./sign.ts";
import { TYPE } from "./sizes.ts";

/** What a good circuit shows in a row with one reading: instrument, range with unit, lamp, and the range in other words. */
export function expectPiece(step: Step, restVolts: Volts, room: Millimetres): Piece {
  const expect = step.settings[0]?.expect;
  if (!expect) return stack([]);
  const lamp = expect.lamp === null ? [] : [paragraph(WORDS.lampShows(expect.lamp), TYPE.lamp, room)];
  const limit = paragraph(otherWords(step, expect, restVolts), TYPE.limit, room);
  return stack([
    instrumentPiece(step.instrument, room, step.lampTo === "black"),
    space(0.4),
    ...(step.lampTo === "black" ? [] : [rangePiece(expect, room)]),
    space(0.5),
    ...lamp,
    limit,
  ]);
}

function rangePiece(expect: Expected, room: Millimetres): Piece {
  const range = expectText(expect);
  if (expect.word !== null) return paragraph(range, TYPE.lamp, room);
  const unit = unitSign(expect.unit);
  const line: Runs = [
    [range, TYPE.range],
    [` ${unit}`, TYPE.rangeUnit],
  ];
  return runsWidth(line) <= room ? runs(...line) : paragraph(`${range} ${unit}`, TYPE.range, room);
}

/** "battery less 0.3–0.7" for a reading near the battery, "drop at 4 A" for one near ground under a lamp; else nothing. */
function otherWords(step: Step, expect: Expected, restVolts: Volts): string {
  const { low, high } = expect;
  if (step.black === "battery +" || step.lampTo === "black" || isBySense(step.instrument)) return "";
  if (expect.unit === "ohm" || expect.unit === "A") return "";
  if (step.ohms !== null) return WORDS.dropScale(milliampsText(0.001 / step.ohms));
  if (step.settings[0]?.expect.unit === "mV") return WORDS.drop;
  if (low > restVolts / 2) {
    const [least, most] = [restVolts - high, restVolts - low];
    return most >= 0.05 ? WORDS.batteryLess(closeRange(Math.max(0, least), most)) : "";
  }
  if (step.black !== "battery -") return WORDS.drop;
  if (step.lampTo !== "battery +" || step.instrument === "meter volts") return "";
  const lamp = step.instrument === "4 A lamp" ? TEST_LAMPS.heavy : TEST_LAMPS.small;
  return WORDS.dropAt(plainNumber(lamp.amps));
}
