import type { GridUnits } from "../base/units.ts";
import { strokesOf } from "./ink.ts";
import type { ArcMark, BoxMark, CircleMark, LineMark, Mark, Role, Spot, TextMark } from "./mark.ts";
import { distanceToPath, isInside } from "./path.ts";
import { gridUnitsOf } from "./scale.ts";
import { ASCENT, DESCENT, pointsToGrid, textWidth } from "./type.ts";

/** The width of type and its breaking into lines belong to measuring too, and are had from here. */
export { textWidth } from "./type.ts";
export { wrapText } from "./wrap.ts";

/** The upright box round something drawn, in grid units. */
export interface Bounds {
  readonly left: GridUnits;
  readonly top: GridUnits;
  readonly right: GridUnits;
  readonly bottom: GridUnits;
}

/** The box round the ink of a mark, weight of its line included. Type counts from the tallest letter to the lowest. */
export function boundsOf(mark: Mark): Bounds {
  switch (mark.mark) {
    case "line":
      return grown(boundsOfSpots(mark.spots), reachOf(mark));
    case "circle":
      return grown(boundsOfSpots([mark.at]), mark.radius + reachOf(mark));
    case "arc":
      return grown(boundsOfSpots(arcSpots(mark)), reachOf(mark));
    case "box":
    case "swatch":
      return grown(boundsOfSpots([mark.at, farCorner(mark)]), mark.mark === "box" ? reachOf(mark) : inkReach("swatch"));
    case "text":
      return mark.turn ? boundsOfSpots(textCorners(mark)) : uprightText(mark);
  }
}

/** The box round two boxes. */
export function boxRound(one: Bounds, other: Bounds): Bounds {
  return {
    left: Math.min(one.left, other.left),
    top: Math.min(one.top, other.top),
    right: Math.max(one.right, other.right),
    bottom: Math.max(one.bottom, other.bottom),
  };
}

/** The box round several marks; undefined where there are none. */
export function boundsOfAll(marks: readonly Mark[]): Bounds | undefined {
  return marks.length === 0 ? undefined : marks.map(boundsOf).reduce(boxRound);
}

/** Distance from a spot to the nearest ink of a mark, in grid units; 0 on it. The inside of a body counts as ink. */
export function distanceTo(mark: Mark, spot: Spot): GridUnits {
  switch (mark.mark) {
    case "line":
      if (mark.closed && isSolid(mark) && isInside(mark.spots, spot)) return 0;
      return beyond(distanceToPath(mark.spots, spot, mark.closed), reachOf(mark));
    case "circle": {
      const outside = Math.hypot(spot.x - mark.at.x, spot.y - mark.at.y) - mark.radius;
      return beyond(isSolid(mark) ? outside : Math.abs(outside), reachOf(mark));
    }
    case "arc":
      return beyond(distanceToArc(mark, spot), reachOf(mark));
    case "box":
      return beyond(distanceToBox(mark, farCorner(mark), spot, isSolid(mark)), reachOf(mark));
    case "swatch":
      return distanceToBox(mark, farCorner(mark), spot, true);
    case "text": {
      const { left, top, right, bottom } = uprightText(mark);
      const level = mark.turn ? turned(spot, mark.at, -mark.turn) : spot;
      return distanceToBox({ at: { x: left, y: top } }, { x: right, y: bottom }, level, true);
    }
  }
}

type Inked = LineMark | CircleMark | ArcMark | BoxMark;

/** Outlines of a sheet, not of a thing: what lies inside them is not hit through them. */
const HOLLOW: readonly Role[] = ["frame", "frame-heavy", "caution", "table", "rule", "rule-fine", "rule-dotted"];

function isSolid(mark: LineMark | CircleMark | BoxMark): boolean {
  return mark.filled === true || !HOLLOW.includes(mark.role);
}

const reaches = new Map<Role, { readonly line: GridUnits; readonly filled: GridUnits }>();

/** How far ink reaches to the side of the geometry, as a line and where filled. Sizes are the same in all palettes. */
function reachesOf(role: Role) {
  const known = reaches.get(role);
  if (known !== undefined) return known;
  const widths = strokesOf(role, "black").strokes.map(({ width, offset = 0 }) => width / 2 + Math.abs(offset));
  const { fill, strokes } = strokesOf(role, "light");
  const line = gridUnitsOf(Math.max(0, ...widths));
  const made = { line, filled: fill === strokes[0]?.colour ? 0 : line };
  reaches.set(role, made);
  return made;
}

