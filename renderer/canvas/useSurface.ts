import { type RefObject, useLayoutEffect, useRef } from "react";
import { Hand } from "./hand.ts";
import { Keyboard } from "./keyboard.ts";
import { listenOn } from "./listeners.ts";
import type { Calls, Shown } from "./shown.ts";
import { SheetSurface } from "./surface.ts";

/** The surface that lives in a box of the page as long as the box does, and shows what it is given. */
export function useSurface(
  box: RefObject<HTMLDivElement | null>,
  container: RefObject<HTMLDivElement | null>,
  shown: Shown,
  calls: Calls,
): RefObject<SheetSurface | null> {
  const surface = useRef<SheetSurface | null>(null);
  const hand = useRef<Hand | null>(null);
  const first = useRef({ shown, calls });
  first.current = { shown, calls };
  useLayoutEffect(() => {
    if (!box.current || !container.current) return;
    const made = new SheetSurface(box.current, container.current, first.current.shown, first.current.calls);
    const itsHand = new Hand(made);
    surface.current = made;
    hand.current = itsHand;
    const stop = listenOn(box.current, made, itsHand, new Keyboard(made, itsHand));
    return () => {
      stop();
      made.destroy();
      surface.current = null;
      hand.current = null;
    };
  }, [box, container]);
  useLayoutEffect(() => {
    surface.current?.update(shown, calls);
    hand.current?.refresh();
  }, [shown, calls]);
  return surface;
}
