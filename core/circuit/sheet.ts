import { remember } from "../base/memo.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Drawing, Mark } from "../drawing/mark.ts";
import { type Bounds, boundsOf } from "../drawing/measure.ts";
import { bannerMarks, frameMarks } from "./sheetFrame.ts";
import { layoutOf, type SheetLayout } from "./sheetLayout.ts";
import { symbolMarks } from "./sheetLeads.ts";
import { legendMarks } from "./sheetLegend.ts";
import { rayMarks } from "./sheetRays.ts";
import { FROM_SYMBOL, type SheetRoom } from "./sheetRoom.ts";
import { isNamed, namedOf, type SheetRequest, type SheetSetup, setUpSheet } from "./sheetSetup.ts";
import { standingMarks } from "./sheetStanding.ts";
import { tagMarks } from "./sheetTags.ts";
import { titleMarks } from "./sheetTitle.ts";
import { layWires } from "./sheetWire.ts";
import { wireListMarks } from "./sheetWireList.ts";
import { dotMarks, inkedLines, lineMarks } from "./sheetWireMarks.ts";

export type { SheetFar, SheetLive, SheetPartLive, SheetRequest, SheetWireLive } from "./sheetSetup.ts";

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
  const { memory } = layout;
  const altered = memory.begin(setup, layout.room);
  const symbols = setup.parts.map((part) => bodiesApart(symbolMarks(setup, part)));
  const wires = layWires(setup, layout.ways);
  const room = layout.room.copy();
  const inked = inkedLines(setup, wires);
  for (const mark of inked) room.takeMark(mark, FROM_SYMBOL);
  const standing = standingMarks(namedOf(setup), layout.names, room);
  memory.stand([...inked, ...standing].map(boundsOf), altered);
  const tagged = wires.filter(({ wire }) => isNamed(setup, wire.id));
  const tags = tagMarks(setup, tagged, room, { memory: memory.tags, altered });
  const written = layout.written.copy();
  for (const box of [...standing.map(boundsOf), ...tags.inks]) written.take(box);
  const rays = rayMarks(setup, written);
  const list = setup.sight.isScreen ? [] : wireListMarks(setup, tags.withoutColour, withTaken(room, tags.inks));
  return [
    ...symbols.flatMap(({ bodies }) => bodies),
    ...lineMarks(setup, wires),
    ...dotMarks(wires),
    ...memory.current.currentMarks(wires, written, altered),
    ...symbols.flatMap(({ others }) => others),
    ...rays,
    ...layout.words,
    ...layout.loose.flatMap(({ marks }) => marks),
    ...layout.terminals,
    ...[...layout.names.values()].flat(),
    ...standing,
    ...tags.marks,
    ...list,
  ];
}

/** The bodies of a symbol, and all else of it. */
const bodiesApart = remember((marks: readonly Mark[]) => {
  const isBody = (mark: Mark) => "role" in mark && mark.role === "body";
  return { bodies: marks.filter(isBody), others: marks.filter((mark) => !isBody(mark)) };
});

function withTaken(room: SheetRoom, boxes: readonly Bounds[]): SheetRoom {
  for (const box of boxes) room.take(box);
  return room;
}
