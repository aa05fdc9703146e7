import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Drawing, Mark } from "../drawing/mark.ts";
import { type Bounds, boundsOf } from "../drawing/measure.ts";
import { bannerMarks, frameMarks } from "./sheetFrame.ts";
import { layoutOf, type SheetLayout, stillMarks } from "./sheetLayout.ts";
import { legendMarks } from "./sheetLegend.ts";
import { SheetMemory } from "./sheetMemory.ts";
import { FROM_SYMBOL, type SheetRoom } from "./sheetRoom.ts";
import { isNamed, namedOf, type SheetRequest, type SheetSetup, setUpSheet } from "./sheetSetup.ts";
import { standingMarks } from "./sheetStanding.ts";
import { inksOf } from "./sheetTagMemory.ts";
import { settleOnPaper, withoutColour } from "./sheetTags.ts";
import { titleMarks } from "./sheetTitle.ts";
import { wireListMarks } from "./sheetWireList.ts";

export type { SheetFar, SheetLive, SheetPartLive, SheetRequest, SheetWireLive } from "./sheetSetup.ts";

/**
 * A page of a circuit as marks: symbols as they stand, wires routed and in their states, names, tags, loose ends and,
 * unless left out, frame, banner, legend and title block. Refuses `page-unknown`.
 */
export function sheetOf(request: SheetRequest): Outcome<Drawing> {
  const { circuit, framed = request.zoom === undefined, printScale = 1 } = request;
  const page = circuit.pages.find(({ id }) => id === request.page);
  if (page === undefined) return refuse("page-unknown", { page: request.page });
  const layout = layoutOf(request, page);
  // Paper is drawn for its own sake, and its tags are set in rounds, of which nothing is remembered.
  const memory = request.zoom === undefined ? new SheetMemory() : layout.memory;
  const setup = setUpSheet(request, page, memory.stood);
  const drawn = drawingMarks(setup, layout, memory);
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
function drawingMarks(setup: SheetSetup, layout: SheetLayout, memory: SheetMemory): readonly Mark[] {
  const altered = memory.begin(setup, layout.room);
  const { wires, others } = memory.laying.lay(setup, layout.ways);
  const symbols = memory.symbols.draw(setup, others);
  const lines = memory.lines.draw(setup, wires);
  const room = layout.room.copy();
  for (const mark of lines.inked) room.takeMark(mark, FROM_SYMBOL);
  const standing = standingMarks(namedOf(setup), layout.names, room);
  memory.stand([...lines.inked, ...standing].map(boundsOf), altered);
  const tagged = setup.named === null ? wires : wires.filter(({ wire }) => isNamed(setup, wire.id));
  const { isScreen } = setup.sight;
  const tags = isScreen ? memory.tags.settleAll(setup, tagged, room, altered) : settleOnPaper(setup, tagged, room);
  const written = memory.written.with(layout.written, tags.settled, inksOf).copy();
  for (const word of standing) written.take(boundsOf(word));
  const rays = memory.rays.draw(setup, written, altered);
  const list = isScreen ? [] : wireListMarks(setup, withoutColour(tags), withTaken(room, tags.settled.flatMap(inksOf)));
  return ([] as Mark[]).concat(
    symbols.bodies,
    lines.marks,
    lines.dots,
    memory.current.currentMarks(wires, written, altered),
    symbols.others,
    rays,
    stillMarks(layout),
    standing,
    tags.marks,
    list,
  );
}

function withTaken(room: SheetRoom, boxes: readonly Bounds[]): SheetRoom {
  for (const box of boxes) room.take(box);
  return room;
}
