import type { Millimetres } from "../base/units.ts";
import type { Hatch } from "../trade/colourNames.ts";
import type { Paint, PaperSpot, Run } from "./paint.ts";

/** An area to hatch, in millimetres of paper. */
export interface Area {
  readonly at: PaperSpot;
  readonly width: Millimetres;
  readonly height: Millimetres;
}

/**
 * One set of lines or dots, laid out evenly from the middle of its area, so that a thin band shows it too. Lines `between`
 * stand where the rows and columns of a grid of dots meet; a grid with `pairs` has two rows at least.
 */
type Layer =
  | {
      readonly way: "level" | "upright";
      readonly pitch: Millimetres;
      readonly dashed?: boolean;
      readonly between?: boolean;
    }
  | { readonly way: "falling" | "rising"; readonly pitch: Millimetres; readonly dashed?: boolean }
  | {
      readonly way: "grid";
      readonly across: Millimetres;
      readonly down: Millimetres;
      readonly only?: "staggered" | "pairs";
    }
  | { readonly way: "lattice"; readonly pitch: Millimetres };

const LINE: Millimetres = 0.16;
const DOT: Millimetres = 0.28;
/** A line this long with round ends is a dot. */
const DOT_LENGTH: Millimetres = 0.01;
const DASH: readonly Millimetres[] = [0.65, 0.65];
const WIDE: Millimetres = 1.1;

const LAYERS: Readonly<Record<Exclude<Hatch, "solid">, readonly Layer[]>> = {
  empty: [],
  upright: [{ way: "upright", pitch: 0.7 }],
  level: [{ way: "level", pitch: 0.55 }],
  falling: [{ way: "falling", pitch: 0.6 }],
  rising: [{ way: "rising", pitch: 0.6 }],
  dots: [{ way: "grid", across: 0.8, down: 0.55, only: "staggered" }],
  crossed: [
    { way: "falling", pitch: 0.6 },
    { way: "rising", pitch: 0.6 },
  ],
  "level-dashes": [{ way: "level", pitch: 0.55, dashed: true }],
  "upright-dashes": [{ way: "upright", pitch: 0.7, dashed: true }],
  "upright-and-dots": [
    { way: "upright", pitch: 1.4, between: true },
    { way: "grid", across: 1.4, down: 0.85 },
  ],
  "falling-dashes": [{ way: "falling", pitch: 0.7, dashed: true }],
  "close-falling": [{ way: "falling", pitch: 0.36 }],
  "level-and-dots": [
    { way: "level", pitch: 0.85, between: true },
    { way: "grid", across: 0.9, down: 0.85, only: "pairs" },
  ],
  "close-level": [{ way: "level", pitch: 0.32 }],
  "wide-level": [{ way: "level", pitch: WIDE }],
  "rising-dashes": [{ way: "rising", pitch: 0.7, dashed: true }],
  "rising-and-dots": [
    { way: "rising", pitch: WIDE },
    { way: "lattice", pitch: WIDE },
  ],
  squares: [
    { way: "level", pitch: 0.7 },
    { way: "upright", pitch: 0.7 },
  ],
  "crossed-and-dots": [
    { way: "falling", pitch: WIDE },
    { way: "rising", pitch: WIDE },
    { way: "lattice", pitch: WIDE },
  ],
  "falling-and-dots": [
    { way: "falling", pitch: WIDE },
    { way: "lattice", pitch: WIDE },
  ],
};

/** The area filled for black ink alone: solid, or a ground of paper with a fine edge and the lines and dots of the hatch. */
export function hatchPaints(area: Area, hatch: Hatch, ink: string, paper: string): readonly Paint[] {
  const ground = { paint: "box" as const, at: area.at, width: area.width, height: area.height, corner: 0 };
  if (hatch === "solid") return [{ ...ground, fill: ink }];
  const layers = LAYERS[hatch].map((layer) => layerPaint(layer, area, ink));
  return [{ ...ground, fill: paper, pen: { colour: ink, width: LINE, cap: "butt" } }, ...layers];
}

