import { Layer } from "konva/lib/Layer.js";
import { Shape } from "konva/lib/Shape.js";
import { Stage } from "konva/lib/Stage.js";
import { SheetLayer } from "./sheetLayer.ts";
import type { Size, Viewport } from "./viewport.ts";

type Painter = (canvas: CanvasRenderingContext2D) => void;

/**
 * Four canvases one over the other: printed pages, halos, the drawing, marks over it. Nothing on them listens; whoever owns the stage
 * asks its own index what a pointer meets.
 */
export class SheetStage {
  readonly sheet = new SheetLayer();
  private readonly stage: Stage;
  private readonly papers: Layer;
  private readonly under: Layer;
  private readonly over: Layer;
  /** How often the layers under and over the drawing were painted. */
  readonly draws = { papers: 0, under: 0, over: 0 };

  constructor(container: HTMLDivElement, paintPapers: Painter, paintUnder: Painter, paintOver: Painter) {
    this.stage = new Stage({ container, width: 1, height: 1, listening: false });
    this.papers = layerOf((canvas) => {
      this.draws.papers++;
      paintPapers(canvas);
    });
    this.under = layerOf((canvas) => {
      this.draws.under++;
      paintUnder(canvas);
    });
    this.over = layerOf((canvas) => {
      this.draws.over++;
      paintOver(canvas);
    });
    this.stage.add(this.papers, this.under, this.sheet.layer, this.over);
  }

  /** Screen pixels for each pixel of the window. */
  get ratio(): number {
    return this.sheet.layer.getCanvas().getPixelRatio();
  }

  /** Fits the canvases to a window of this size on a screen of this density. */
  resize({ width, height }: Size, ratio: number): void {
    for (const layer of this.stage.getLayers()) {
      if (layer.getCanvas().getPixelRatio() !== ratio) layer.getCanvas().setPixelRatio(ratio);
    }
    this.stage.size({ width, height });
    this.sheet.redraw();
  }

  /** Moves and zooms everything. */
  moveTo(view: Viewport, window: Size): void {
    this.sheet.moveTo(view, window);
    this.papers.batchDraw();
    this.repaint();
  }

  /** Paints the printed pages anew in the next frame; they stand still while the pointer moves about. */
  repaintPapers(): void {
    this.papers.batchDraw();
  }

  /** Paints what lies under and over the drawing anew in the next frame. */
  repaint(): void {
    this.under.batchDraw();
    this.repaintOver();
  }

  repaintOver(): void {
    this.over.batchDraw();
  }

  destroy(): void {
    this.stage.destroy();
  }
}

function layerOf(paint: Painter): Layer {
  const layer = new Layer({ listening: false });
  layer.add(new Shape({ listening: false, sceneFunc: (context) => paint(context._context) }));
  return layer;
}
