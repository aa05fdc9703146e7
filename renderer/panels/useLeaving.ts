import { type FocusEvent, useCallback, useEffect, useRef } from "react";

/** What keeps a card from leaving: a pointer over it, or the focus in it. */
export interface Stay {
  onPointerOver(): void;
  onPointerLeave(): void;
  onFocus(): void;
  onBlur(event: FocusEvent): void;
}

/**
 * Calls `leave` after so many milliseconds, counted anew each time the pointer and the focus have left; never for null.
 * Gives back what the card must listen to. The count stops in the very event that holds the card, not at the next
 * drawing of it: on a busy machine the card could leave under the pointer in between.
 */
export function useLeaving(afterMs: number | null, leave: () => void): Stay {
  const timer = useRef<number | undefined>(undefined);
  const held = useRef({ pointer: false, focus: false });
  const count = useCallback((): void => {
    window.clearTimeout(timer.current);
    const { pointer, focus } = held.current;
    if (afterMs !== null && !pointer && !focus) timer.current = window.setTimeout(leave, afterMs);
  }, [afterMs, leave]);
  useEffect(() => {
    count();
    return () => window.clearTimeout(timer.current);
  }, [count]);
  const hold = (by: "pointer" | "focus", isHeld: boolean): void => {
    held.current[by] = isHeld;
    count();
  };
  return {
    // Not of its entering: of a pointer that comes from what has just been taken away, React tells none.
    onPointerOver: () => hold("pointer", true),
    onPointerLeave: () => hold("pointer", false),
    onFocus: () => hold("focus", true),
    onBlur: (event) => {
      if (!event.currentTarget.contains(event.relatedTarget)) hold("focus", false);
    },
  };
}
