import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { type Bounds, boundsOfAll } from "../drawing/measure.ts";
import { sheetOf } from "./sheet.ts";
import { layoutOf, stillMarks } from "./sheetLayout.ts";
import { type SheetRequest, setUpSheet } from "./sheetSetup.ts";
import { layWires } from "./sheetWireLaying.ts";
import { dotMarks, lineMarks } from "./sheetWireMarks.ts";

/** What of a sheet its box is asked for: a page at rest, on a screen. */
type Asked = Required<Pick<SheetRequest, "circuit" | "page" | "look" | "zoom">>;

/**
 * The box round all that `sheetOf` draws of a page at rest, without its frame; undefined where that is nothing. At a zoom
 * at which wires have no words nothing has to be drawn for it. Refuses `page-unknown`.
 */
export function sheetBox(asked: Asked): Outcome<Bounds | undefined> {
  const page = asked.circuit.pages.find(({ id }) => id === asked.page);
  if (page === undefined) return refuse("page-unknown", { page: asked.page });
  const setup = setUpSheet(asked, page);
  if (setup.sight.hasWords) {
    const sheet = sheetOf({ ...asked, framed: false });
    return sheet.ok ? ok(boundsOfAll(sheet.value.marks)) : sheet;
  }
  const layout = layoutOf(asked, page);
  const wires = layWires(setup, layout.ways);
  return ok(
    boundsOfAll([
      ...setup.parts.flatMap(({ shape }) => shape.marks),
      ...lineMarks(setup, wires),
      ...dotMarks(wires),
      ...stillMarks(layout),
    ]),
  );
}
