import type { Paint, PaperSpot, Pen } from "../../core/drawing/paint.ts";
import { dashPieces, distanceToPath, isInside } from "../../core/drawing/path.ts";

/** A painter for tests: the colour that the paints leave at a spot of paper, undefined where there is none. Type is left out. */
export function colourAt(paints: readonly Paint[], spot: PaperSpot): string | undefined {
  let colour: string | undefined;
  for (const paint of paints) {
    if (paint.paint === "words") continue;
    if (paint.fill && isWithin(paint, spot)) colour = paint.fill;
    if (paint.pen && isOnLine(paint, paint.pen, spot)) colour = paint.pen.colour;
  }
  return colour;
}

/** Which of the spots the paints leave in this colour. */
export function inkAt(paints: readonly Paint[], colour: string, spots: readonly PaperSpot[]): readonly boolean[] {
  return spots.map((spot) => colourAt(paints, spot) === colour);
}

/** Share of the spots where two inkings differ, among those where either has ink. */
export function differenceOf(a: readonly boolean[], b: readonly boolean[]): number {
  const either = a.filter((ink, i) => ink || b[i]).length;
  return a.filter((ink, i) => ink !== b[i]).length / either;
}

/** A grid of spots over an area, `step` apart. */
export function gridOf(left: number, top: number, right: number, bottom: number, step: number): readonly PaperSpot[] {
  const spots: PaperSpot[] = [];
  for (let y = top + step / 2; y < bottom; y += step) {
    for (let x = left + step / 2; x < right; x += step) spots.push({ x, y });
  }
  return spots;
}

type Shape = Exclude<Paint, { paint: "words" }>;

function isWithin(shape: Shape, spot: PaperSpot): boolean {
  if (shape.paint === "circle") return Math.hypot(spot.x - shape.at.x, spot.y - shape.at.y) <= shape.radius;
  if (shape.paint === "lines") return shape.runs.some((run) => run.closed && isInside(run.spots, spot));
  return shape.paint === "box" && isInside(cornersOf(shape), spot);
}

function isOnLine(shape: Shape, pen: Pen, spot: PaperSpot): boolean {
  if (shape.paint === "circle") {
    return Math.abs(Math.hypot(spot.x - shape.at.x, spot.y - shape.at.y) - shape.radius) <= pen.width / 2;
  }
  const runs = shape.paint === "lines" ? shape.runs : [{ spots: outlineOf(shape), closed: shape.paint === "box" }];
  return runs.some(({ spots, closed }) => {
    const pieces = pen.dash ? dashPieces(spots, pen.dash) : [spots];
    return pieces.some((piece) => distanceToPath(piece, spot, closed && !pen.dash) <= pen.width / 2);
  });
}

function outlineOf(shape: Extract<Paint, { paint: "arc" | "box" }>): readonly PaperSpot[] {
  if (shape.paint === "box") return cornersOf(shape);
  return Array.from({ length: 49 }, (_, i) => {
    const sweep = (((shape.to - shape.from) % 360) + 360) % 360;
    const radians = ((shape.from + (sweep * i) / 48) * Math.PI) / 180;
    return { x: shape.at.x + shape.radius * Math.cos(radians), y: shape.at.y + shape.radius * Math.sin(radians) };
  });
}

function cornersOf({ at, width, height }: Extract<Paint, { paint: "box" }>): readonly PaperSpot[] {
  return [at, { x: at.x + width, y: at.y }, { x: at.x + width, y: at.y + height }, { x: at.x, y: at.y + height }];
}