function layerPaint(layer: Layer, area: Area, colour: string): Paint {
  if (layer.way === "grid" || layer.way === "lattice") {
    const spots = layer.way === "grid" ? gridSpots(layer, area) : latticeSpots(layer.pitch, area);
    const runs = spots.map(({ x, y }) => run(area, x - DOT_LENGTH / 2, y, x + DOT_LENGTH / 2, y));
    return { paint: "lines", runs, pen: { colour, width: DOT, cap: "round" } };
  }
  const pen = { colour, width: LINE, cap: "butt" as const, ...(layer.dashed && { dash: DASH }) };
  return { paint: "lines", runs: lines(layer, area), pen };
}

function run({ at }: Area, x1: Millimetres, y1: Millimetres, x2: Millimetres, y2: Millimetres): Run {
  const spots = [
    { x: at.x + x1, y: at.y + y1 },
    { x: at.x + x2, y: at.y + y2 },
  ];
  return { spots, closed: false };
}

type LineLayer = Exclude<Layer, { way: "grid" | "lattice" }>;

function lines(layer: LineLayer, area: Area): readonly Run[] {
  const { width, height } = area;
  if (layer.way === "level") {
    const places = layer.between ? meetings(height, layer.pitch, 2) : evenly(height, layer.pitch);
    return places.map((y) => run(area, 0, y, width, y));
  }
  if (layer.way === "upright") {
    const places = layer.between ? meetings(width, layer.pitch) : evenly(width, layer.pitch);
    return places.map((x) => run(area, x, 0, x, height));
  }
  return slants(layer.pitch, area, layer.way === "falling");
}

/** Lines that keep x + y, none through the middle itself; falling ones are the same, upside down. */
function slants(pitch: Millimetres, area: Area, falling: boolean): readonly Run[] {
  const { width, height } = area;
  const step = pitch * Math.SQRT2;
  const count = Math.floor((width + height) / 2 / step + 0.5);
  return Array.from({ length: 2 * count }, (_, i) => {
    const sum = (width + height) / 2 + (i - count + 0.5) * step;
    const left = Math.max(0, sum - height);
    const right = Math.min(width, sum);
    const y = (x: Millimetres): Millimetres => (falling ? height - (sum - x) : sum - x);
    return run(area, left, y(left), right, y(right));
  });
}

function countOf(length: Millimetres, pitch: Millimetres, least = 1): number {
  return Math.max(least, Math.round(length / pitch));
}

/** The middles of equal shares of the length, each about one pitch long. */
function evenly(length: Millimetres, pitch: Millimetres, least = 1): readonly Millimetres[] {
  const count = countOf(length, pitch, least);
  return Array.from({ length: count }, (_, i) => (length * (i + 0.5)) / count);
}

/** Where those shares meet. */
function meetings(length: Millimetres, pitch: Millimetres, least = 1): readonly Millimetres[] {
  const count = countOf(length, pitch, least);
  return Array.from({ length: count - 1 }, (_, i) => (length * (i + 1)) / count);
}

function gridSpots(
  { across, down, only }: Extract<Layer, { way: "grid" }>,
  { width, height }: Area,
): readonly PaperSpot[] {
  const columns = evenly(width, across);
  const shift = width / columns.length / 4;
  return evenly(height, down, only === "pairs" ? 2 : 1).flatMap((y, row) => {
    const aside = only === "staggered" ? (row % 2 === 0 ? -shift : shift) : 0;
    return columns.map((x) => ({ x: x + aside, y }));
  });
}

/** The middles between slanting lines of this pitch, one of them in the middle of the area. */
function latticeSpots(pitch: Millimetres, { width, height }: Area): readonly PaperSpot[] {
  const half = pitch * Math.SQRT1_2;
  const rows = Math.floor((height / 2 - DOT) / half);
  const columns = Math.floor((width / 2 - DOT) / half);
  const spots: PaperSpot[] = [];
  for (let row = -rows; row <= rows; row++) {
    for (let column = -columns; column <= columns; column++) {
      const isMiddle = (row + column) % 2 === 0;
      if (isMiddle) spots.push({ x: width / 2 + column * half, y: height / 2 + row * half });
    }
  }
  return spots;
}
