import type { Spot } from "../../core/drawing/mark.ts";
import { EDGE, type PaintedMark } from "./painted.ts";
import { type PaperBox, type Pixel, paperBox, type Size } from "./viewport.ts";

/** Side of a tile, in pixels of the canvas. */
const SIDE = 32;
/** Where more than this share of a canvas is to be laid down anew, all of it is. */
const MOST = 0.5;
/** Strokes that are fitted to pixels reach so many beyond their box. */
const BEYOND = 4;

/** Millimetres of paper in pixels of a canvas: pixels = millimetres * scale + offset. */
export interface OnCanvas {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** The tiles of a canvas on which something is to be laid down anew. */
export class Tiles {
  private readonly columns: number;
  private readonly rows: number;
  private readonly marked: Uint8Array;
  private readonly on: OnCanvas;

  constructor({ width, height }: Size, on: OnCanvas) {
    this.columns = Math.ceil(width / SIDE);
    this.rows = Math.ceil(height / SIDE);
    this.marked = new Uint8Array(this.columns * this.rows);
    this.on = on;
  }

  /** Marks the tiles under a mark of the drawing; under a line those along it. */
  add({ mark, box }: PaintedMark): void {
    if (mark.mark !== "line" || mark.filled || mark.spots.length < 3) {
      this.addBox(box);
      return;
    }
    for (const piece of piecesOf(mark.closed ? [...mark.spots, mark.spots[0]!] : mark.spots)) this.addBox(piece);
  }

  /** Marks the tiles that are bare once all on the canvas has been shifted by so many pixels. */
  addBared({ x, y }: Pixel): void {
    const { columns, rows } = this;
    const [across, down] = [Math.ceil(Math.abs(x) / SIDE), Math.ceil(Math.abs(y) / SIDE)];
    if (x > 0) this.fill({ left: 0, top: 0, right: across - 1, bottom: rows - 1 });
    if (x < 0) this.fill({ left: columns - across - 1, top: 0, right: columns - 1, bottom: rows - 1 });
    if (y > 0) this.fill({ left: 0, top: 0, right: columns - 1, bottom: down - 1 });
    if (y < 0) this.fill({ left: 0, top: rows - down - 1, right: columns - 1, bottom: rows - 1 });
  }

  private addBox(box: PaperBox): void {
    this.fill(this.under(box));
  }

  /** Marks these columns and rows of tiles, as far as there are any. */
  private fill(tiles: PaperBox): void {
    const [left, top] = [Math.max(0, tiles.left), Math.max(0, tiles.top)];
    const [right, bottom] = [Math.min(this.columns - 1, tiles.right), Math.min(this.rows - 1, tiles.bottom)];
    for (let row = top; row <= bottom; row++) {
      if (right >= left) this.marked.fill(1, row * this.columns + left, row * this.columns + right + 1);
    }
  }

  /** True where so much is marked that all may as well be laid down. */
  get isMost(): boolean {
    return this.marked.reduce((sum, each) => sum + each, 0) > MOST * this.marked.length;
  }

  /** The box round all marked tiles, in millimetres of paper, with what strokes reach beyond theirs; one round nothing where none is. */
  get extent(): PaperBox {
    const { columns, rows, marked } = this;
    let [left, top, right, bottom] = [columns, rows, -1, -1];
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        if (marked[row * columns + column] === 0) continue;
        left = Math.min(left, column);
        right = Math.max(right, column);
        top = Math.min(top, row);
        bottom = Math.max(bottom, row);
      }
    }
    const { scale, x, y } = this.on;
    return {
      left: (left * SIDE - BEYOND - x) / scale,
      top: (top * SIDE - BEYOND - y) / scale,
      right: ((right + 1) * SIDE + BEYOND - x) / scale,
      bottom: ((bottom + 1) * SIDE + BEYOND - y) / scale,
    };
  }

  /** True where a box lies on a marked tile. */
  isUnder(box: PaperBox): boolean {
    const { left, top, right, bottom } = this.under(box);
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        if (this.marked[row * this.columns + column] === 1) return true;
      }
    }
    return false;
  }

  /** Adds the marked tiles to the path of a canvas whose unit is its pixel. */
  trace(canvas: CanvasRenderingContext2D): void {
    for (let row = 0; row < this.rows; row++) {
      for (let column = 0; column < this.columns; column++) {
        const from = column;
        while (column < this.columns && this.marked[row * this.columns + column] === 1) column++;
        if (column > from) canvas.rect(from * SIDE, row * SIDE, (column - from) * SIDE, SIDE);
      }
    }
  }

  /** The tiles under a box, none where it lies outside. */
  private under({ left, top, right, bottom }: PaperBox): PaperBox {
    const { scale, x, y } = this.on;
    const tile = (pixels: number): number => Math.floor(pixels / SIDE);
    return {
      left: Math.max(0, tile(left * scale + x - BEYOND)),
      top: Math.max(0, tile(top * scale + y - BEYOND)),
      right: Math.min(this.columns - 1, tile(right * scale + x + BEYOND)),
      bottom: Math.min(this.rows - 1, tile(bottom * scale + y + BEYOND)),
    };
  }
}

/** The boxes of the straight pieces of a line, in millimetres of paper. */
function piecesOf(spots: readonly Spot[]): readonly PaperBox[] {
  return spots.slice(1).map((to, index) => {
    const from = spots[index]!;
    const box = {
      left: Math.min(from.x, to.x),
      top: Math.min(from.y, to.y),
      right: Math.max(from.x, to.x),
      bottom: Math.max(from.y, to.y),
    };
    return paperBox(box, EDGE);
  });
}
