import { listenForClipboard } from "./clipboard.ts";
import type { Hand } from "./hand.ts";
import type { Keyboard } from "./keyboard.ts";
import type { SheetSurface } from "./surface.ts";
import { isHand } from "./tool.ts";
import type { Pixel } from "./viewport.ts";

/** What a line and a page of a wheel come to, pixels. */
const LINE = 16;
const PAGE = 400;
/** How much a wheel zooms for each pixel that it turns; a pinch on a touchpad turns finer. */
const ZOOM_PER_PIXEL = 0.0022;
const PINCH_PER_PIXEL = 0.01;

/** Joins pointer, wheel, keys and size of the box to the drawing. Gives back the way to let go of them all. */
export function listenOn(box: HTMLElement, surface: SheetSurface, hand: Hand, keyboard: Keyboard): () => void {
  const end = new AbortController();
  const { signal } = end;
  let hasSpace = false;

  const at = (event: MouseEvent): Pixel => {
    const { left, top } = box.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const showCursor = (): void => {
    const isDrawing = !isHand(surface.shown.tool);
    box.dataset.cursor = hand.tool.isPanning
      ? "grab"
      : hasSpace
        ? "hand"
        : isDrawing
          ? "pen"
          : hand.isOverHandle
            ? "handle"
            : "";
  };

  box.addEventListener(
    "pointerdown",
    (event) => {
      surface.showsFocus = false;
      box.setPointerCapture(event.pointerId);
      box.focus({ preventScroll: true });
      if (event.button === 1) event.preventDefault();
      hand.tool.down(event, at(event), hasSpace);
      showCursor();
    },
    { signal },
  );
  box.addEventListener(
    "pointermove",
    (event) => {
      hand.tool.move(event, at(event));
      showCursor();
    },
    { signal },
  );
  box.addEventListener(
    "pointerup",
    (event) => {
      if (!hand.drop(at(event))) hand.tool.up(event, at(event));
      showCursor();
    },
    { signal },
  );
  box.addEventListener("pointercancel", () => hand.tool.cancel(), { signal });
  box.addEventListener("pointerleave", () => hand.leave(), { signal });
  box.addEventListener(
    "contextmenu",
    (event) => {
      event.preventDefault();
      // From the keyboard it comes without a place; the keys themselves open the menu then.
      if (event.button === 2) hand.menu(at(event));
    },
    { signal },
  );
  box.addEventListener("dblclick", (event) => hand.edit(at(event)), { signal });
  box.addEventListener("wheel", (event) => turn(event), { signal, passive: false });
  box.addEventListener(
    "keydown",
    (event) => {
      if (event.target !== box) return;
      if (event.key === " ") {
        hasSpace = true;
        event.preventDefault();
        showCursor();
      } else if (keyboard.down(event)) {
        event.preventDefault();
        event.stopPropagation();
      }
    },
    { signal },
  );
  box.addEventListener(
    "keyup",
    (event) => {
      if (event.key === " ") hasSpace = false;
      keyboard.up(event);
      showCursor();
    },
    { signal },
  );
  box.addEventListener(
    "focus",
    () => {
      if (box.matches(":focus-visible")) surface.showsFocus = true;
      surface.repaint();
    },
    { signal },
  );
  box.addEventListener(
    "blur",
    () => {
      hasSpace = false;
      keyboard.blur();
    },
    { signal },
  );
  listenForClipboard(box, surface, hand, signal);
  const stopSizing = followSize(box, surface);
  return () => {
    end.abort();
    stopSizing();
    hand.tool.cancel();
  };

  /** A wheel zooms at the pointer; with Shift, or sideways, it moves the drawing. */
  function turn(event: WheelEvent): void {
    event.preventDefault();
    const unit =
      event.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE : event.deltaMode === WheelEvent.DOM_DELTA_PAGE ? PAGE : 1;
    const [dx, dy] = [event.deltaX * unit, event.deltaY * unit];
    if (event.shiftKey) hand.panBy(-(dx || dy), 0);
    else if (Math.abs(dx) > Math.abs(dy)) hand.panBy(-dx, -dy);
    else hand.zoomBy(Math.exp(-dy * (event.ctrlKey ? PINCH_PER_PIXEL : ZOOM_PER_PIXEL)), at(event));
  }
}

/** Keeps the canvases as large as their box, and as fine as the screen it is on. */
function followSize(box: HTMLElement, surface: SheetSurface): () => void {
  const fit = (): void =>
    surface.resize({ width: Math.max(1, box.clientWidth), height: Math.max(1, box.clientHeight) }, devicePixelRatio);
  const watcher = new ResizeObserver(fit);
  watcher.observe(box);
  fit();
  let screen: MediaQueryList;
  const moved = (): void => {
    fit();
    follow();
  };
  const follow = (): void => {
    screen = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    screen.addEventListener("change", moved, { once: true });
  };
  follow();
  return () => {
    watcher.disconnect();
    screen.removeEventListener("change", moved);
  };
}
