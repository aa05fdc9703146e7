/** How much room the window leaves beside the size that everything but the drawing is set to. */
export interface Room {
  /** Slim: what can folds into a button. Narrow: what stands beside the drawing goes below it. Broad: words beside icons. */
  readonly width: "slim" | "narrow" | "close" | "wide" | "broad";
  /** Low: bar, strip and status take fewer lines, and the drawing keeps its share. */
  readonly height: "low" | "high";
}

/** Widths below which the room is of a name, the smallest first: pixels at 100 %. */
const WIDTHS: readonly (readonly [number, Room["width"]])[] = [
  [680, "slim"],
  [920, "narrow"],
  [1100, "close"],
  [1600, "wide"],
];
/** Height below which it is low. */
const LOW = 600;

/** The room in a window of this many pixels when everything but the drawing is `scale` times its usual size. */
export function roomIn(widthPixels: number, heightPixels: number, scale: number): Room {
  const across = widthPixels / scale;
  const width = WIDTHS.find(([below]) => across < below)?.[1] ?? "broad";
  return { width, height: heightPixels / scale < LOW ? "low" : "high" };
}
