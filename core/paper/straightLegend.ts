import { WIRE_STATES, type WireState } from "../base/states.ts";
import type { Millimetres } from "../base/units.ts";
import { SHEET_WORDS, STATE_WORDS } from "../base/words/sheet.ts";
import { chassisMarks, chevronMarks } from "../drawing/glyph.ts";
import type { Mark, Role } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { colourNamed } from "../trade/colourNames.ts";
import { ring, stroke } from "./cell.ts";
import { glyphAt, middleLine } from "./straightMarks.ts";
import { AT, FRAME, LEGEND_HEIGHT, TITLE_HEIGHT, STRAIGHT_TYPE as TYPE } from "./straightSize.ts";

const SAMPLE: Millimetres = 9;
const TOP: Millimetres = FRAME.bottom - TITLE_HEIGHT - LEGEND_HEIGHT;
const LINES: readonly [Millimetres, Millimetres, Millimetres] = [TOP + 4, TOP + 10, TOP + 15.4];
/** Where the samples of the four columns of states begin. */
const COLUMNS: readonly Millimetres[] = [AT.where, 55, 103.5, 143];

interface Sample {
  readonly x: Millimetres;
  readonly words: string;
  draw(x: Millimetres, y: Millimetres): readonly Mark[];
  readonly width: Millimetres;
}

/** The legend under the rows: current, contacts, body, swatch, then all eight states. */
export function legendMarks(): readonly Mark[] {
  const [first, second, third] = LINES;
  return [
    stroke("rule-fine", AT.where, TOP, AT.right, TOP),
    middleLine(SHEET_WORDS.lineAndSign, TYPE.legendTitle, AT.where, first),
    ...SIGNS.flatMap(({ x, words, draw, width }) => [
      ...draw(x, first),
      middleLine(words, TYPE.legend, x + width + 1.6, first),
    ]),
    ...WIRE_STATES.flatMap((state, index) =>
      stateMarks(state, COLUMNS[Math.floor(index / 2)]!, index % 2 === 0 ? second : third),
    ),
  ];
}

function stateMarks(state: WireState, x: Millimetres, y: Millimetres): readonly Mark[] {
  return [
    stroke(`wire-${state}` as Role, x, y, x + SAMPLE, y),
    ...glyphAt(state, x + SAMPLE + 3, y),
    middleLine(STATE_WORDS[state], TYPE.legend, x + SAMPLE + 5.6, y),
  ];
}

const SIGNS: readonly Sample[] = [
  {
    x: 30,
    width: 3,
    words: SHEET_WORDS.current,
    draw: (x, y) => chevronMarks({ x: gridUnitsOf(x + 1.5), y: gridUnitsOf(y) }, 0),
  },
  {
    x: 61.5,
    width: SAMPLE,
    words: SHEET_WORDS.contactNow,
    draw: (x, y) => [
      stroke("contact-now", x + 0.8, y, x + SAMPLE - 0.8, y),
      ring("terminal", x + 0.8, y, 0.75),
      ring("terminal", x + SAMPLE - 0.8, y, 0.75),
    ],
  },
  {
    x: 93,
    width: SAMPLE,
    words: SHEET_WORDS.contactRest,
    draw: (x, y) => [stroke("contact-rest", x, y, x + SAMPLE, y)],
  },
  {
    x: 115.5,
    width: 6,
    words: SHEET_WORDS.chassis,
    draw: (x, y) => chassisMarks({ x: gridUnitsOf(x + 3), y: gridUnitsOf(y - 1) }),
  },
  {
    x: 143,
    width: 7,
    words: SHEET_WORDS.swatch,
    draw: (x, y) => [
      {
        mark: "swatch",
        at: { x: gridUnitsOf(x), y: gridUnitsOf(y - 1.3) },
        width: gridUnitsOf(7),
        height: gridUnitsOf(2.6),
        base: colourNamed("red"),
        stripes: [colourNamed("white")],
      },
    ],
  },
];
