import { type RefObject, useLayoutEffect, useRef, useState } from "react";
import { ownPixels } from "./ownPixels.ts";

/**
 * How many children of a row fit into its width, leaving `spare` pixels. All children are drawn for one moment to be
 * measured whenever `key` changes; after that only a change of width counts again. `always` pixels are kept for what stands
 * behind them in any case.
 */
export function useFitting(
  count: number,
  key: string,
  spare: number,
  always = 0,
): { readonly row: RefObject<HTMLDivElement | null>; readonly fitting: number } {
  const row = useRef<HTMLDivElement>(null);
  const [measured, setMeasured] = useState<{ readonly key: string; readonly edges: readonly number[] } | null>(null);
  const [room, setRoom] = useState(Number.POSITIVE_INFINITY);
  const known = measured?.key === key ? measured.edges : null;

  useLayoutEffect(() => {
    const element = row.current;
    if (!element || known) return;
    const { left } = ownPixels(element);
    const edges = [...element.children].slice(0, count).map((child) => ownPixels(child).right - left);
    setMeasured({ key, edges });
    setRoom(element.clientWidth);
  }, [known, count, key]);

  useLayoutEffect(() => {
    const element = row.current;
    if (!element) return;
    const watcher = new ResizeObserver(() => setRoom(element.clientWidth));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);

  return { row, fitting: known ? fittingIn(known, room - always, spare) : count };
}

/** How many edges lie within the room; `spare` is kept only where not all do. */
export function fittingIn(edges: readonly number[], room: number, spare: number): number {
  if ((edges.at(-1) ?? 0) <= room + 0.5) return edges.length;
  return edges.filter((edge) => edge <= room - spare).length;
}
