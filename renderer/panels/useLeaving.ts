import { type FocusEvent, useEffect, useState } from "react";

/** What keeps a card from leaving: a pointer over it, or the focus in it. */
export interface Stay {
  onPointerEnter(): void;
  onPointerLeave(): void;
  onFocus(): void;
  onBlur(event: FocusEvent): void;
}

/**
 * Calls `leave` after so many milliseconds, counted anew each time the pointer and the focus have left; never for null.
 * Gives back what the card must listen to.
 */
export function useLeaving(afterMs: number | null, leave: () => void): Stay {
  const [isUnderPointer, setIsUnderPointer] = useState(false);
  const [hasFocus, setHasFocus] = useState(false);
  const isHeld = isUnderPointer || hasFocus;
  useEffect(() => {
    if (afterMs === null || isHeld) return;
    const timer = setTimeout(leave, afterMs);
    return () => clearTimeout(timer);
  }, [afterMs, isHeld, leave]);
  return {
    onPointerEnter: () => setIsUnderPointer(true),
    onPointerLeave: () => setIsUnderPointer(false),
    onFocus: () => setHasFocus(true),
    onBlur: (event) => {
      if (!event.currentTarget.contains(event.relatedTarget)) setHasFocus(false);
    },
  };
}
