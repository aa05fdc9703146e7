import { useEffect, useState } from "react";

/** At the latest so long after a change, milliseconds. */
const LATEST_MS = 500;

/**
 * A value as it was when the window last had nothing else to do: for what takes time to make of it and is not waited for, so
 * that the drawing is shown first. Null at first.
 */
export function useRested<T extends object>(value: T | null): T | null {
  const [rested, setRested] = useState<T | null>(null);
  useEffect(() => {
    const idle = requestIdleCallback(() => setRested(value), { timeout: LATEST_MS });
    return () => cancelIdleCallback(idle);
  }, [value]);
  return rested;
}
