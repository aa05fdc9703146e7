import { useEffect, useLayoutEffect, useRef, useState } from "react";
import type { Pixel, Size } from "../canvas/viewport.ts";
import { WireValues } from "../panels/WireValues.tsx";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";

interface Shown {
  readonly wire: string;
  /** Where a card of this size stands in no way, pixels of the drawing's window. Asked once. */
  readonly placed: (card: Size) => Pixel;
  readonly close: () => void;
}

/** At an edge of the drawing, about a wire that was just drawn: its colour, size and length, to be typed at once or left. Escape goes on drawing. */
export function NewWireCard({ wire: id, placed, close }: Shown) {
  const circuit = useApp(circuitNow);
  const scale = useApp(({ settings }) => settings.scale);
  const card = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<Pixel | null>(null);
  const askFor = useRef(placed);
  const wire = circuit?.wires.find((each) => each.id === id);
  const isGone = wire === undefined;
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
      aria-label={`Wire ${id}`}
      style={{ left: (place?.x ?? 0) / scale, top: (place?.y ?? 0) / scale }}
      onKeyDown={(event) => {
        if (event.key !== "Escape" && event.key !== "Enter") return;
        event.stopPropagation();
        if (event.key === "Escape" || isLast(event.target)) close();
        else nextField(event.target)?.focus();
      }}
    >
      <b>{id}</b>
      <WireValues circuit={circuit} wire={wire} />
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
