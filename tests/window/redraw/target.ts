import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Outcome } from "../../../core/base/outcome.ts";
import type { Circuit, Page } from "../../../core/circuit/circuit.ts";
import { emptyCircuit } from "../../../core/circuit/emptyCircuit.ts";
import type { Spot } from "../../../core/drawing/mark.ts";
import { gridUnitsOf } from "../../../core/drawing/scale.ts";
import { type Bench, benchFor } from "../../../core/edit/bench.ts";
import { changeTitle } from "../../../core/edit/commands/changeTitle.ts";
import { drawWire } from "../../../core/edit/commands/drawWire.ts";
import { moveThings } from "../../../core/edit/commands/moveThings.ts";
import { removePage } from "../../../core/edit/commands/removePage.ts";
import { removeThings } from "../../../core/edit/commands/removeThings.ts";
import { apply, type Edit } from "../../../core/edit/edit.ts";
import { circuitSheets } from "../../../core/paper/circuitSheets.ts";
import { type Paper, type Placing, placingOn } from "../../../core/paper/placing.ts";
import { pdfOf } from "../../../electron/print/pdf.ts";
import { readCircuit } from "../../../schemas/circuit.ts";
import { ROOT } from "../machine.ts";
import { middleOf } from "./parts.ts";

/** Room for the feeds left of the vents, and for both on one page: grid units to the right. */
const FEEDS = 27;

/**
 * The roof vents of the first sample on one page, as a person at the bench redraws them: feeds, panel, four switches, four
 * motors, ground; without the rain closer, past which the wire of the rear vent now goes straight.
 */
export function roofVents(): Circuit {
  const sample = read("1-roof-vents");
  const { parts, placement } = sample;
  const on = (page: string): string[] => parts.flatMap(({ id }) => (placement.parts[id]?.page === page ? [id] : []));
  const links = parts.flatMap(({ id, kind }) => (kind === "page-link" ? [id] : []));
  const left = [...links, ...on("p3"), ...on("p4"), "F5"];
  const vents = on("p2").filter((id) => !left.includes(id));
  let bench = benchFor(sample);
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

/** The horns of the fourth sample, from the battery past the relay and back, without what works the relay. */
export function horns(): Circuit {
  const sample = hornSheet();
  const branch = ["G1", "GP1", "F1", "F2", "SP1", "K1", "X10", "SP2", "H1", "H2", "GP2"];
  const others = sample.parts.flatMap(({ id }) => (branch.includes(id) ? [] : [id]));
  return made(benchFor(sample), (bench) => removeThings(bench, others)).circuit;
}

/** The fourth sample, of one page. */
export function hornSheet(): Circuit {
  return read("4-horn");
}

/** The printed page of a circuit that has one, as a PDF. */
export function printedPage(circuit: Circuit, paper: Paper): Promise<Uint8Array> {
  const sheets = circuitSheets({ circuit, page: null, condition: {}, faults: [], look: "iec", paper });
  if (!sheets.ok) throw new Error(`refused: ${sheets.refusal.code}`);
  return pdfOf(sheets.value, { paper, palette: "black", title: circuit.title, made: new Date(0) });
}

/** The circuit as it is redrawn over its print, each part where the print shows its middle, to the nearest grid spot. */
export function overPrint(circuit: Circuit, paper: Paper): Circuit {
  const parts = Object.entries(circuit.placement.parts).map(([id, place]) => {
    const middle = middleOf(circuit, id);
    const shown = spotInPrint(circuit, paper, middle);
    const [x, y] = [Math.round(place.x + shown.x - middle.x), Math.round(place.y + shown.y - middle.y)];
    return [id, { ...place, x, y }] as const;
  });
  return { ...circuit, placement: { ...circuit.placement, parts: Object.fromEntries(parts) } };
}

/** Where the print of a circuit shows a spot of it, which is a little smaller than what it shows. Grid units of a new page. */
export function spotInPrint({ pages }: Circuit, paper: Paper, { x, y }: Spot): Spot {
  const { left, top, scale } = placed(pages[0]!, paper);
  const corner = paperOnPage(pages[0]!, paper);
  return { x: gridUnitsOf(corner.x + left) + scale * x, y: gridUnitsOf(corner.y + top) + scale * y };
}

/** Where the top left corner of a page's paper lies on a new page, in whose middle it lies. Millimetres. */
export function paperOnPage(page: Page, paper: Paper): Spot {
  const [onto] = emptyCircuit("").pages;
  const { pageWidth, pageHeight } = placed(page, paper);
  return { x: (onto!.widthMm - pageWidth) / 2, y: (onto!.heightMm - pageHeight) / 2 };
}

function placed({ widthMm, heightMm }: Page, paper: Paper): Placing {
  return placingOn({ width: gridUnitsOf(widthMm), height: gridUnitsOf(heightMm), marks: [] }, paper);
}

function read(sample: string): Circuit {
  const circuit = readCircuit(readFileSync(join(ROOT, "samples", `${sample}.circuit.json`)));
  if (!circuit.ok) throw new Error(`${sample} cannot be read`);
  return circuit.value;
}

function made(bench: Bench, command: (bench: Bench) => Outcome<Edit>): Bench {
  const edit = command(bench);
  if (!edit.ok) throw new Error(`refused: ${edit.refusal.code}`);
  const after = apply(bench, edit.value);
  if (!after.ok) throw new Error(`refused: ${after.refusal.code}`);
  return after.value.bench;
}
