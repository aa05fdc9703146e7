import { Layer } from "konva/lib/Layer.js";
import { Shape } from "konva/lib/Shape.js";
import type { Mark } from "../../core/drawing/mark.ts";
import type { Painted } from "./painted.ts";
import { paintOn } from "./paintOn.ts";
import { type Size, seenBox, type Viewport } from "./viewport.ts";

/** The layer with all marks of the drawing: one shape, no hit graph. Its numbers are kept for whoever measures. */
export class SheetLayer {
  readonly layer = new Layer({ listening: false });
  /** How often the drawing was laid down, and what the last time took, milliseconds. */
  draws = 0;
  lastMs = 0;
  private painted: Painted | null = null;
  private hidden: ReadonlySet<Mark> = new Set();
  private view: Viewport = { scale: 1, x: 0, y: 0 };
  private window: Size = { width: 1, height: 1 };

  constructor() {
    const shape = new Shape({ listening: false, sceneFunc: (context) => this.lay(context._context) });
    this.layer.add(shape);
  }

  /** Shows another drawing from the next frame on. */
  show(painted: Painted): void {
    if (painted === this.painted) return;
    this.painted = painted;
    this.layer.batchDraw();
  }

  /** Leaves these marks out, because something else draws them for now. */
  hide(marks: ReadonlySet<Mark>): void {
    this.hidden = marks;
    this.layer.batchDraw();
  }

  /** Moves and zooms the layer itself, onto whole pixels; the marks stay what they are. */
  moveTo(view: Viewport, window: Size): void {
    this.view = view;
    this.window = window;
    const ratio = this.layer.getCanvas().getPixelRatio();
    const whole = (value: number): number => Math.round(value * ratio) / ratio;
    this.layer.setAttrs({ x: whole(view.x), y: whole(view.y), scaleX: view.scale, scaleY: view.scale });
    this.layer.batchDraw();
  }

  private lay(canvas: CanvasRenderingContext2D): void {
    if (!this.painted) return;
    const begun = performance.now();
    const seen = seenBox(this.view, this.window);
    for (const { paints, box, mark } of this.painted.marks) {
      if (box.right < seen.left || box.left > seen.right || box.bottom < seen.top || box.top > seen.bottom) continue;
      if (this.hidden.size > 0 && this.hidden.has(mark)) continue;
      paintOn(canvas, paints, this.painted.pixels);
    }
    this.draws++;
    this.lastMs = performance.now() - begun;
  }
}
