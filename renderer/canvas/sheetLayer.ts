import { Layer } from "konva/lib/Layer.js";
import { Shape } from "konva/lib/Shape.js";
import { type Dimming, inkShare } from "./dimming.ts";
import { isOff, type Painted, type PaintedMark } from "./painted.ts";
import { Strokes } from "./paintOn.ts";
import { Tiles } from "./tiles.ts";
import { type PaperBox, type Pixel, type Size, seenBox, type Viewport } from "./viewport.ts";

/** Where more marks than this wait to be laid down anew, all are. */
const MOST_WAITING = 20_000;

/**
 * The layer with all marks of the drawing: one shape, no hit graph. Where only some marks are altered only the tiles
 * under them are laid down anew. Its numbers are kept for whoever measures.
 */
export class SheetLayer {
  readonly layer = new Layer({ listening: false, clearBeforeDraw: false });
  /** How often the drawing was laid down, how many marks were the last time, and what that took, milliseconds. */
  draws = 0;
  laid = 0;
  lastMs = 0;
  private painted: Painted | null = null;
  private hidden: ReadonlySet<PaintedMark> = new Set();
  private dimming: Dimming | null = null;
  /** Marks under which the canvas is no longer right; null where all of it is not. */
  private altered: readonly PaintedMark[] | null = null;
  private view: Viewport = { scale: 1, x: 0, y: 0 };
  private window: Size = { width: 1, height: 1 };
  /** Where the corner of the paper was when the canvas was last laid. */
  private laidAt: Pixel = { x: 0, y: 0 };

  constructor() {
    const shape = new Shape({ listening: false, sceneFunc: (context) => this.lay(context._context) });
    this.layer.add(shape);
  }

  /** Shows a drawing that follows the one shown, from the next frame on. */
  show(painted: Painted): void {
    const { altered } = painted;
    this.painted = painted;
    if (altered) this.alter([...altered.gone, ...altered.come]);
    else this.redraw();
  }

  /** Leaves these marks out, because something else draws them for now. */
  hide(marks: ReadonlySet<PaintedMark>): void {
    this.alter([...this.hidden, ...marks]);
    this.hidden = marks;
  }

  /** Lays all that is not to be shown in full down with less ink; null lays everything down in full. */
  dim(dimming: Dimming | null): void {
    if (dimming?.full === this.dimming?.full && dimming?.palette === this.dimming?.palette) return;
    this.dimming = dimming;
    this.redraw();
  }

  /** Moves and zooms the layer itself, onto whole pixels; the marks stay what they are. */
  moveTo(view: Viewport, window: Size): void {
    const isZoomed = view.scale !== this.view.scale;
    const isResized = window.width !== this.window.width || window.height !== this.window.height;
    this.view = view;
    this.window = window;
    const whole = (value: number): number => Math.round(value * this.ratio) / this.ratio;
    this.layer.setAttrs({ x: whole(view.x), y: whole(view.y), scaleX: view.scale, scaleY: view.scale });
    if (isZoomed || isResized) this.redraw();
    else this.layer.batchDraw();
  }

  /** Lays all of it down anew in the next frame. */
  redraw(): void {
    this.altered = null;
    this.layer.batchDraw();
  }

  private alter(marks: readonly PaintedMark[]): void {
    if (this.altered) {
      // A window out of sight draws nothing, while lamps go on flashing in it.
      const waiting = this.altered.length + marks.length;
      this.altered = waiting > MOST_WAITING ? null : [...this.altered, ...marks];
    }
    this.layer.batchDraw();
  }

  private lay(canvas: CanvasRenderingContext2D): void {
    const begun = performance.now();
    const tiles = this.alteredTiles(canvas);
    this.altered = [];
    this.laidAt = this.at;
    this.laid = 0;
    canvas.save();
    clear(canvas, tiles);
    const seen = common(seenBox(this.view, this.window), tiles?.extent);
    const drawing = this.painted ?? NOTHING;
    const { marks } = drawing;
    const strokes = new Strokes(canvas, drawing.pixels);
    let ink = 1;
    for (let index = 0; index < marks.length; index++) {
      if (isOff(drawing, index, seen)) continue;
      const painted = marks[index]!;
      if (tiles?.isUnder(painted.box) === false || this.hidden.has(painted)) continue;
      const share = inkShare(painted.mark, this.dimming);
      if (share !== ink) {
        strokes.end();
        canvas.globalAlpha = share;
        ink = share;
      }
      strokes.lay(painted.paints);
      this.laid++;
    }
    strokes.end();
    canvas.restore();
    this.draws++;
    this.lastMs = performance.now() - begun;
  }

  /** The tiles that are to be laid down anew; null for all. */
  private alteredTiles(context: CanvasRenderingContext2D): Tiles | null {
    if (this.altered === null) return null;
    const at = this.at;
    const tiles = new Tiles(context.canvas, { ...at, scale: this.view.scale * this.ratio });
    for (const mark of this.altered) tiles.add(mark);
    const shift = { x: at.x - this.laidAt.x, y: at.y - this.laidAt.y };
    tiles.addBared(shift);
    if (tiles.isMost) return null;
    if (shift.x !== 0 || shift.y !== 0) shiftAll(context, shift);
    return tiles;
  }

  private get ratio(): number {
    return this.layer.getCanvas().getPixelRatio();
  }

  /** Where the corner of the paper lies on the canvas, in its whole pixels. */
  private get at(): Pixel {
    return { x: Math.round(this.layer.x() * this.ratio), y: Math.round(this.layer.y() * this.ratio) };
  }
}

/** Shifts all that is on a canvas, and clears what that leaves bare. */
function shiftAll(canvas: CanvasRenderingContext2D, { x, y }: Pixel): void {
  canvas.save();
  canvas.resetTransform();
  canvas.globalCompositeOperation = "copy";
  canvas.drawImage(canvas.canvas, x, y);
  canvas.restore();
}

/** Clears these tiles and keeps what follows to them; all of the canvas where there are none. */
function clear(canvas: CanvasRenderingContext2D, tiles: Tiles | null): void {
  const now = canvas.getTransform();
  canvas.resetTransform();
  if (tiles) {
    canvas.beginPath();
    tiles.trace(canvas);
    canvas.clip();
  }
  canvas.clearRect(0, 0, canvas.canvas.width, canvas.canvas.height);
  canvas.setTransform(now);
}

const NOTHING: Pick<Painted, "marks" | "boxes" | "pixels"> = { marks: [], boxes: new Float64Array(0), pixels: 1 };

/** What two boxes share; the one where there is no other. */
function common(one: PaperBox, other: PaperBox = one): PaperBox {
  return {
    left: Math.max(one.left, other.left),
    top: Math.max(one.top, other.top),
    right: Math.min(one.right, other.right),
    bottom: Math.min(one.bottom, other.bottom),
  };
}
