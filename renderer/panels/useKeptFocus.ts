import { type RefObject, useEffect, useRef } from "react";

/**
 * Keeps the focus where it was: when what had it goes away inside an element, as a button that its own press removes, the
 * element takes it, and the next Tab goes on from there instead of from the head of the page. It needs `tabIndex={-1}`.
 */
export function useKeptFocus<T extends HTMLElement>(): RefObject<T | null> {
  const kept = useRef<T>(null);
  useEffect(() => {
    const element = kept.current;
    if (!element) return;
    let last: Element | null = null;
    const onFocus = ({ target }: FocusEvent): void => {
      last = target instanceof Element ? target : null;
    };
    const onChange = (): void => {
      if (last === null || last.isConnected) return;
      last = null;
      if (document.activeElement === document.body) element.focus({ preventScroll: true });
    };
    const observer = new MutationObserver(onChange);
    observer.observe(element, { childList: true, subtree: true });
    element.addEventListener("focusin", onFocus);
    return () => {
      observer.disconnect();
      element.removeEventListener("focusin", onFocus);
    };
  }, []);
  return kept;
}
