import type { GridUnits } from "../base/units.ts";
import { SHEET_WORDS } from "../base/words/sheet.ts";
import type { BoxMark, Mark, Role } from "../drawing/mark.ts";
import { type Bounds, wrapText } from "../drawing/measure.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { line } from "../drawing/shapes.ts";
import { rowLetter, type SheetArea } from "./sheetArea.ts";
import { conditionWords } from "./sheetCondition.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { leastPoints, rise, type SheetType, widthOf, words } from "./sheetType.ts";

/** The two frames of a sheet and the names of its zones between them: figures along, letters down. */
export function frameMarks(area: SheetArea, printScale: number): readonly Mark[] {
  const { outer, frame, columns, rows } = area;
  const type: SheetType = { points: leastPoints(7.5, printScale), weight: 400, role: "text" };
  const half = rise(type.points) / 2;
  const marks: Mark[] = [boxOf(outer, "frame"), boxOf(frame, "frame-heavy")];
  const width = (frame.right - frame.left) / columns;
  const height = (frame.bottom - frame.top) / rows;
  for (let column = 0; column < columns; column++) {
    const x = frame.left + width * (column + 0.5);
    for (const [from, to] of [
      [outer.top, frame.top],
      [frame.bottom, outer.bottom],
    ] as const) {
      marks.push(words(`${column + 1}`, { x, y: (from + to) / 2 + half }, type, "middle"));
      if (column > 0) marks.push(line("frame", x - width / 2, from, x - width / 2, to));
    }
  }
  for (let row = 0; row < rows; row++) {
    const y = frame.top + height * (row + 0.5);
    for (const [from, to] of [
      [outer.left, frame.left],
      [frame.right, outer.right],
    ] as const) {
      marks.push(words(rowLetter(row), { x: (from + to) / 2, y: y + half }, type, "middle"));
      if (row > 0) marks.push(line("frame", from, y - height / 2, to, y - height / 2));
    }
  }
  return marks;
}

function boxOf({ left, top, right, bottom }: Bounds, role: Role): BoxMark {
  return { mark: "box", at: { x: left, y: top }, width: right - left, height: bottom - top, role };
}

const PAD: GridUnits = gridUnitsOf(3);

/** What is drawn, in one line under the upper frame: faults, then every control off its rest, in type that shrinks to fit. */
export function bannerMarks(setup: SheetSetup, printScale: number): readonly Mark[] {
  const { banner } = setup.area;
  const standing = conditionWords(setup.circuit, setup.live?.condition ?? {});
  const said = [...(setup.putIn === "" ? [] : [setup.putIn]), ...standing].join(" · ");
  const lead: SheetType = { points: leastPoints(9, printScale), weight: 400, role: "text-quiet" };
  const room = banner.right - banner.left - 3 * PAD - widthOf(SHEET_WORDS.positionDrawn, lead);
  const sizes = [12, 10.5, 9, 7.5].map((points) => leastPoints(points, printScale));
  const points = sizes.find((size) => widthOf(said, bold(size)) <= room) ?? sizes.at(-1)!;
  const [first = said, ...rest] = wrapText(said, points, 600, room);
  const text = rest.length > 0 ? `${first} …` : first;
  const y = (banner.top + banner.bottom) / 2 + rise(12) / 2;
  return [
    words(SHEET_WORDS.positionDrawn, { x: banner.left + PAD, y }, lead),
    words(text, { x: banner.left + 2 * PAD + widthOf(SHEET_WORDS.positionDrawn, lead), y }, bold(points)),
    line("rule", banner.left, banner.bottom, banner.right, banner.bottom),
  ];
}

function bold(points: number): SheetType {
  return { points, weight: 600, role: "text" };
}
