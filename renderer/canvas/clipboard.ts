import type { Spot } from "../../core/drawing/mark.ts";
import { GRID_MM } from "../../core/drawing/scale.ts";
import type { Hand } from "./hand.ts";
import type { SheetSurface } from "./surface.ts";
import { middleOf, onSheet } from "./viewport.ts";

/** Copies, cuts and pastes what is chosen as text, and takes pictures of printed pages, while the drawing has the focus. Stops with the signal. */
export function listenForClipboard(box: HTMLElement, surface: SheetSurface, hand: Hand, signal: AbortSignal): void {
  const take = (event: ClipboardEvent, isCut: boolean): void => {
    const text = surface.calls.onCopy(isCut);
    if (text === null) return;
    event.clipboardData?.setData("text/plain", text);
    event.preventDefault();
  };
  box.addEventListener("copy", (event) => take(event, false), { signal });
  box.addEventListener("cut", (event) => take(event, true), { signal });
  box.addEventListener(
    "paste",
    (event) => {
      const text = event.clipboardData?.getData("text/plain") ?? "";
      event.preventDefault();
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length > 0) surface.calls.onFiles(files);
      else if (text !== "") surface.calls.onPaste(text, hand.pointer ?? middle(surface));
    },
    { signal },
  );
}

function middle({ view, window }: SheetSurface): Spot {
  const { x, y } = onSheet(view, middleOf(window));
  return { x: Math.round(x / GRID_MM), y: Math.round(y / GRID_MM) };
}
