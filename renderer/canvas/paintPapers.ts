import type { Paper } from "../printed/papers.ts";
import { inWindow, type Size, type Viewport } from "./viewport.ts";

/** Paints the printed pages, the lowest first: of each the picture that is just fine enough for the zoom. */
export function paintPapers(
  canvas: CanvasRenderingContext2D,
  papers: readonly Paper[],
  view: Viewport,
  window: Size,
): void {
  // Screen pixels for each pixel of the window, as the layer has set it.
  const ratio = canvas.getTransform().a;
  canvas.save();
  canvas.imageSmoothingEnabled = true;
  for (const { levels, box, opacity } of papers) {
    const { x, y } = inWindow(view, { x: box.left, y: box.top });
    const [width, height] = [(box.right - box.left) * view.scale, (box.bottom - box.top) * view.scale];
    if (x > window.width || y > window.height || x + width < 0 || y + height < 0) continue;
    const level = levels.findLast((each) => each.width >= width * ratio) ?? levels[0];
    // One that was let go has no width any more.
    if (!level || level.width === 0) continue;
    canvas.globalAlpha = opacity;
    canvas.drawImage(level, x, y, width, height);
  }
  canvas.restore();
}
