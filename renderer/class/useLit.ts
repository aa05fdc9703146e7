import { useEffect, useState } from "react";
import { isLit } from "../../core/lesson/flash.ts";

/**
 * Whether what flashes is lit now. It changes at most three times a second, and never where nothing may move: by the
 * person's own wish, or by that of the system.
 */
export function useLit(flashes: boolean, isStill: boolean): boolean {
  const [lit, setLit] = useState(true);
  useEffect(() => {
    setLit(true);
    if (!flashes || isStill) return;
    const system = window.matchMedia("(prefers-reduced-motion: reduce)");
    let frame = requestAnimationFrame(function tick(ms) {
      setLit(isLit(ms / 1_000, system.matches));
      frame = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(frame);
  }, [flashes, isStill]);
  return lit;
}
