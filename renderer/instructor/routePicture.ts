import type { PointId } from "../../core/base/ids.ts";
import { assert } from "../../core/base/outcome.ts";
import type { GridUnits } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { placeSymbol } from "../../core/circuit/placeSymbol.ts";
import { partAt, partOfPoint } from "../../core/circuit/points.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { restPose } from "../../core/circuit/sheetPose.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import type { Mark, Spot } from "../../core/drawing/mark.ts";
import { boundsOf, boundsOfAll } from "../../core/drawing/measure.ts";
import { lengthText } from "../../core/drawing/pathText.ts";
import { millimetresOf } from "../../core/drawing/scale.ts";
import { filledBox, line, text } from "../../core/drawing/shapes.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { textWidth } from "../../core/drawing/type.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { liveInside, type RouteStep, routeSteps } from "../../core/lesson/routeStep.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Look } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";
import type { MarkedRoute } from "../../schemas/marked.ts";
import { flagName } from "./handins.ts";

/** Which moment of a route is drawn, on which page. */
export interface Moment {
  readonly step: number;
  readonly page: string;
  readonly palette: Palette;
  readonly look: Look;
}

/** Paper round the drawing, millimetres. */
const MARGIN = 5;

/**
 * A page as it was after a move of a route, as SVG text: every wire in the state that it had in the vehicle with its fault, and
 * what was read so far as a flag at its point, numbered as the verdict names it; the flag of this very move is solid.
 */
export function routePicture(
  { opened, replay }: NonNullable<MarkedRoute["route"]>,
  { step, page, palette, look }: Moment,
): string {
  const { exercise, hidden } = opened;
  const { circuit } = exercise;
  const planted = plantOf(circuit, hidden.fault);
  assert(planted.ok, "the hidden fault was planted when the exercise was opened");
  const live = liveInside(replay[step]!, planted.value.faults);
  const sheet = sheetOf({ circuit, page, live, look, zoom: 1 });
  assert(sheet.ok, "a route is shown on a page of its circuit");
  const marks = [...sheet.value.marks, ...flagsOn({ circuit, page, look }, routeSteps(replay).slice(0, step))];
  const bounds = boundsOfAll(marks);
  const svg = svgOf({ ...sheet.value, marks }, { palette, inPage: true });
  if (!bounds) return svg;
  const [left, top, right, bottom] = [bounds.left, bounds.top, bounds.right, bounds.bottom].map(millimetresOf);
  const box = [left! - MARGIN, top! - MARGIN, right! - left! + 2 * MARGIN, bottom! - top! + 2 * MARGIN];
  // Only what is drawn is shown, as wide as the window has room for.
  return svg.replace(/ width="[^"]*" height="[^"]*" viewBox="[^"]*"/, ` viewBox="${box.map(lengthText).join(" ")}"`);
}

/** A page, and the symbols it is drawn with. */
interface SheetSeen {
  readonly circuit: Circuit;
  readonly page: string;
  readonly look: Look;
}

const POINTS = 9;
const FLAG: { readonly height: GridUnits; readonly pad: GridUnits; readonly pole: GridUnits } = {
  height: 1.9,
  pad: 0.6,
  pole: 1.6,
};

/** A flag for each point that was read, with what its last readings showed. */
function flagsOn(sheet: SheetSeen, steps: readonly RouteStep[]): readonly Mark[] {
  const read = new Map<PointId, Flag>();
  for (const [index, { reading, shown, leads }] of steps.entries()) {
    const [point] = leads;
    if (reading === null || point === undefined) continue;
    const count = (read.get(point)?.count ?? 0) + 1;
    read.set(point, { reading, shown, count, isNow: index === steps.length - 1 });
  }
  return [...read].flatMap(([point, flag]) => {
    const spot = spotOf(sheet, point);
    return spot ? flagMarks(spot, flag).map((mark): Mark => ({ ...mark, of: flagName(flag.reading) })) : [];
  });
}

/** What was read last at a point, how often it was read there, and whether by the move that is shown. */
interface Flag {
  readonly reading: number;
  readonly shown: string;
  readonly count: number;
  readonly isNow: boolean;
}

function flagMarks({ x, y }: Spot, { reading, shown, count, isNow }: Flag): readonly Mark[] {
  const words = `${reading}: ${shown}${count > 1 ? ` (${count})` : ""}`;
  const width = textWidth(words, POINTS, 600) + 2 * FLAG.pad;
  const top = y - FLAG.pole - FLAG.height;
  const at = { points: POINTS, weight: 600 } as const;
  const [left, base] = [x + FLAG.pad, top + FLAG.height * 0.72];
  if (isNow)
    return [
      line("frame-heavy", x, y, x, top),
      filledBox("solid", x, top, width, FLAG.height),
      text(words, left, base, { ...at, role: "paper" }),
    ];
  const edge: Mark = { mark: "box", at: { x, y: top }, width, height: FLAG.height, role: "frame" };
  return [
    line("frame", x, y, x, top),
    filledBox("paper", x, top, width, FLAG.height),
    edge,
    text(words, left, base, at),
  ];
}

/** Where a point is on the page; a part that was looked at, at the top left of its symbol. Null where it is elsewhere. */
function spotOf({ circuit, page, look }: SheetSeen, point: PointId): Spot | null {
  const found = partOfPoint(circuit, point);
  const part = found?.part ?? partAt(circuit, point);
  const place = part && circuit.placement.parts[part.id];
  const kind = part && kindOf(part.kind);
  if (!part || !kind || place?.page !== page) return null;
  const view = viewOf(kind, part, circuit.nominalVolts);
  const shape = placeSymbol(kind.symbol(view, restPose(kind, view), look), place);
  const terminal = found && shape.terminals[found.terminal];
  if (terminal) return terminal;
  const bounds = shape.marks.map(boundsOf)[0];
  return bounds ? { x: bounds.left, y: bounds.top } : null;
}
