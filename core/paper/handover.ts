import { capital } from "../base/capital.ts";
import { figure } from "../base/figure.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Millimetres } from "../base/units.ts";
import { HANDOVER_WORDS as WORDS } from "../base/words/proof.ts";
import type { HandoverAsk, HandoverFacts, HandoverFigure } from "../diagnose/handoverFacts.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import type { Observed } from "../live/judge.ts";
import { inCell, outline, ruled, stroke, together } from "./cell.ts";
import { type Block, gapBlock, glued } from "./grid.ts";
import { handoverPicture } from "./handoverPicture.ts";
import { lineMark, paragraph } from "./lines.ts";
import { BODY_BOTTOM, SHEET, type Sheet } from "./page.ts";
import { type Piece, space, stack } from "./piece.ts";
import { designatorsIn, inPlainWords, plainCause, plainFound, plainName } from "./plainWords.ts";
import { TYPE, type TypeSize } from "./sizes.ts";

/** Words that a handover page holds at most: more is not read. */
export const MOST_WORDS = 240;

/** What a handover page is printed from: the facts, and what people said and did, in their own words. */
export interface HandoverInput extends Pick<HandoverAsk, "circuit" | "complaint" | "found"> {
  readonly facts: HandoverFacts;
  /** What the complaint's check was seen to do. */
  readonly observed: Observed;
  readonly told?: string | undefined;
  readonly vehicle?: string | undefined;
  readonly job?: string | undefined;
  readonly did?: string | undefined;
  readonly after?: string | undefined;
  readonly watch?: string | undefined;
  readonly date?: string | undefined;
}

const TEXT: Millimetres = 172;
const LINE: Millimetres = 7.5;
const GAP: Millimetres = 5;

/**
 * The handover page for the vehicle's owner, on one sheet: told, found, did, after, watch for, in plain words. Names of the
 * drawing in what was typed become plain words too. Refuses `handover-words` beyond 240 words.
 */
export function handoverSheets(input: HandoverInput): Outcome<readonly Sheet[]> {
  const { circuit, complaint, found, facts } = input;
  const typed = (words: string | undefined): string => inPlainWords(circuit, (words ?? "").trim());
  const told =
    typed(input.told) || WORDS.toldOf(inPlainWords(circuit, complaint.label), WORDS.observed[input.observed]);
  const blocks: readonly Block[] = [
    head(input),
    section(WORDS.told, told),
    section(WORDS.found, plainCause(circuit, found.faults, facts.line)),
    gapBlock(2),
    handoverPicture(circuit, facts),
    readings(input),
    section(WORDS.did, typed(input.did), 2),
    section(WORDS.after, typed(input.after), 1),
    section(WORDS.watch, typed(input.watch), 1),
    gapBlock(4),
    words("deference", WORDS.deference, TYPE.ownerSmall),
    signatures(),
  ];
  const page = glued(...blocks);
  const { marks, cells } = page.draw(0);
  const count = marks.reduce((sum, mark) => sum + (mark.mark === "text" ? wordsIn(mark.text) : 0), 0);
  if (count > MOST_WORDS || page.height > BODY_BOTTOM)
    return refuse("handover-words", { words: count, most: MOST_WORDS });
  return ok([
    {
      width: gridUnitsOf(SHEET.width),
      height: gridUnitsOf(SHEET.height),
      title: titleOf(input),
      marks,
      cells,
    },
  ]);
}

/** Words of a text: what blanks part and holds a letter or a figure. */
export function wordsIn(text: string): number {
  return text.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
}

function titleOf({ circuit, complaint }: HandoverInput): string {
  return WORDS.title(plainName(circuit, complaint.load).replace(/ motor$/, ""));
}

function head(input: HandoverInput): Block {
  const { circuit, vehicle, job = "", date = "" } = input;
  const of = vehicle ?? circuit.vehicle ?? "";
  const plainVehicle = designatorsIn(circuit, of).length > 0 ? inPlainWords(circuit, of) : of;
  const title = paragraph(titleOf(input), TYPE.ownerTitle, SHEET.width);
  const bar = 8;
  const [middle, right] = [104, 138];
  const left = paragraph(plainVehicle, TYPE.ownerSmall, middle - 2);
  const number = paragraph(job === "" ? "" : WORDS.job(job), TYPE.ownerSmall, right - middle - 2);
  const height = Math.max(bar, left.height + 2.6, number.height + 2.6);
  return {
    height: title.height + 1 + height,
    draw(top) {
      const y = top + title.height + 1;
      const line = y + 1.6;
      const rule = line + TYPE.ownerSmall.line - 1;
      return together(
        inCell("title", { x: 0, y: top, width: SHEET.width, height: title.height }, title.at(0, top)),
        inCell("vehicle", { x: 0, y, width: middle, height }, left.at(0, line)),
        inCell("job", { x: middle, y, width: right - middle, height }, number.at(middle, line)),
        inCell("date", { x: right, y, width: SHEET.width - right, height }, [
          lineMark(`${WORDS.date} ${date}`.trim(), TYPE.ownerSmall, right, line),
        ]),
        ruled(
          stroke("table", 0, y, SHEET.width, y),
          stroke("table", 0, y + height, SHEET.width, y + height),
          ...(date === "" ? [stroke("rule-fine", right + 11, rule, SHEET.width, rule)] : []),
        ),
      );
    },
  };
}

