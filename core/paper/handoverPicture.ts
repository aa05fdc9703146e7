import { capital } from "../base/capital.ts";
import type { Millimetres } from "../base/units.ts";
import { HANDOVER_WORDS as WORDS } from "../base/words/proof.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { HandoverFacts } from "../diagnose/handoverFacts.ts";
import type { Mark } from "../drawing/mark.ts";
import type { BranchRow } from "../live/branch.ts";
import { inCell, outline, ring, ruled, stroke, together } from "./cell.ts";
import type { Block } from "./grid.ts";
import { lineMark, paragraph } from "./lines.ts";
import { plainFound, plainRow } from "./plainWords.ts";
import { TYPE } from "./sizes.ts";
import { grown, middleLine, shifted } from "./straightMarks.ts";
import { straightSymbol } from "./straightSymbol.ts";

const FRAME: { readonly width: Millimetres; readonly height: Millimetres } = { width: 30, height: 19 };
/** Middles of the three frames. */
const MIDDLES: readonly Millimetres[] = [29, 93, 157];
/** Room above the frames for the words on the fault, and below them for the letters of the points. */
const ABOVE: Millimetres = 7;
const LETTERS: Millimetres = 6;
const NAME: Millimetres = 60;
const GROWN = 1.8;
const RING: Millimetres = 8;
const ARROW: Millimetres = 1.3;

/** Three parts on one line in the order of the current, the found one ringed, the points A and B on either side of it. */
export function handoverPicture(circuit: Circuit, { rows, found, shown }: HandoverFacts): Block {
  const names = rows.map((row, index) => {
    const called = index === found ? plainFound(circuit, row) : plainRow(circuit, row);
    const name = paragraph(`${index + 1} ${capital(called)}`, TYPE.ownerName, NAME, "middle");
    const state = paragraph(index === found ? WORDS.isFound : WORDS.isGood, TYPE.ownerSmall, NAME, "middle");
    return { name, state, height: name.height + state.height };
  });
  const under = ABOVE + FRAME.height + LETTERS;
  const height = under + Math.max(...names.map((each) => each.height));
  return {
    height,
    draw(top) {
      const y = top + ABOVE + FRAME.height / 2;
      const lines = [0, 1].map((gap) => stroke("contact-now", edge(gap, 1), y, edge(gap + 1, -1), y));
      const frames = rows.map((row, index) => frameMarks(circuit, row, MIDDLES[index]!, y));
      const cells = names.map(({ name, state }, index) => {
        const x = MIDDLES[index]! - NAME / 2;
        const box = { x, y: top + under, width: NAME, height: height - under };
        return inCell("part", box, [...name.at(x, top + under), ...state.at(x, top + under + name.height)]);
      });
      const points = shown === "sides" ? [0, 1].map((gap) => pointMarks(gap, y)) : [];
      return together(
        ruled(...lines, ...frames.flatMap(({ drawn }) => drawn)),
        ...frames.flatMap(({ signs }, index) =>
          signs.length === 0 ? [] : [inCell("sign", frameBox(MIDDLES[index]!, y), signs)],
        ),
        ...points,
        ...(found === null ? [] : [faultMarks(MIDDLES[found]!, top, y)]),
        ...cells,
      );
    },
  };
}

function edge(frame: number, side: 1 | -1): Millimetres {
  return MIDDLES[frame]! + (side * FRAME.width) / 2;
}

function frameBox(x: Millimetres, y: Millimetres) {
  return { x: x - FRAME.width / 2, y: y - FRAME.height / 2, width: FRAME.width, height: FRAME.height };
}

/** A frame with the part's own symbol grown in it; a wire is a line across. */
function frameMarks(
  circuit: Circuit,
  row: BranchRow,
  x: Millimetres,
  y: Millimetres,
): { readonly drawn: readonly Mark[]; readonly signs: readonly Mark[] } {
  const frame = outline("table", frameBox(x, y), 2);
  if (row.is === "wire")
    return {
      drawn: [frame, stroke("contact-now", x - FRAME.width / 2, y, x + FRAME.width / 2, y)],
      signs: [],
    };
  const { marks, top, bottom, sign } = straightSymbol(circuit, row, "iec");
  const middle = (GROWN * (top + bottom)) / 2;
  const letter = sign === "" ? [] : [middleLine(sign, TYPE.ownerHead, x, y, "middle")];
  return { drawn: [frame, ...shifted(grown(marks, GROWN), x, y - middle)], signs: letter };
}

/** An arrow up to the line between two frames, and its letter. */
function pointMarks(gap: number, y: Millimetres) {
  const x = (edge(gap, 1) + edge(gap + 1, -1)) / 2;
  const foot = y + FRAME.height / 2;
  const box = { x: x - 4, y: foot, width: 8, height: LETTERS };
  return together(
    ruled(
      stroke("table", x, foot - 0.6, x, y + 1),
      stroke("table", x - ARROW, y + 1 + 1.6 * ARROW, x, y + 1, x + ARROW, y + 1 + 1.6 * ARROW),
    ),
    inCell("point", box, [lineMark(gap === 0 ? "A" : "B", TYPE.ownerHead, x, foot, { anchor: "middle" })]),
  );
}

function faultMarks(x: Millimetres, top: Millimetres, y: Millimetres) {
  const words = lineMark(WORDS.theFault, TYPE.ownerName, x, top, { anchor: "middle" });
  return together(
    ruled(ring("caution", x, y, RING), stroke("table", x, top + TYPE.ownerName.line + 0.4, x, y - RING - 0.45)),
    inCell("fault", { x: x - NAME / 2, y: top, width: NAME, height: TYPE.ownerName.line }, [words]),
  );
}
