import { type RefObject, useLayoutEffect, useRef, useState } from "react";
import { ownPixels } from "./ownPixels.ts";

interface Measured {
  readonly key: string;
  readonly widths: ReadonlyMap<string, number>;
}

/**
 * Widths of the children of a row by their `data-key`, and the room in it, in the row's own pixels. While `widths` is null,
 * which it is for one moment after `key` changed, all children must be drawn to be measured.
 */
export function useWidths(key: string): {
  readonly row: RefObject<HTMLDivElement | null>;
  readonly widths: ReadonlyMap<string, number> | null;
  readonly room: number;
} {
  const row = useRef<HTMLDivElement>(null);
  const [measured, setMeasured] = useState<Measured | null>(null);
  const [room, setRoom] = useState(0);
  const widths = measured?.key === key ? measured.widths : null;

  useLayoutEffect(() => {
    const element = row.current;
    if (!element || widths) return;
    const children = [...element.querySelectorAll<HTMLElement>(":scope > [data-key]")];
    const each = children.map((child) => [child.dataset.key ?? "", ownPixels(child).width] as const);
    setMeasured({ key, widths: new Map(each) });
    setRoom(element.clientWidth);
  }, [widths, key]);

  useLayoutEffect(() => {
    const element = row.current;
    if (!element) return;
    const watcher = new ResizeObserver(() => setRoom(element.clientWidth));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);

  return { row, widths, room };
}
