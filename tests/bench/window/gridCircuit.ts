import type { Circuit, PartPlace, Wire } from "../../../core/circuit/circuit.ts";
import type { Part, Position } from "../../../core/parts/kind.ts";

/** Wires of one branch: along the row, fuse, switch, joint, splice, and two loads with their grounds. */
const WIRES_A_BRANCH = 8;
/** Room of one branch on the page, grid units. */
const PITCH = { x: 24, y: 76 };
const LEFT = 30;
const TOP = 16;
const GRID_MM = 2.5;
const ON_AND_OFF: readonly Position[] = [
  { name: "off", joins: [] },
  { name: "on", joins: [["1", "2"]] },
];

/** A circuit while it is drawn on its grid. */
interface Sheet {
  readonly parts: Part[];
  readonly wires: Wire[];
  readonly places: Record<string, PartPlace>;
}

/**
 * A circuit of about so many wires on one page: rows of branches behind the key, each of fuse, switch, joint, splice, and a
 * lamp and a motor with a ground each. No chance in it, and no bends: the program lays every wire itself.
 */
export function gridCircuit(wires: number): Circuit {
  const branches = Math.round(wires / WIRES_A_BRANCH);
  const columns = Math.ceil(Math.sqrt(branches * 4));
  const rows = Math.ceil(branches / columns);
  const sheet: Sheet = { parts: [], wires: [], places: {} };
  drawSource(sheet);
  for (let row = 0; row < rows; row++) {
    drawRowFuse(sheet, row);
    const here = Math.min(columns, branches - row * columns);
    for (let column = 0; column < here; column++) drawBranch(sheet, row, column, row * columns + column + 1);
  }
  return {
    format: "wirefathom/circuit",
    version: 1,
    title: `Grid of ${sheet.wires.length} wires`,
    nominalVolts: 12,
    colourCodes: "iec60757",
    pages: [
      {
        id: "p1",
        title: "Grid",
        widthMm: (LEFT + columns * PITCH.x + 16) * GRID_MM,
        heightMm: (TOP + rows * PITCH.y + 28) * GRID_MM,
      },
    ],
    parts: sheet.parts,
    wires: sheet.wires,
    placement: { parts: sheet.places, wires: {} },
    connectors: sheet.parts.filter(({ kind }) => kind === "connector").map(({ id }) => ({ id, rows: [["1"]] })),
    access: [],
    reach: {},
    checks: [],
    scenes: [],
  };
}

function place({ parts, places }: Sheet, part: Part, x: number, y: number, turn: 0 | 180 = 0): void {
  parts.push(part);
  places[part.id] = { page: "p1", x, y, turn };
}

function wire({ wires }: Sheet, from: string, to: string, colour: string, mm2: number): void {
  wires.push({ id: `W${wires.length + 1}`, from, to, colour, mm2, metres: 0.5 + (wires.length % 7) / 4 });
}

/** Battery with its strap, and the key. */
function drawSource(sheet: Sheet): void {
  place(sheet, { id: "G1", kind: "battery", settings: { reference: true, internalOhms: 0.005 } }, 6, TOP + 8);
  place(sheet, { id: "GP0", kind: "ground" }, 6, TOP + 24);
  const positions: readonly Position[] = [
    { name: "off", joins: [] },
    { name: "on", joins: [["30", "15"]] },
  ];
  place(sheet, { id: "S0", kind: "ignition-switch", label: "Key", terminals: ["30", "15"], positions }, 16, TOP + 8);
  wire(sheet, "G1.-", "GP0.stud", "BK", 50);
  wire(sheet, "G1.+", "S0.30", "RD", 50);
}

/** The fuse that feeds a row; the first is fed by the key, each other one by the row before. */
function drawRowFuse(sheet: Sheet, row: number): void {
  const id = `F${row + 1}`;
  place(sheet, { id, kind: "fuse", settings: { amps: 80, family: "maxi" } }, LEFT, TOP + 4 + row * PITCH.y);
  wire(sheet, row === 0 ? "S0.15" : `F${row}.1`, `${id}.1`, "RD", 50);
}

function drawBranch(sheet: Sheet, row: number, column: number, number: number): void {
  const middle = LEFT + 18 + column * PITCH.x;
  const top = TOP + 16 + row * PITCH.y;
  const [fuse, control, joint, splice] = [`F${number + 100}`, `S${number}`, `X${number}`, `SP${number}`];
  const [lamp, motor, ground, other] = [`E${number}`, `M${number}`, `GP${number}`, `GP${number + 1_000}`];
  place(sheet, { id: fuse, kind: "fuse", settings: { amps: 10 } }, middle - 2, top);
  place(sheet, { id: control, kind: "switch", terminals: ["1", "2"], positions: ON_AND_OFF }, middle - 4, top + 12);
  place(sheet, { id: joint, kind: "connector", settings: { ways: 1 } }, middle - 2, top + 26);
  place(sheet, { id: splice, kind: "splice", settings: { legs: 3 } }, middle - 2, top + 34, 180);
  place(sheet, { id: lamp, kind: "lamp", settings: { watts: 5 } }, middle - 8, top + 41);
  place(sheet, { id: motor, kind: "motor", settings: { amps: 1, stall: 5 } }, middle + 4, top + 41);
  place(sheet, { id: ground, kind: "ground" }, middle - 8, top + 54);
  place(sheet, { id: other, kind: "ground" }, middle + 4, top + 54);
  wire(sheet, column === 0 ? `F${row + 1}.2` : `F${number + 99}.1`, `${fuse}.1`, "RD/YE", 25);
  wire(sheet, `${fuse}.2`, `${control}.1`, "RD/BK", 1.5);
  wire(sheet, `${control}.2`, `${joint}-1a`, "GN", 1.5);
  wire(sheet, `${joint}-1b`, `${splice}.2`, "GN", 1.5);
  wire(sheet, `${splice}.3`, `${lamp}.1`, "GN/WH", 0.75);
  wire(sheet, `${splice}.1`, `${motor}.1`, "GN/YE", 0.75);
  wire(sheet, `${lamp}.2`, `${ground}.stud`, "BN", 0.75);
  wire(sheet, `${motor}.2`, `${other}.stud`, "BN", 0.75);
}
