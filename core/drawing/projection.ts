/** A spot as x to the right and y down: pixels of a picture, or millimetres of a page. */
export type Corner = readonly [x: number, y: number];
/** Four corners clockwise as one sees them: top left, top right, bottom right, bottom left of what they bound. */
export type Quad = readonly [Corner, Corner, Corner, Corner];

/**
 * A projective map of the plane, 3 by 3, row by row: [x, y, 1] times it gives [u, v, w], and the spot is [u / w, v / w].
 * Straight lines stay straight, as in a photograph of a flat sheet.
 */
export type Projection = readonly [number, number, number, number, number, number, number, number, number];

/** Corners of the unit square, to which every four corners are brought. */
const UNIT: Quad = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];

/** A rectangle as four corners, from its top left. */
export function rectangle(x: number, y: number, width: number, height: number): Quad {
  return eachCorner(UNIT, ([across, down]) => [x + across * width, y + down * height]);
}

/**
 * Whether four corners go clockwise round a convex outline, every three of them spanning a triangle of at least so many
 * square units: only then does a sheet lie there without a fold and not seen from behind.
 */
export function isUnfolded(quad: Quad, leastArea: number): boolean {
  return quad.every((corner, index) => {
    const [ahead, back] = [quad[(index + 1) % 4]!, quad[(index + 3) % 4]!];
    return crossOf(corner, ahead, back) / 2 >= leastArea;
  });
}

function crossOf([x, y]: Corner, [ax, ay]: Corner, [bx, by]: Corner): number {
  return (ax - x) * (by - y) - (ay - y) * (bx - x);
}

/** The one projective map that takes four corners to four others; both must be unfolded. */
export function projectionOf(from: Quad, to: Quad): Projection {
  return times(ofUnit(to), inverse(ofUnit(from)));
}

/**
 * The map of the unit square onto four corners, in closed form (Heckbert, "Fundamentals of texture mapping and image
 * warping", 1989, section 2.2.3).
 */
function ofUnit([[x0, y0], [x1, y1], [x2, y2], [x3, y3]]: Quad): Projection {
  const [sumX, sumY] = [x0 - x1 + x2 - x3, y0 - y1 + y2 - y3];
  const [dx1, dx2, dy1, dy2] = [x1 - x2, x3 - x2, y1 - y2, y3 - y2];
  const det = dx1 * dy2 - dx2 * dy1;
  const g = (sumX * dy2 - dx2 * sumY) / det;
  const h = (dx1 * sumY - sumX * dy1) / det;
  return [x1 - x0 + g * x1, x3 - x0 + h * x3, x0, y1 - y0 + g * y1, y3 - y0 + h * y3, y0, g, h, 1];
}

/** The map that undoes another one: its adjugate, since a projective map means the same times any number. */
export function inverse([a, b, c, d, e, f, g, h, i]: Projection): Projection {
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
}

/** First the second map, then the first. */
function times(one: Projection, other: Projection): Projection {
  const cell = (row: number, column: number): number =>
    one[row * 3]! * other[column]! + one[row * 3 + 1]! * other[column + 3]! + one[row * 3 + 2]! * other[column + 6]!;
  return [0, 1, 2].flatMap((row) => [0, 1, 2].map((column) => cell(row, column))) as unknown as Projection;
}

/** Where a map takes a spot; beyond the line that goes to infinity the result lies on the wrong side, and on it nowhere. */
export function projected([a, b, c, d, e, f, g, h, i]: Projection, [x, y]: Corner): Corner {
  const w = g * x + h * y + i;
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/** Four corners, each where a map takes it. */
export function mappedQuad(map: Projection, quad: Quad): Quad {
  return eachCorner(quad, (corner) => projected(map, corner));
}

/** Four corners, so far to the right and down. */
export function moved(quad: Quad, dx: number, dy: number): Quad {
  return eachCorner(quad, ([x, y]) => [x + dx, y + dy]);
}

/** Four corners, a quarter clockwise or back round the middle of their box; each stays the corner of the picture that it was. */
export function turned(quad: Quad, quarters: 1 | -1): Quad {
  const [cx, cy] = middleOf(quad);
  return eachCorner(quad, ([x, y]) => [cx - quarters * (y - cy), cy + quarters * (x - cx)]);
}

/** Four corners, so many times as far from the middle of their box. */
export function scaled(quad: Quad, factor: number): Quad {
  const [cx, cy] = middleOf(quad);
  return eachCorner(quad, ([x, y]) => [cx + (x - cx) * factor, cy + (y - cy) * factor]);
}

/** Each corner changed in the same way. */
export function eachCorner(quad: Quad, change: (corner: Corner) => Corner): Quad {
  return quad.map(change) as unknown as Quad;
}

/** The middle of the box around four corners. */
function middleOf(quad: Quad): Corner {
  const { left, top, right, bottom } = boxAround(quad);
  return [(left + right) / 2, (top + bottom) / 2];
}

/** The least upright box around spots. */
export function boxAround(spots: readonly Corner[]): {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
} {
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}