/** A heading with its text, or with ruled lines to write on where there is none. */
function section(title: string, text: string, lines = 0): Block {
  const heading = glued(gapBlock(GAP), words("heading", title, TYPE.ownerHead));
  if (text !== "") return glued(heading, gapBlock(0.6), words("text", capital(text), TYPE.ownerText));
  const height = lines * LINE;
  return glued(heading, {
    height,
    draw: (top) =>
      ruled(
        ...Array.from({ length: lines }, (_, index) => {
          const y = top + (index + 1) * LINE - 0.5;
          return stroke("rule-fine", 0, y, SHEET.width, y);
        }),
      ),
  });
}

function words(name: string, text: string, type: TypeSize): Block {
  const piece = paragraph(text, type, TEXT);
  const { height } = piece;
  return {
    height,
    draw: (top) => inCell(name, { x: 0, y: top, width: SHEET.width, height }, piece.at(0, top)),
  };
}

// ---------------------------------------------------------------- the readings

/** How the figures came about, and three boxes with them. */
function readings(input: HandoverInput): Block {
  const { circuit, facts } = input;
  const { shown, one, other, after } = facts;
  const read = [one, other, after].filter(({ isRead }) => isRead).length;
  const how = read === 3 ? WORDS.isRead : read === 0 ? WORDS.isSolved : WORDS.isBoth;
  const it = WORDS.part(plainFound(circuit, facts.rows[facts.found ?? 1]));
  const [first, second, third] = boxWords(input, it);
  return glued(
    section(WORDS.readings, WORDS[shown](how)),
    gapBlock(1.6),
    figureBoxes([
      { figure: one, ...first },
      { figure: other, ...second },
      { figure: after, ...third },
    ]),
  );
}

interface Labels {
  readonly above: string;
  readonly below: string;
}

function boxWords({ circuit, complaint, facts }: HandoverInput, it: string): readonly [Labels, Labels, Labels] {
  const load = WORDS.part(plainName(circuit, complaint.load));
  const { shown, isReturn, one, other } = facts;
  const last = WORDS.afterRepair;
  if (shown === "sides") {
    const left = other.value < ALMOST_NOTHING ? WORDS.nothingLeaves : WORDS.tooLittle;
    return [
      { above: WORDS.before(it), below: isReturn ? WORDS.backedUp : WORDS.powerArrives },
      { above: WORDS.behind(it), below: isReturn ? WORDS.goodReturn : left },
      { above: last, below: WORDS.bothPoints },
    ];
  }
  if (shown === "load") {
    const used = other.value < 0.05 * one.value ? WORDS.nothingUsed : WORDS.usedWrong;
    return [
      { above: WORDS.arrives(load), below: WORDS.powerArrives },
      { above: WORDS.uses(load), below: used },
      { above: last, below: WORDS.working },
    ];
  }
  return [
    { above: WORDS.battery, below: WORDS.powerArrives },
    { above: WORDS.arrives(load), below: other.value < ALMOST_NOTHING ? WORDS.nothingLeaves : WORDS.tooLittle },
    { above: last, below: WORDS.working },
  ];
}

/** Volts that an owner takes for none. */
const ALMOST_NOTHING = 2;

function figureBoxes(figures: readonly (Labels & { readonly figure: HandoverFigure })[]): Block {
  const between = 4;
  const width = (SHEET.width - 2 * between) / 3;
  const pieces = figures.map(({ figure: each, above, below }): Piece => {
    const room = width - 6;
    return stack([
      paragraph(above, TYPE.ownerSmall, room),
      space(0.6),
      paragraph(figureText(each), TYPE.ownerFigure, room),
      space(0.4),
      paragraph(below, TYPE.ownerSmall, room),
    ]);
  });
  const height = Math.max(...pieces.map((piece) => piece.height)) + 4.4;
  return {
    height,
    draw: (top) =>
      together(
        ...pieces.map((piece, index) => {
          const x = index * (width + between);
          const box = { x, y: top, width, height };
          return together(ruled(outline("place", box)), inCell("figure", box, piece.at(x + 3, top + 2.2)));
        }),
      ),
  };
}

function figureText({ value, unit }: HandoverFigure): string {
  return `${figure(Math.abs(value) < 0.05 ? 0 : value, 1)} ${unit}`;
}

// ---------------------------------------------------------------- signatures

function signatures(): Block {
  const height = 17;
  const ends: readonly (readonly [Millimetres, Millimetres, string])[] = [
    [0, 67, WORDS.technician],
    [73, 140, WORDS.customer],
    [146, SHEET.width, WORDS.date],
  ];
  return {
    height,
    draw(top) {
      const y = top + height - TYPE.ownerSmall.line - 1;
      return together(
        ruled(...ends.map(([from, to]) => stroke("rule", from, y, to, y))),
        ...ends.map(([from, to, name]) =>
          inCell("signature", { x: from, y, width: to - from, height: TYPE.ownerSmall.line + 1 }, [
            lineMark(name, TYPE.ownerSmall, from, y + 0.8),
          ]),
        ),
      );
    },
  };
}
