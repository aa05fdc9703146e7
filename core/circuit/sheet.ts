import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Drawing, Mark } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import { currentMarks } from "./sheetCurrent.ts";
import { bannerMarks, frameMarks } from "./sheetFrame.ts";
import { layoutOf, type SheetLayout } from "./sheetLayout.ts";
import { symbolMarks } from "./sheetLeads.ts";
import { legendMarks } from "./sheetLegend.ts";
import { rayMarks } from "./sheetRays.ts";
import { FROM_SYMBOL, SheetRoom } from "./sheetRoom.ts";
import { type SheetRequest, type SheetSetup, setUpSheet } from "./sheetSetup.ts";
import { standingMarks } from "./sheetStanding.ts";
import { tagMarks } from "./sheetTags.ts";
import { titleMarks } from "./sheetTitle.ts";
import { layWires } from "./sheetWire.ts";
import { wireListMarks } from "./sheetWireList.ts";
import { dotMarks, lineMarks } from "./sheetWireMarks.ts";

export type { SheetLive, SheetPartLive, SheetRequest, SheetWireLive } from "./sheetSetup.ts";

/**
 * A page of a circuit as marks: symbols as they stand, wires routed and in their states, names, tags, loose ends and,
 * unless left out, frame, banner, legend and title block. Refuses `page-unknown`.
 */
export function sheetOf(request: SheetRequest): Outcome<Drawing> {
  const { circuit, framed = request.zoom === undefined, printScale = 1 } = request;
  const page = circuit.pages.find(({ id }) => id === request.page);
  if (page === undefined) return refuse("page-unknown", { page: request.page });
  const setup = setUpSheet(request, page);
  const drawn = drawingMarks(setup, layoutOf(request, page));
  const number = circuit.pages.indexOf(page) + 1;
  const { sheet = [number, circuit.pages.length], code = "" } = request;
  const frame = framed
    ? [
        ...frameMarks(setup.area, printScale),
        ...bannerMarks(setup, printScale),
        ...legendMarks(setup, printScale),
        ...titleMarks(setup, { sheet, code, printScale }),
      ]
    : [];
  const { width, height } = setup.area;
  return ok({ width, height, marks: [...frame, ...drawn], title: `${circuit.title}: ${page.title}` });
}

/** Bodies lie under the wires, all else of the symbols over them, and tags over everything. */
function drawingMarks(setup: SheetSetup, layout: SheetLayout): readonly Mark[] {
  const symbols = setup.parts.flatMap((part) => symbolMarks(setup, part));
  const wires = layWires(setup, layout.ways);
  const lines = lineMarks(setup, wires);
  const room = layout.room.copy();
  for (const mark of lines) if ("role" in mark && mark.role === "symbol") room.takeMark(mark, FROM_SYMBOL);
  const names = [
    ...layout.terminals,
    ...[...layout.names.values()].flat(),
    ...standingMarks(setup, layout.names, room),
  ];
  const tags = tagMarks(setup, wires, room);
  const written = new SheetRoom(setup.area.frame);
  for (const mark of [...layout.words, ...names, ...tags.marks]) written.take(boundsOf(mark));
  for (const mark of tags.marks) room.take(boundsOf(mark));
  const rays = rayMarks(setup, written);
  const list = setup.sight.isScreen ? [] : wireListMarks(setup, tags.withoutColour, room);
  const isBody = (mark: Mark) => "role" in mark && mark.role === "body";
  return [
    ...symbols.filter(isBody),
    ...lines,
    ...dotMarks(wires),
    ...currentMarks(wires, written),
    ...symbols.filter((mark) => !isBody(mark)),
    ...rays,
    ...layout.words,
    ...layout.loose.flatMap(({ marks }) => marks),
    ...names,
    ...tags.marks,
    ...list,
  ];
}
