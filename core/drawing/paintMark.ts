import type { Ink, Palette, Stroke } from "./ink.ts";
import { strokesOf } from "./ink.ts";
import type { LineMark, Mark, TextMark } from "./mark.ts";
import { onPaper, type Paint, type PaperSpot, type Pen, penOf, type Run } from "./paint.ts";
import { dashPieces, offsetPath } from "./path.ts";
import { millimetresOf, POINT_MM } from "./scale.ts";
import { swatchPaints } from "./swatch.ts";

/**
 * The paints of one mark, in the order they are laid down. Empty where the mark has nothing to show. `fit` changes its
 * strokes, for a painter whose pixels are coarse.
 */
export function paintsOf(mark: Mark, palette: Palette, fit?: (stroke: Stroke) => Stroke): readonly Paint[] {
  if (mark.mark === "swatch") return swatchPaints(mark, palette);
  const plain = strokesOf(mark.role, palette);
  const ink = fit ? { ...plain, strokes: plain.strokes.map(fit) } : plain;
  switch (mark.mark) {
    case "line":
      return linePaints(mark, ink);
    case "circle": {
      const shape = { paint: "circle" as const, at: onPaper(mark.at), radius: millimetresOf(mark.radius) };
      return shapePaints(shape, ink, mark.filled === true);
    }
    case "box": {
      const [width, height] = [millimetresOf(mark.width), millimetresOf(mark.height)];
      const corner = Math.min(millimetresOf(mark.corner ?? 0), width / 2, height / 2);
      return shapePaints(
        { paint: "box" as const, at: onPaper(mark.at), width, height, corner },
        ink,
        mark.filled === true,
      );
    }
    case "arc": {
      const { from, to } = mark;
      const shape = { paint: "arc" as const, at: onPaper(mark.at), radius: millimetresOf(mark.radius), from, to };
      return ink.strokes.map((stroke) => ({ ...shape, pen: penOf(stroke) }));
    }
    case "text":
      return textPaints(mark, ink);
  }
}

/** What fills a shape and which strokes go round it: a filled one is outlined only in another colour than its fill. */
function coverOf(ink: Ink, filled: boolean): { readonly fill?: string; readonly strokes: readonly Stroke[] } {
  if (!filled) return { strokes: ink.strokes, ...(ink.ground && { fill: ink.ground }) };
  const strokes = ink.strokes.filter((stroke) => stroke.colour !== ink.fill);
  return { strokes, ...(ink.fill && { fill: ink.fill }) };
}

type CircleOrBox = Extract<Paint, { paint: "circle" | "box" }>;

function shapePaints(shape: CircleOrBox, ink: Ink, filled: boolean): readonly Paint[] {
  const { fill, strokes } = coverOf(ink, filled);
  const [first, ...others] = strokes;
  const paints: Paint[] = [];
  if (fill || first) paints.push({ ...shape, ...(fill && { fill }), ...(first && { pen: penOf(first) }) });
  for (const stroke of others) paints.push({ ...shape, pen: penOf(stroke) });
  return paints;
}

function linePaints(mark: LineMark, ink: Ink): readonly Paint[] {
  const closed = mark.closed === true;
  const spots = mark.spots.map(onPaper);
  if (spots.length < 2) return [];
  const { fill, strokes } = coverOf(ink, closed && mark.filled === true);
  const paints: Paint[] = closed && fill ? [{ paint: "lines", runs: [{ spots, closed }], fill }] : [];
  for (const stroke of strokes) paints.push({ paint: "lines", ...strokeRuns(spots, closed, stroke) });
  return paints;
}

/**
 * A dashed line set off to a side is cut into its dashes first, along the middle: so the dashes of a pair stay side by
 * side past a corner.
 */
function strokeRuns(
  spots: readonly PaperSpot[],
  closed: boolean,
  stroke: Stroke,
): { readonly runs: readonly Run[]; readonly pen: Pen } {
  const { offset, dash } = stroke;
  if (!offset) return { runs: [{ spots, closed }], pen: penOf(stroke) };
  if (!dash) return { runs: [{ spots: offsetPath(spots, offset, closed), closed }], pen: penOf(stroke) };
  const round = closed ? [...spots, spots[0]!] : spots;
  const runs = dashPieces(round, dash).map((piece) => ({ spots: offsetPath(piece, offset), closed: false }));
  return { runs, pen: { colour: stroke.colour, width: stroke.width, cap: stroke.cap } };
}

function textPaints(mark: TextMark, ink: Ink): readonly Paint[] {
  const { text, weight, anchor, turn = 0 } = mark;
  if (text === "" || !ink.fill) return [];
  const size = mark.points * POINT_MM;
  return [{ paint: "words", at: onPaper(mark.at), text, size, weight, anchor, turn, colour: ink.fill }];
}
