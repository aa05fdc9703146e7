import { type RefObject, useEffect } from "react";

/**
 * Escape leaves: from a field to the place itself, which takes what was typed, and from elsewhere in the place for good.
 * What is half done there keeps the key to itself.
 */
export function useLeave(place: RefObject<HTMLElement | null>, close: () => void): void {
  useEffect(() => {
    const leave = (event: KeyboardEvent): void => {
      const { target } = event;
      if (event.key !== "Escape" || event.defaultPrevented || !(target instanceof HTMLElement)) return;
      // What had the focus may be gone from the page, and the focus with it.
      if (target !== document.body && !place.current?.contains(target)) return;
      if (target.matches("input, textarea, select")) place.current?.focus();
      else close();
    };
    document.addEventListener("keydown", leave);
    return () => document.removeEventListener("keydown", leave);
  }, [place, close]);
}
