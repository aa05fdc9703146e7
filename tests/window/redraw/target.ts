import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Outcome } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { gridUnitsOf } from "../../../core/drawing/scale.ts";
import { type Bench, benchFor } from "../../../core/edit/bench.ts";
import { changeTitle } from "../../../core/edit/commands/changeTitle.ts";
import { drawWire } from "../../../core/edit/commands/drawWire.ts";
import { moveThings } from "../../../core/edit/commands/moveThings.ts";
import { removePage } from "../../../core/edit/commands/removePage.ts";
import { removeThings } from "../../../core/edit/commands/removeThings.ts";
import { apply, type Edit } from "../../../core/edit/edit.ts";
import { circuitSheets } from "../../../core/paper/circuitSheets.ts";
import { placingOn } from "../../../core/paper/placing.ts";
import { pdfOf } from "../../../electron/print/pdf.ts";
import { readCircuit } from "../../../schemas/circuit.ts";
import { ROOT } from "../machine.ts";
import { middleOf } from "./parts.ts";

/** The paper that it is printed on: as large as the page, so that the print lies under the drawing as it is. */
const PAPER = "a3";

/** Room for the feeds left of the vents, and for both on one page: grid units to the right. */
const FEEDS = 27;

/**
 * The roof vents of the first sample on one page, as a person at the bench redraws them: feeds, panel, four switches, four
 * motors, ground; without the rain closer, past which the wire of the rear vent now goes straight.
 */
export function roofVents(): Circuit {
  const sample = readCircuit(readFileSync(join(ROOT, "samples", "1-roof-vents.circuit.json")));
  if (!sample.ok) throw new Error("the first sample cannot be read");
  const { parts, placement } = sample.value;
  const on = (page: string): string[] => parts.flatMap(({ id }) => (placement.parts[id]?.page === page ? [id] : []));
  const links = parts.flatMap(({ id, kind }) => (kind === "page-link" ? [id] : []));
  const left = [...links, ...on("p3"), ...on("p4"), "F5"];
  const vents = on("p2").filter((id) => !left.includes(id));
  let bench = benchFor(sample.value);
  const make = (command: (bench: Bench) => Outcome<Edit>): void => {
    bench = made(bench, command);
  };
  make((now) => changeTitle(now, "Roof vents, redrawn"));
  make((now) => removeThings(now, left));
  make((now) => removePage(now, "p3"));
  make((now) => removePage(now, "p4"));
  make((now) => moveThings(now, ["X7", "GP2"], -16, 0));
  make((now) => moveThings(now, vents, FEEDS, 0));
  make((now) => moveThings(now, ["K1"], -5, 0));
  make((now) => removePage(now, "p1", "p2"));
  make((now) => drawWire(now, "K1.87", "F4.1", { colour: "RD", mm2: 6 }));
  make((now) => drawWire(now, "S2.D2", "X6-2", { colour: "GY/VT", mm2: 1.5 }));
  return bench.circuit;
}

/** Its printed page, as a PDF. */
export function printedPage(circuit: Circuit): Promise<Uint8Array> {
  const sheets = circuitSheets({ circuit, page: null, condition: {}, faults: [], look: "iec", paper: PAPER });
  if (!sheets.ok) throw new Error(`refused: ${sheets.refusal.code}`);
  return pdfOf(sheets.value, { paper: PAPER, palette: "black", title: circuit.title, made: new Date(0) });
}

/** The circuit as it is redrawn over its print, which is a little smaller: each part where the print shows its middle. */
export function overPrint(circuit: Circuit): Circuit {
  const [page] = circuit.pages;
  if (!page) throw new Error("there is no page");
  const [width, height] = [gridUnitsOf(page.widthMm), gridUnitsOf(page.heightMm)];
  const { left, top, scale } = placingOn({ width, height, marks: [] }, PAPER);
  const parts = Object.entries(circuit.placement.parts).map(([id, place]) => {
    const middle = middleOf(circuit, id);
    const dx = gridUnitsOf(left) + (scale - 1) * middle.x;
    const dy = gridUnitsOf(top) + (scale - 1) * middle.y;
    return [id, { ...place, x: Math.round(place.x + dx), y: Math.round(place.y + dy) }] as const;
  });
  return { ...circuit, placement: { ...circuit.placement, parts: Object.fromEntries(parts) } };
}

function made(bench: Bench, command: (bench: Bench) => Outcome<Edit>): Bench {
  const edit = command(bench);
  if (!edit.ok) throw new Error(`refused: ${edit.refusal.code}`);
  const after = apply(bench, edit.value);
  if (!after.ok) throw new Error(`refused: ${after.refusal.code}`);
  return after.value.bench;
}
