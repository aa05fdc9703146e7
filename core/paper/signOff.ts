import type { ControlKey } from "../base/ids.ts";
import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { ProbeOrder } from "../diagnose/step.ts";
import { loadOf } from "./cautions.ts";
import { inCell, outline, ruled, stroke, together } from "./cell.ts";
import { type Block, type GridCell, gapBlock, glued, gridRow, roomIn } from "./grid.ts";
import { lineMark, linesOf, paragraph, widthMm } from "./lines.ts";
import { rowsText } from "./listed.ts";
import { SHEET } from "./page.ts";
import { type Piece, stack } from "./piece.ts";
import { TYPE } from "./sizes.ts";
import { controlName } from "./throws.ts";

const CELL: Millimetres = 11;
const WIDTH: Millimetres = SHEET.width / 3;
const TICK: Millimetres = 3.6;
const GAP: Millimetres = 3;
const NOTE_TITLE: Millimetres = 5;
const NOTE_LINE: Millimetres = 7.5;
const LEAST_LINES = 3;

/** What is signed when the job is done, and ruled lines to write on; never split. At least three lines, more with room. */
export function signOff(circuit: Circuit, order: ProbeOrder, room: Millimetres = 0): Block {
  const block = signBlock(circuit, order);
  const spare = room - GAP - block.height - NOTE_TITLE;
  const lines = Math.max(LEAST_LINES, Math.floor(spare / NOTE_LINE));
  return glued(gapBlock(GAP), block, noteLines(lines));
}

function signBlock(circuit: Circuit, order: ProbeOrder): Block {
  const proof = proofRows(order);
  const rows = [
    gridRow(CELL, [
      words(WORDS.partAtFault),
      words(proof.length === 0 ? WORDS.proofOfRepair : WORDS.proof(rowsText(proof))),
      { ...words(WORDS.worksAgain), piece: stack([line(WORDS.worksAgain), ticks(controlsToTry(circuit, order))], 0.4) },
    ]),
    gridRow(CELL, [{ ...words(""), piece: ticks([WORDS.trimBack]) }, words(WORDS.signed), words(WORDS.dateTime)]),
  ];
  const both = glued(...rows);
  return {
    height: both.height,
    draw(top) {
      const middle = top + rows[0]!.height;
      const frame = outline("table", { x: 0, y: top, width: SHEET.width, height: both.height });
      return together(both.draw(top), ruled(stroke("rule-fine", 0, middle, SHEET.width, middle), frame));
    },
  };
}

function words(text: string): GridCell {
  return { name: "sign-off", width: WIDTH, padY: 0.8, piece: line(text) };
}

function line(text: string): Piece {
  return paragraph(text, TYPE.signOff, roomIn(WIDTH));
}

/** Words each with a square to tick, as many on a line as fit. */
function ticks(names: readonly string[]): Piece {
  const room = roomIn(WIDTH);
  const most = room - TICK - 1.2;
  const lines: { x: Millimetres; name: string }[][] = [[]];
  let x = 0;
  const singles = names.flatMap((name) => linesOf(name, TYPE.signOff, most));
  for (const name of singles) {
    const width = widthMm(name, TYPE.signOff) + 1.2 + TICK;
    if (x > 0 && x + width > room) {
      lines.push([]);
      x = 0;
    }
    lines.at(-1)!.push({ x, name });
    x += width + 4;
  }
  const rows = lines.map(
    (each): Piece => ({
      height: TICK + 0.6,
      at: (left, y) => each.flatMap(({ x, name }) => tickMarks(name, left + x, y)),
    }),
  );
  return stack(rows);
}

function tickMarks(name: string, x: Millimetres, y: Millimetres) {
  const left = x + widthMm(name, TYPE.signOff) + 1.2;
  return [
    lineMark(name, TYPE.signOff, x, y + (TICK - TYPE.signOff.line) / 2 + 0.3),
    outline("place", { x: left, y: y + 0.3, width: TICK, height: TICK }),
  ];
}

/** Rows that prove a repair: the sweeps, or where there are none the first row. */
function proofRows(order: ProbeOrder): readonly number[] {
  const sweeps = order.steps.filter(({ sweepOf }) => sweepOf !== null).map(({ number }) => number);
  return sweeps.length > 0 ? sweeps : order.steps.slice(0, 1).map(({ number }) => number);
}

/** Names of the controls that the checks of the complaint's load throw one by one. */
function controlsToTry(circuit: Circuit, order: ProbeOrder): readonly string[] {
  const load = loadOf(circuit, order);
  const sets = circuit.checks
    .filter((check) => check.load === load)
    .map(({ condition }) => Object.keys(condition.set ?? {}));
  const all = [...new Set(sets.flat())];
  const parted = all.filter((key: ControlKey) => !sets.every((keys) => keys.includes(key)));
  return (parted.length > 0 ? parted : all.slice(-1)).map((key) => controlName(circuit, key));
}

function noteLines(count: number): Block {
  const height = NOTE_TITLE + count * NOTE_LINE;
  return {
    height,
    draw(top) {
      const rules = Array.from({ length: count }, (_, i) => top + NOTE_TITLE + (i + 1) * NOTE_LINE - 0.5);
      return together(
        inCell("notes title", { x: 0, y: top, width: SHEET.width, height: NOTE_TITLE }, [
          lineMark(WORDS.notes, TYPE.signOff, 0, top + 1),
        ]),
        ruled(...rules.map((y) => stroke("rule", 0, y, SHEET.width, y))),
      );
    },
  };
}
