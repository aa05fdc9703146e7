import type { WireState } from "../base/states.ts";
import type { GridUnits } from "../base/units.ts";
import type { Mark, Role, Spot } from "./mark.ts";
import { offsetPath } from "./path.ts";
import { gridUnitsOf } from "./scale.ts";

/** Usual width of a state glyph: 2.8 mm. */
export const GLYPH_WIDTH: GridUnits = gridUnitsOf(2.8);

/** How far the middle of a hollow triangle's edge lies inside the filled one: the outline then fills nearly its room. */
const INSET = gridUnitsOf(0.1);
const BAR_GAP = gridUnitsOf(0.5);
const BAR_HEIGHT = gridUnitsOf(0.5);
const CHEVRON_EDGE = gridUnitsOf(0.25);

/**
 * The glyph of a wire state, its centre at `at`: filled triangle up or down where the path is firm, hollow through a
 * load, diamond, ring, cross, question mark. `alwaysFed` puts the bar under it.
 */
export function glyphMarks(
  state: WireState,
  at: Spot,
  options: { readonly width?: GridUnits; readonly alwaysFed?: boolean; readonly of?: string } = {},
): readonly Mark[] {
  const { width = GLYPH_WIDTH, alwaysFed = false, of } = options;
  const marks = [...SHAPES[state](at, width / 2)];
  if (alwaysFed) marks.push(fedBar(state, at, width));
  return of === undefined ? marks : marks.map((mark) => ({ ...mark, of }));
}

/**
 * The chevron of current flowing, its centre at `at`, pointing `degrees` clockwise from rightwards, 3 x 2.2 mm with an
 * edge of paper round it. `state` gives it the hue of its wire; without one it is ink.
 */
export function chevronMarks(at: Spot, degrees: number, state?: WireState, of?: string): readonly Mark[] {
  const outline: readonly (readonly [number, number])[] = [
    [1.5, 0],
    [-1.5, 1.1],
    [-0.7, 0],
    [-1.5, -1.1],
  ];
  const radians = (degrees * Math.PI) / 180;
  const spots = outline.map(([along, across]) => ({
    x: at.x + gridUnitsOf(along * Math.cos(radians) - across * Math.sin(radians)),
    y: at.y + gridUnitsOf(along * Math.sin(radians) + across * Math.cos(radians)),
  }));
  const role: Role = state ? `glyph-${state}` : "chevron";
  const mark = (role: Role, spots: readonly Spot[]): Mark => ({
    mark: "line",
    spots,
    role,
    closed: true,
    filled: true,
    ...(of !== undefined && { of }),
  });
  return [mark("paper", offsetPath(spots, -CHEVRON_EDGE, true)), mark(role, spots)];
}

/** The sign of a ground at the body: a level line under `at` with three slanting strokes, 5.6 mm wide. */
export function chassisMarks(at: Spot, role: Role = "symbol", of?: string): readonly Mark[] {
  const stroke = (...spots: readonly Spot[]): Mark => ({
    mark: "line",
    spots,
    role,
    ...(of !== undefined && { of }),
  });
  const half = gridUnitsOf(2.8);
  const drop = gridUnitsOf(2.1);
  const lean = gridUnitsOf(1.4);
  const slants = [-half + lean, 0 + lean / 2, half].map((x) =>
    stroke({ x: at.x + x, y: at.y }, { x: at.x + x - lean, y: at.y + drop }),
  );
  return [stroke({ x: at.x - half, y: at.y }, { x: at.x + half, y: at.y }), ...slants];
}

type Shape = (at: Spot, half: GridUnits) => readonly Mark[];

const SHAPES: Readonly<Record<WireState, Shape>> = {
  powered: (at, half) => [triangle("glyph-powered", at, half, -1, true)],
  "powered-through-load": (at, half) => [triangle("glyph-powered-through-load", at, half, -1, false)],
  grounded: (at, half) => [triangle("glyph-grounded", at, half, 1, true)],
  "grounded-through-load": (at, half) => [triangle("glyph-grounded-through-load", at, half, 1, false)],
  between: (at, half) => [
    outline("glyph-between", true, [at.x, at.y - half], [at.x + half, at.y], [at.x, at.y + half], [at.x - half, at.y]),
  ],
  floating: (at, half) => [{ mark: "circle", at, radius: half * 0.8, role: "glyph-floating" }],
  clash: (at, half) => {
    const arm = half * 0.8;
    return [
      stroke("glyph-clash", [at.x - arm, at.y - arm], [at.x + arm, at.y + arm]),
      stroke("glyph-clash", [at.x - arm, at.y + arm], [at.x + arm, at.y - arm]),
    ];
  },
  undecided: questionMark,
};

/** Drawn by hand and not as type, so that it looks the same in every painter and keeps the hue that type may not have. */
function questionMark(at: Spot, half: GridUnits): readonly Mark[] {
  const radius = half * 0.46;
  const eye = { x: at.x, y: at.y - half * 0.42 };
  return [
    { mark: "arc", at: eye, radius, from: 190, to: 420, role: "glyph-undecided" },
    stroke(
      "glyph-undecided",
      [eye.x + radius * 0.5, eye.y + radius * 0.866],
      [at.x, at.y + half * 0.2],
      [at.x, at.y + half * 0.42],
    ),
    {
      mark: "circle",
      at: { x: at.x, y: at.y + half * 0.86 },
      radius: half * 0.19,
      role: "glyph-undecided",
      filled: true,
    },
  ];
}

function triangle(role: Role, at: Spot, half: GridUnits, point: 1 | -1, filled: boolean): Mark {
  const rise = half * 0.9 * point;
  const corners: readonly (readonly [number, number])[] = [
    [at.x - half, at.y - rise],
    [at.x, at.y + rise],
    [at.x + half, at.y - rise],
  ];
  const whole = outline(role, filled, ...corners);
  return filled ? whole : { ...whole, spots: offsetPath(whole.spots, -INSET * point, true) };
}

function outline(role: Role, filled: boolean, ...xy: readonly (readonly [number, number])[]) {
  return { ...stroke(role, ...xy), closed: true, filled };
}

function stroke(role: Role, ...xy: readonly (readonly [number, number])[]) {
  return { mark: "line" as const, spots: xy.map(([x, y]) => ({ x, y })), role };
}

function fedBar(state: WireState, at: Spot, width: GridUnits): Mark {
  const top = at.y + (width / 2) * 0.9 + BAR_GAP;
  return {
    mark: "box",
    at: { x: at.x - width / 2, y: top },
    width,
    height: BAR_HEIGHT,
    role: `glyph-${state}`,
    filled: true,
  };
}
