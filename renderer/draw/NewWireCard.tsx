import { useEffect, useRef } from "react";
import type { Pixel } from "../canvas/viewport.ts";
import { WireValues } from "../panels/WireValues.tsx";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";

interface Shown {
  readonly wire: string;
  /** Where the wire ended, pixels of the drawing's window. */
  readonly at: Pixel;
  readonly close: () => void;
}

/** Beside a wire that was just drawn: its colour, size and length, to be typed at once or left. Escape goes on drawing. */
export function NewWireCard({ wire: id, at, close }: Shown) {
  const circuit = useApp(circuitNow);
  const card = useRef<HTMLDivElement>(null);
  const wire = circuit?.wires.find((each) => each.id === id);
  const isGone = wire === undefined;
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
      style={{ left: at.x, top: at.y }}
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
