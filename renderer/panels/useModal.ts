import { type RefObject, useEffect } from "react";

/**
 * Opens a dialog over the page as long as it is there, with the keys on `first` where that is named. What had them gets them back
 * when it goes; where that is gone too, the drawing does.
 */
export function useModal(dialog: RefObject<HTMLDialogElement | null>, first?: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.showModal();
    first?.current?.focus();
    return () => {
      const isThere = before?.isConnected && before !== document.body;
      const back = isThere ? before : document.querySelector(".sheet-canvas");
      if (back instanceof HTMLElement) back.focus({ preventScroll: true });
    };
  }, [dialog, first]);
}
