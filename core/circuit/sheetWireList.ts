import type { GridUnits } from "../base/units.ts";
import { SHEET_WORDS } from "../base/words/sheet.ts";
import type { Mark } from "../drawing/mark.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Wire } from "./circuit.ts";
import { type Block, padded, row, stack, wordBlock } from "./sheetBlocks.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { swatchOf } from "./sheetTagForms.ts";

/** The most columns that the list is broken into to find room, and the room between them and round it. */
const MOST_COLUMNS = 6;
const BETWEEN: GridUnits = 2;
const FIELDS: GridUnits = 0.7;
const AROUND: GridUnits = 0.8;

/**
 * The wires whose colour found no room beside them, as a list where the drawing leaves a corner free: name, colour, size
 * and the places they join. From the foot up, in as few columns as fit. None where there is no such corner.
 */
export function wireListMarks(setup: SheetSetup, wires: readonly Wire[], room: SheetRoom): readonly Mark[] {
  if (wires.length === 0) return [];
  const entries = aligned(wires.map((wire) => fieldsOf(setup, wire)));
  const head = wordBlock(SHEET_WORDS.withoutRoom, setup.types.wire);
  for (let columns = 1; columns <= Math.min(MOST_COLUMNS, entries.length); columns++) {
    const block = stack([head, inColumns(entries, columns)], "left");
    const at = freePlace(block, setup.area.drawing, room);
    if (at) return block.draw(at.left, at.top);
  }
  return [];
}

function fieldsOf(setup: SheetSetup, wire: Wire): readonly Block[] {
  const { types } = setup;
  const { id, colour = "", mm2, from, to } = wire;
  return [
    wordBlock(id, types.code, id),
    row([...swatchOf(setup, wire), wordBlock(colour, types.code, id)], 0.4),
    wordBlock(mm2 === undefined ? "" : `${mm2}`, types.wire, id),
    wordBlock(`${from} – ${to}`, types.wire, id),
  ];
}

/** Rows whose fields stand under each other. */
function aligned(rows: readonly (readonly Block[])[]): readonly Block[] {
  const widths = rows[0]!.map((_, field) => Math.max(...rows.map((blocks) => blocks[field]!.width)));
  return rows.map((blocks) =>
    row(
      blocks.map((block, field) => padded(block, { width: widths[field]!, height: block.height }, "left")),
      FIELDS,
    ),
  );
}

function inColumns(entries: readonly Block[], columns: number): Block {
  const each = Math.ceil(entries.length / columns);
  const lists = Array.from({ length: columns }, (_, index) => entries.slice(index * each, (index + 1) * each));
  const full = lists.filter((list) => list.length > 0).map((list) => stack(list, "left"));
  const height = Math.max(...full.map((list) => list.height));
  return row(
    full.map((list) => padded(list, { width: list.width, height }, "left")),
    BETWEEN,
  );
}

/** The first free place from the foot of the drawing up, and from its left. */
function freePlace({ width, height }: Block, drawing: Bounds, room: SheetRoom) {
  for (let top = drawing.bottom - height - AROUND; top >= drawing.top + AROUND; top--) {
    for (let left = drawing.left + AROUND; left <= drawing.right - width - AROUND; left++) {
      if (room.isFree({ left, top, right: left + width, bottom: top + height }, AROUND)) return { left, top };
    }
  }
  return null;
}
