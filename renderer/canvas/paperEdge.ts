import type { Page } from "../../core/circuit/circuit.ts";
import type { Tones } from "./tones.ts";
import { inWindow, type PaperBox, type Size, type Viewport } from "./viewport.ts";

interface Desk {
  readonly canvas: CanvasRenderingContext2D;
  readonly view: Viewport;
  readonly window: Size;
  readonly tones: Tones;
}

/** The page of paper, in millimetres. */
export function paperOf({ widthMm, heightMm }: Pick<Page, "widthMm" | "heightMm">): PaperBox {
  return { left: 0, top: 0, right: widthMm, bottom: heightMm };
}

/** What lies round the paper, a shade darker, and the edge between: parts stand on the paper alone. */
export function paintDesk({ canvas, view, window, tones }: Desk, paper: PaperBox): void {
  const from = inWindow(view, { x: paper.left, y: paper.top });
  const to = inWindow(view, { x: paper.right, y: paper.bottom });
  canvas.save();
  canvas.beginPath();
  canvas.rect(0, 0, window.width, window.height);
  canvas.rect(from.x, from.y, to.x - from.x, to.y - from.y);
  canvas.fillStyle = tones.round;
  canvas.fill("evenodd");
  canvas.strokeStyle = tones.rule;
  canvas.lineWidth = 1;
  canvas.strokeRect(
    Math.round(from.x) - 0.5,
    Math.round(from.y) - 0.5,
    Math.round(to.x - from.x) + 1,
    Math.round(to.y - from.y) + 1,
  );
  canvas.restore();
}
