import { useEffect, useLayoutEffect, useRef, useState } from "react";
import type { Pixel, Size } from "../canvas/viewport.ts";
import { WireValues } from "../panels/WireValues.tsx";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { WiresValues } from "./WiresValues.tsx";

interface Shown {
  /** Ids of the wires that were drawn, in order. */
  readonly wires: readonly string[];
  /** Where a card of this size stands in no way, pixels of the drawing's window. Asked once. */
  readonly placed: (card: Size) => Pixel;
  readonly close: () => void;
}

/**
 * At an edge of the drawing, about what was just drawn: colour, size and length of a wire, or colours and size of several,
 * to be typed at once or left. Escape goes on drawing.
 */
export function NewWireCard({ wires: ids, placed, close }: Shown) {
  const circuit = useApp(circuitNow);
  const scale = useApp(({ settings }) => settings.scale);
  const card = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<Pixel | null>(null);
  const askFor = useRef(placed);
  const wires = circuit?.wires.filter(({ id }) => ids.includes(id)) ?? [];
  const [wire] = wires;
  const isGone = wires.length < ids.length;
  const title = ids.length === 1 ? ids[0]! : `${ids[0]} to ${ids.at(-1)}`;
  useLayoutEffect(() => {
    // Once for each wire: it does not walk about while somebody types.
    const { width = 0, height = 0 } = card.current?.getBoundingClientRect() ?? {};
    setPlace(askFor.current({ width, height }));
  }, []);
  useEffect(() => {
    if (isGone) close();
    else card.current?.querySelector("input")?.focus();
  }, [isGone, close]);
  if (!circuit || !wire) return null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a form of its own stands in each field
    <div
      ref={card}
      className="card new-wire"
      role="group"
      aria-label={ids.length === 1 ? `Wire ${title}` : `Wires ${title}`}
      style={{ left: (place?.x ?? 0) / scale, top: (place?.y ?? 0) / scale }}
      onKeyDown={(event) => {
        if (event.key !== "Escape" && event.key !== "Enter") return;
        event.stopPropagation();
        if (event.key === "Escape" || isLast(event.target)) close();
        else nextField(event.target)?.focus();
      }}
    >
      <b>{title}</b>
      {ids.length === 1 ? <WireValues circuit={circuit} wire={wire} /> : <WiresValues circuit={circuit} wires={ids} />}
      <p className="caption">Enter goes on, Esc goes back to drawing.</p>
    </div>
  );
}

function fields(target: EventTarget): readonly HTMLInputElement[] {
  return target instanceof HTMLElement ? [...(target.closest(".new-wire")?.querySelectorAll("input") ?? [])] : [];
}

function nextField(target: EventTarget): HTMLInputElement | undefined {
  const all = fields(target);
  return all[all.indexOf(target as HTMLInputElement) + 1];
}

function isLast(target: EventTarget): boolean {
  return fields(target).at(-1) === target;
}
