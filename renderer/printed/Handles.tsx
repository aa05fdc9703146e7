import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useReducer, useRef, useState } from "react";
import type { Page, Underlay } from "../../core/circuit/circuit.ts";
import { underlayAt } from "../../core/circuit/underlays.ts";
import type { Corner } from "../../core/drawing/projection.ts";
import { bound } from "../../core/edit/keys/ownKeys.ts";
import type { SheetSurface } from "../canvas/surface.ts";
import { inWindow, onSheet } from "../canvas/viewport.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import type { Adjusting } from "../state/state.ts";
import { circuitNow } from "../state/views.ts";
import { allMoved, allScaled, cornerMoved } from "./adjusting.ts";
import { useTake } from "./useTake.ts";

const NAMES = ["Top left corner", "Top right corner", "Bottom right corner", "Bottom left corner"];
/** How far an arrow key moves, millimetres. */
const STEPS = { "print-arrow": 1, "print-far": 10, "print-fine": 0.2 } as const;
/** A press that moves less than this is a click, pixels. */
const STILL = 4;
/** How much + and - scale. */
const LARGER = 1.02;

const WAYS = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
} as const;

interface Shown {
  readonly surface: RefObject<SheetSurface | null>;
  /** The drawing, to which a wheel over the page goes on. */
  readonly box: RefObject<HTMLElement | null>;
}

/** The handles of the printed page that is taken up, over the drawing; null while none is. */
export function Handles({ surface, box }: Shown) {
  const adjusting = useApp(({ open }) => open?.adjusting ?? null);
  const circuit = useApp(circuitNow);
  const inSight = useApp(({ open }) => open?.page);
  const lying = adjusting && circuit ? underlayAt(circuit, adjusting.underlay) : null;
  if (!adjusting || lying?.page.id !== inSight || !lying || !surface.current) return null;
  return (
    <Frame
      box={box}
      key={`${adjusting.underlay} ${adjusting.how}`}
      surface={surface.current}
      adjusting={adjusting}
      {...lying}
    />
  );
}

interface Framed {
  readonly box: RefObject<HTMLElement | null>;
  readonly surface: SheetSurface;
  readonly adjusting: Adjusting;
  readonly page: Page;
  readonly underlay: Underlay;
}

/** A handle that is moved: which one, -1 for all of the page, and where and what it was when it was taken. */
interface Taken {
  readonly at: number;
  readonly from: Corner;
  readonly pixel: readonly [number, number];
  readonly was: Adjusting;
}

/**
 * Four corners to drag, to take by one click and put down by the next, or to move by arrow keys, and the page between them. Enter
 * takes it, Escape leaves it as it was.
 */
