import type { GridUnits } from "../base/units.ts";
import { SHEET_WORDS } from "../base/words/sheet.ts";
import type { Mark, Weight } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { line } from "../drawing/shapes.ts";
import { terminalPoint, wireSideOf } from "./points.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { depth, leastPoints, rise, type SheetType, widthOf, words } from "./sheetType.ts";

interface Field {
  readonly label: string;
  readonly value: string;
  /** Share of the width of its line. */
  readonly share: number;
  readonly weight?: Weight;
}

const PAD: GridUnits = gridUnitsOf(2);
const ELLIPSIS = "…";

/** What the title block says beyond the circuit and its page. */
export interface TitleOptions {
  readonly sheet: readonly [number, number];
  readonly code: string;
  readonly printScale: number;
}

/** The title block: vehicle, circuit and revision, sheet; page, what the volts are for, code, and room for a date. */
export function titleMarks(setup: SheetSetup, options: TitleOptions): readonly Mark[] {
  const { title } = setup.area;
  const { circuit, page } = setup;
  const [number, count] = options.sheet;
  const revision = circuit.revision === undefined ? "" : `, ${SHEET_WORDS.revision} ${circuit.revision}`;
  const upper: readonly Field[] = [
    { label: SHEET_WORDS.vehicle, value: circuit.vehicle ?? "", share: 0.4 },
    { label: SHEET_WORDS.circuit, value: `${circuit.title}${revision}`, share: 0.42 },
    { label: SHEET_WORDS.sheet, value: `${number} ${SHEET_WORDS.of} ${count}`, share: 0.18, weight: 700 },
  ];
  const lower: readonly Field[] = [
    { label: SHEET_WORDS.pageTitle, value: pageText(setup, page.title), share: 0.4, weight: 700 },
    { label: SHEET_WORDS.voltsFor, value: voltsFor(setup), share: 0.27 },
    { label: SHEET_WORDS.code, value: options.code, share: 0.15 },
    { label: SHEET_WORDS.date, value: "", share: 0.18 },
  ];
  const middle = (title.top + title.bottom) / 2;
  return [
    line("frame-heavy", title.left, title.top, title.right, title.top),
    line("frame-heavy", title.left, title.top, title.left, title.bottom),
    line("rule", title.left, middle, title.right, middle),
    ...fieldMarks(setup, upper, title.top, middle, options.printScale),
    ...fieldMarks(setup, lower, middle, title.bottom, options.printScale),
  ];
}

function pageText({ circuit, page }: SheetSetup, title: string): string {
  return `${circuit.pages.findIndex(({ id }) => id === page.id) + 1}  ${title}`;
}

/** The highest volts of any wire at a battery's plus. */
function voltsFor({ circuit, live }: SheetSetup): string {
  if (live === null) return SHEET_WORDS.atRestInInk;
  const pluses = circuit.parts
    .filter((part) => part.kind === "battery")
    .map((part) => wireSideOf(circuit, terminalPoint(part, "+")));
  const volts = circuit.wires.flatMap(({ id, from, to }) => {
    const ends = live.wires.get(id)?.volts ?? [null, null];
    return [pluses.includes(from) ? ends[0] : null, pluses.includes(to) ? ends[1] : null].filter(
      (each) => each !== null,
    );
  });
  return volts.length === 0 ? "" : `${Math.max(...volts).toFixed(2)}\u00A0V ${SHEET_WORDS.atThePost}`;
}

/** A label over each value, or before it where type of that size leaves no room for two lines. */
function fieldMarks(
  { area: { title } }: SheetSetup,
  fields: readonly Field[],
  top: GridUnits,
  bottom: GridUnits,
  printScale: number,
): readonly Mark[] {
  const small: SheetType = { points: leastPoints(7.5, printScale), weight: 400, role: "text-quiet" };
  let left = title.left;
  return fields.flatMap(({ label, value, share, weight = 600 }, index) => {
    const width = (title.right - title.left) * share;
    const type: SheetType = { points: leastPoints(10.5, printScale), weight, role: "text" };
    const spare = bottom - top - tall(small) - tall(type);
    const beside = spare < 0 ? widthOf(label, small) + PAD : 0;
    const shown = fitted(value, type, width - 2 * PAD - beside);
    const last = spare < 0 ? (top + bottom + rise(type.points)) / 2 : bottom - spare / 3 - depth(type.points);
    const marks: Mark[] = [
      words(label, { x: left + PAD, y: spare < 0 ? last : top + spare / 3 + rise(small.points) }, small),
      words(shown, { x: left + PAD + beside, y: last }, type),
    ];
    if (index > 0) marks.push(line("rule", left, top, left, bottom));
    left += width;
    return marks;
  });
}

/** From the top of the capitals to the foot of the letters that hang. */
function tall({ points }: SheetType): GridUnits {
  return rise(points) + depth(points);
}

/** The text, cut with an ellipsis where it is too long for its field. */
function fitted(text: string, type: SheetType, width: GridUnits): string {
  if (widthOf(text, type) <= width) return text;
  let short = text;
  while (short.length > 1 && widthOf(`${short}${ELLIPSIS}`, type) > width) short = short.slice(0, -1);
  return `${short.trimEnd()}${ELLIPSIS}`;
}
