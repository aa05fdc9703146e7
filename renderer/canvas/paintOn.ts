import type { Paint, PaperSpot, Pen, Run } from "../../core/drawing/paint.ts";

/** Family in which the sheet is set; the same font as on paper, so that measured widths hold. */
export const SHEET_FONT = '"IBM Plex Sans Condensed"';

/**
 * Lays paints down on a canvas whose unit is a millimetre of paper, `pixels` of the screen wide. Nothing is decided here;
 * a paint says all there is.
 */
export function paintOn(canvas: CanvasRenderingContext2D, paints: readonly Paint[], pixels: number): void {
  for (const paint of paints) {
    if (paint.paint === "words") {
      layWords(canvas, paint);
      continue;
    }
    const shift = paint.pen ? halfPixel(firstOf(paint), paint.pen, pixels) : 0;
    if (shift !== 0) canvas.translate(shift, shift);
    canvas.beginPath();
    switch (paint.paint) {
      case "lines":
        for (const run of paint.runs) trace(canvas, run);
        break;
      case "circle":
        canvas.arc(paint.at.x, paint.at.y, paint.radius, 0, 2 * Math.PI);
        break;
      case "arc":
        canvas.arc(paint.at.x, paint.at.y, paint.radius, (paint.from * Math.PI) / 180, (paint.to * Math.PI) / 180);
        break;
      case "box":
        canvas.roundRect(paint.at.x, paint.at.y, paint.width, paint.height, paint.corner);
        break;
    }
    if (paint.fill) {
      canvas.fillStyle = paint.fill;
      canvas.fill();
    }
    if (paint.pen) stroke(canvas, paint.pen);
    if (shift !== 0) canvas.translate(-shift, -shift);
  }
}

/** A line of an odd number of pixels is sharp between two of them: half a pixel for one that runs on a whole one. */
function halfPixel({ x, y }: PaperSpot, { width }: Pen, pixels: number): number {
  const isOdd = Math.round(width * pixels) % 2 === 1;
  return isOdd && isWhole(x * pixels) && isWhole(y * pixels) ? 0.5 / pixels : 0;
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < 0.01;
}

function firstOf(paint: Exclude<Paint, { paint: "words" }>): PaperSpot {
  return paint.paint === "lines" ? (paint.runs[0]?.spots[0] ?? { x: 0, y: 0 }) : paint.at;
}

/**
 * Lays paints down one after the other like `paintOn`, but lines that follow one another with the same pen in one stroke.
 * What is begun is on the canvas once `end` is called.
 */
export class Strokes {
  private readonly canvas: CanvasRenderingContext2D;
  private readonly pixels: number;
  private pen: Pen | null = null;

  constructor(canvas: CanvasRenderingContext2D, pixels: number) {
    this.canvas = canvas;
    this.pixels = pixels;
  }

  lay(paints: readonly Paint[]): void {
    for (const paint of paints) {
      if (paint.paint === "lines" && paint.pen && !paint.fill) this.addLines(paint.runs, paint.pen, firstOf(paint));
      else {
        this.end();
        paintOn(this.canvas, [paint], this.pixels);
      }
    }
  }

  end(): void {
    if (this.pen) stroke(this.canvas, this.pen);
    this.pen = null;
  }

  private addLines(runs: readonly Run[], pen: Pen, first: PaperSpot): void {
    if (!this.pen || !isSamePen(this.pen, pen)) {
      this.end();
      this.canvas.beginPath();
      this.pen = pen;
    }
    const shift = halfPixel(first, pen, this.pixels);
    for (const run of runs) trace(this.canvas, run, shift);
  }
}

function isSamePen(one: Pen, other: Pen): boolean {
  return one.colour === other.colour && one.width === other.width && one.cap === other.cap && one.dash === other.dash;
}

function trace(canvas: CanvasRenderingContext2D, { spots, closed }: Run, shift = 0): void {
  spots.forEach(({ x, y }, index) => {
    if (index === 0) canvas.moveTo(x + shift, y + shift);
    else canvas.lineTo(x + shift, y + shift);
  });
  if (closed) canvas.closePath();
}

function stroke(canvas: CanvasRenderingContext2D, { colour, width, dash, cap }: Pen): void {
  canvas.strokeStyle = colour;
  canvas.lineWidth = width;
  canvas.setLineDash(dash ? [...dash] : []);
  canvas.lineCap = cap;
  canvas.lineJoin = cap === "round" ? "round" : "miter";
  canvas.stroke();
}

function layWords(canvas: CanvasRenderingContext2D, words: Extract<Paint, { paint: "words" }>): void {
  const { at, text, size, weight, anchor, turn, colour } = words;
  canvas.save();
  canvas.translate(at.x, at.y);
  if (turn !== 0) canvas.rotate((turn * Math.PI) / 180);
  canvas.font = `${weight} ${size}px ${SHEET_FONT}`;
  canvas.fontKerning = "none";
  // Advances as the table of widths has them, not rounded to pixels.
  canvas.textRendering = "geometricPrecision";
  canvas.textAlign = anchor === "middle" ? "center" : anchor;
  canvas.fillStyle = colour;
  canvas.fillText(text, 0, 0);
  canvas.restore();
}
