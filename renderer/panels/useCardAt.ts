import { type CSSProperties, type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import type { Pixel } from "../canvas/viewport.ts";
import { useApp } from "../state/AppContext.tsx";
import { placed } from "./placed.ts";

/**
 * A card that opens at a place of the window, client pixels: all of it stays in sight while it grows, the focus goes to
 * what `first` finds in it, and a press outside closes it. `first` and `close` are the same from render to render.
 */
export function useCardAt(
  at: Pixel,
  first: (card: HTMLElement) => HTMLElement | null | undefined,
  close: () => void,
): { readonly card: RefObject<HTMLDivElement | null>; readonly style: CSSProperties } {
  const scale = useApp(({ settings }) => settings.scale);
  const card = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<Pixel | null>(null);
  useLayoutEffect(() => {
    const box = card.current;
    if (!box) return;
    const put = (): void => setPlace(placed(at, box.getBoundingClientRect()));
    put();
    // It grows when something in it is unfolded, and moves so that all of it stays in sight.
    const watcher = new ResizeObserver(put);
    watcher.observe(box);
    return () => watcher.disconnect();
  }, [at]);
  const isPlaced = place !== null;
  useEffect(() => {
    // What is hidden takes no focus.
    if (isPlaced && card.current) (first(card.current) ?? card.current).focus();
  }, [isPlaced, first]);
  useEffect(() => {
    const away = (event: Event): void => {
      if (!card.current?.contains(event.target as Node)) close();
    };
    document.addEventListener("pointerdown", away);
    return () => document.removeEventListener("pointerdown", away);
  }, [close]);
  const style: CSSProperties = {
    left: (place?.x ?? 0) / scale,
    top: (place?.y ?? 0) / scale,
    visibility: place ? "visible" : "hidden",
  };
  return { card, style };
}
