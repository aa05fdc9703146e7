import type { Circuit } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import type { Drawing } from "../../core/drawing/mark.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { type Goal, judged } from "./goal.ts";
import { median } from "./measure.ts";
import { gridCircuit } from "./window/gridCircuit.ts";

/** Grids of so many wires; the larger has 5,000 parts. */
const SIZES = [2_000, 5_000] as const;
const TURNS = 2;
/** A zoom at which only designators and glyphs are shown, and they are large. */
const SMALL = 0.2;

/** What opening may cost of reading and painting, and laying again of it: the goals, and where the run fails. */
const OPEN_GOAL = 5;
const OPEN_CEILING = 16;
const AGAIN_CEILING = 12;

interface Row {
  readonly wires: number;
  readonly parts: number;
  /** Parsing the circuit's JSON and painting its marks once as SVG. */
  readonly readAndPaintMs: number;
  /** Parsing it and laying its sheet from nothing. */
  readonly openMs: number;
  /** Laying its sheet from nothing at the small zoom, its wires laid already. */
  readonly smallMs: number;
  /** Laying the sheet again after one part was moved. */
  readonly againMs: number;
}

/** Times the laying of large sheets against parsing their JSON and painting their marks once. */
export function benchSheet(): readonly string[] {
  const rows = SIZES.map(measured);
  const round = (value: number): number => Math.round(value * 10) / 10;
  console.table(
    rows.map((row) => Object.fromEntries(Object.entries(row).map(([name, value]) => [name, round(value)]))),
  );
  return judged(
    rows.flatMap(({ wires, readAndPaintMs, openMs, againMs }): readonly Goal[] => [
      {
        name: `laying a sheet of ${wires} wires / parsing its JSON and painting its marks`,
        figure: openMs / readAndPaintMs,
        best: "most",
        goal: OPEN_GOAL,
        limit: OPEN_CEILING,
      },
      {
        name: "laying it again after one part moved / the same",
        figure: againMs / readAndPaintMs,
        best: "most",
        goal: 1,
        limit: AGAIN_CEILING,
      },
    ]),
  );
}

/** All four take turns, so that what else runs on the machine slows them alike. */
function measured(wires: number): Row {
  const text = JSON.stringify(gridCircuit(wires));
  const spent: Record<"readAndPaintMs" | "openMs" | "smallMs" | "againMs", number[]> = {
    readAndPaintMs: [],
    openMs: [],
    smallMs: [],
    againMs: [],
  };
  const time = (into: keyof typeof spent, job: () => unknown): void => {
    const begun = performance.now();
    job();
    spent[into].push(performance.now() - begun);
  };
  let parts = 0;
  for (let turn = 0; turn <= TURNS; turn++) {
    let circuit = gridCircuit(1);
    let sheet: Drawing | null = null;
    time("openMs", () => {
      circuit = onPage(JSON.parse(text), `page ${wires} ${turn}`);
      sheet = sheetAt(circuit, 1);
    });
    time("readAndPaintMs", () => {
      JSON.parse(text);
      svgOf(sheet!, { palette: "light" });
    });
    time("smallMs", () => sheetAt(circuit, SMALL));
    const edited = moved(circuit);
    time("againMs", () => sheetAt(edited, 1));
    parts = circuit.parts.length;
  }
  // The first turn meets code that is still being compiled.
  const all = Object.fromEntries(Object.entries(spent).map(([name, each]) => [name, median(each.slice(1))]));
  return { wires, parts, ...(all as Record<keyof typeof spent, number>) };
}

/** The circuit on a page of another name: nothing of it is laid yet. */
function onPage({ pages, placement, ...circuit }: Circuit, id: string): Circuit {
  const parts = Object.entries(placement.parts).map(([part, place]) => [part, { ...place, page: id }] as const);
  return {
    ...circuit,
    pages: [{ ...pages[0]!, id }],
    placement: { ...placement, parts: Object.fromEntries(parts) },
  };
}

/** One lamp of the grid one unit to the left. */
function moved({ placement, ...circuit }: Circuit): Circuit {
  const { E7: place } = placement.parts;
  return {
    ...circuit,
    placement: { ...placement, parts: { ...placement.parts, E7: { ...place!, x: place!.x - 1 } } },
  };
}

function sheetAt(circuit: Circuit, zoom: number): Drawing {
  const sheet = sheetOf({ circuit, page: circuit.pages[0]!.id, framed: false, zoom });
  if (!sheet.ok) throw new Error(sheet.refusal.code);
  return sheet.value;
}