function inkReach(role: Role): GridUnits {
  return reachesOf(role).line;
}

function reachOf(mark: Inked): GridUnits {
  const { line, filled } = reachesOf(mark.role);
  return "filled" in mark && mark.filled === true ? filled : line;
}

function beyond(distance: GridUnits, reach: GridUnits): GridUnits {
  return Math.max(0, distance - reach);
}

/** The box round spots, of which there is at least one. */
export function boundsOfSpots(spots: readonly Spot[]): Bounds {
  let [left, top, right, bottom] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const { x, y } of spots) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return { left, top, right, bottom };
}

function grown({ left, top, right, bottom }: Bounds, by: GridUnits): Bounds {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

function farCorner(mark: { readonly at: Spot; readonly width: GridUnits; readonly height: GridUnits }): Spot {
  return { x: mark.at.x + mark.width, y: mark.at.y + mark.height };
}

// ---------------------------------------------------------------- arcs

/** Degrees from the start of the arc to its end, clockwise, above 0 and at most 360. */
export function arcSweep(from: number, to: number): number {
  const sweep = (((to - from) % 360) + 360) % 360;
  return sweep === 0 ? 360 : sweep;
}

function onCircle(mark: ArcMark, degrees: number): Spot {
  const radians = (degrees * Math.PI) / 180;
  return { x: mark.at.x + mark.radius * Math.cos(radians), y: mark.at.y + mark.radius * Math.sin(radians) };
}

/** Ends of the arc and the quarter points it passes. */
function arcSpots(mark: ArcMark): readonly Spot[] {
  const sweep = arcSweep(mark.from, mark.to);
  const quarters = [0, 90, 180, 270].filter((quarter) => arcSweep(mark.from, quarter) < sweep);
  return [mark.from, mark.to, ...quarters].map((degrees) => onCircle(mark, degrees));
}

function distanceToArc(mark: ArcMark, spot: Spot): GridUnits {
  const degrees = (Math.atan2(spot.y - mark.at.y, spot.x - mark.at.x) * 180) / Math.PI;
  const sweep = arcSweep(mark.from, mark.to);
  if (sweep === 360 || arcSweep(mark.from, degrees) <= sweep) {
    return Math.abs(Math.hypot(spot.x - mark.at.x, spot.y - mark.at.y) - mark.radius);
  }
  const ends = [onCircle(mark, mark.from), onCircle(mark, mark.to)];
  return Math.min(...ends.map((end) => Math.hypot(spot.x - end.x, spot.y - end.y)));
}

// ---------------------------------------------------------------- boxes and type

function distanceToBox({ at }: { readonly at: Spot }, far: Spot, spot: Spot, solid: boolean): GridUnits {
  const dx = Math.max(at.x - spot.x, spot.x - far.x);
  const dy = Math.max(at.y - spot.y, spot.y - far.y);
  if (dx <= 0 && dy <= 0) return solid ? 0 : Math.min(-dx, -dy);
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0));
}

/** The box of the type before it is turned. */
function uprightText({ text, at, points, weight, anchor }: TextMark): Bounds {
  const width = textWidth(text, points, weight);
  const left = at.x - (anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width);
  const size = pointsToGrid(points);
  return { left, top: at.y - ASCENT * size, right: left + width, bottom: at.y + DESCENT * size };
}

function textCorners(mark: TextMark): readonly Spot[] {
  const { left, top, right, bottom } = uprightText(mark);
  const corners = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  return corners.map((corner) => turned(corner, mark.at, mark.turn ?? 0));
}

/** The spot turned clockwise about `centre`. */
function turned(spot: Spot, centre: Spot, degrees: number): Spot {
  const radians = (degrees * Math.PI) / 180;
  const [dx, dy] = [spot.x - centre.x, spot.y - centre.y];
  return {
    x: centre.x + dx * Math.cos(radians) - dy * Math.sin(radians),
    y: centre.y + dx * Math.sin(radians) + dy * Math.cos(radians),
  };
}

/** The shortest way between two boxes; none where they touch. */
export function gapBetween(one: Bounds, other: Bounds): GridUnits {
  const across = Math.max(0, other.left - one.right, one.left - other.right);
  const down = Math.max(0, other.top - one.bottom, one.top - other.bottom);
  return Math.hypot(across, down);
}
