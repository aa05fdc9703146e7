import { useCallback, useState } from "react";

/** A way to give the focus back to what had it when this was shown, as long as that still stands on the page. */
export function useFocusBack(): () => void {
  const [had] = useState(() => document.activeElement);
  return useCallback(() => {
    if (had instanceof HTMLElement && had.isConnected) had.focus();
  }, [had]);
}
