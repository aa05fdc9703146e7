import { type RefObject, useEffect, useRef } from "react";

/**
 * Takes a modal dialog out of the layer above the page while the browser prints: what stands there lies on one page, and its
 * parts cannot ask for paper of their own. Gives back a question, whether a close that is told now is only part of that.
 */
export function useOnPaper(dialog: RefObject<HTMLDialogElement | null>): () => boolean {
  const closes = useRef(0);
  useEffect(() => {
    let focused: Element | null = null;
    const again = (open: (shown: HTMLDialogElement) => void): void => {
      const shown = dialog.current;
      if (!shown?.open) return;
      closes.current++;
      shown.close();
      open(shown);
    };
    const before = (): void => {
      focused = document.activeElement;
      again((shown) => shown.show());
    };
    const after = (): void => {
      again((shown) => shown.showModal());
      if (focused instanceof HTMLElement) focused.focus();
    };
    window.addEventListener("beforeprint", before);
    window.addEventListener("afterprint", after);
    return () => {
      window.removeEventListener("beforeprint", before);
      window.removeEventListener("afterprint", after);
    };
  }, [dialog]);
  return () => {
    if (closes.current === 0) return false;
    closes.current--;
    return true;
  };
}