function Frame({ box, surface, adjusting, page, underlay }: Framed) {
  const { dispatch, getState } = useAppStore();
  const { take, leave } = useTake();
  const frame = useRef<HTMLElement>(null);
  const dragged = useRef<Taken | null>(null);
  // Clicked without being dragged, a handle goes along with the pointer until the next click.
  const [held, setHeld] = useState<Taken | null>(null);
  const [, follow] = useReducer((count: number) => count + 1, 0);
  useEffect(() => {
    surface.followers.add(follow);
    frame.current?.querySelector("button")?.focus({ preventScroll: true });
    return () => {
      surface.followers.delete(follow);
    };
  }, [surface]);

  const set = (next: Adjusting): void => dispatch({ do: "adjust", adjusting: next });
  const spotOf = (event: PointerEvent): Corner => {
    const { left, top } = frame.current!.getBoundingClientRect();
    const { x, y } = onSheet(surface.view, { x: event.clientX - left, y: event.clientY - top });
    return [x, y];
  };
  /** A handle, or -1 for all of it. */
  const press = (event: PointerEvent, at: number): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    dragged.current = { at, from: spotOf(event), pixel: [event.clientX, event.clientY], was: adjusting };
  };
  const move = (event: PointerEvent): void => {
    const drag = dragged.current ?? held;
    if (!drag) return;
    const [x, y] = spotOf(event);
    const [dx, dy] = [x - drag.from[0], y - drag.from[1]];
    if (drag.at < 0) {
      set(allMoved(drag.was, dx, dy));
      return;
    }
    const [ownX, ownY] = drag.was.quad[drag.at]!;
    set(cornerMoved(drag.was, underlay, page, drag.at, [ownX + dx, ownY + dy], event.shiftKey));
  };
  const release = (): void => {
    dragged.current = null;
  };
  const lift = (event: PointerEvent): void => {
    const drag = dragged.current;
    release();
    if (drag && Math.hypot(event.clientX - drag.pixel[0], event.clientY - drag.pixel[1]) < STILL) setHeld(drag);
  };
  const putDown = (event: PointerEvent): void => {
    move(event);
    setHeld(null);
  };
  const key = (event: KeyboardEvent, at: number): void => {
    const id = bound("print", event, getState().settings.keys);
    if (id === null) return;
    event.preventDefault();
    event.stopPropagation();
    const now = getState().open?.adjusting ?? adjusting;
    setHeld(null);
    if (held && id === "print-leave") {
      set(held.was);
      return;
    }
    if (id === "print-take") take();
    else if (id === "print-leave") leave();
    else if (id === "print-larger") set(allScaled(now, LARGER));
    else if (id === "print-smaller") set(allScaled(now, 1 / LARGER));
    else {
      const [dx, dy] = WAYS[event.key as keyof typeof WAYS].map((each) => each * STEPS[id]) as [number, number];
      const [x, y] = now.quad[Math.max(0, at)]!;
      set(at < 0 ? allMoved(now, dx, dy) : cornerMoved(now, underlay, page, at, [x + dx, y + dy], true));
    }
  };

  const pixels = adjusting.quad.map(([x, y]) => inWindow(surface.view, { x, y }));
  const outline = pixels.map(({ x, y }) => `${x},${y}`).join(" ");
  const middle = pixels.reduce((sum, { x, y }) => ({ x: sum.x + x / 4, y: sum.y + y / 4 }), { x: 0, y: 0 });
  return (
    <section
      ref={frame}
      className={`paper-frame is-${adjusting.how}`}
      aria-label={`Corners of ${underlay.title}`}
      onWheel={({ nativeEvent }) => box.current?.dispatchEvent(new WheelEvent("wheel", nativeEvent))}
    >
      <svg className="paper-outline" aria-hidden="true">
        <polygon className="is-ground" points={outline} />
        <polygon
          points={outline}
          onPointerDown={(event) => adjusting.how === "lay" && press(event, -1)}
          onPointerMove={move}
          onPointerUp={release}
          onPointerCancel={release}
        />
      </svg>
      {adjusting.how === "lay" && (
        <button
          type="button"
          className="paper-handle is-middle"
          style={{ left: middle.x, top: middle.y }}
          aria-label="The whole page"
          onPointerDown={(event) => press(event, -1)}
          onPointerMove={move}
          onPointerUp={lift}
          onPointerCancel={release}
          onKeyDown={(event) => key(event, -1)}
        />
      )}
      {pixels.map(({ x, y }, at) => (
        <button
          key={NAMES[at]}
          type="button"
          className="paper-handle"
          style={{ left: x, top: y }}
          aria-label={`${NAMES[at]}, ${Math.round(adjusting.quad[at]![0])}, ${Math.round(adjusting.quad[at]![1])} mm`}
          onPointerDown={(event) => press(event, at)}
          onPointerMove={move}
          onPointerUp={lift}
          onPointerCancel={release}
          onKeyDown={(event) => key(event, at)}
        />
      ))}
      {held && <div className="paper-catch" aria-hidden="true" onPointerMove={move} onPointerUp={putDown} />}
    </section>
  );
}
