import { type CSSProperties, useLayoutEffect, useRef, useState } from "react";
import type { PointId } from "../../core/base/ids.ts";
import { STATE_WORDS } from "../../core/base/words/sheet.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Fault } from "../../core/live/fault.ts";
import type { Live } from "../../core/live/live.ts";
import { flowAlong, whyBesides, whyPath } from "../../core/live/whyWords.ts";
import { StateGlyph } from "../panels/StateGlyph.tsx";
import { Swatch } from "../panels/Swatch.tsx";
import { useApp } from "../state/AppContext.tsx";
import type { Thing } from "../state/state.ts";
import { voltsText } from "../words/figures.ts";
import { type CardPlace, cardPlace, LEADER, type PixelBox } from "./cardPlace.ts";
import { useWhy } from "./useWhy.ts";
import type { Pixel, Size } from "./viewport.ts";

/** Most sentences of the second paragraph. */
const MOST_BESIDES = 3;

/** What the card speaks of, and what it is to keep clear of. */
export interface WhyCardProps {
  readonly circuit: Circuit;
  readonly live: Live;
  readonly faults: readonly Fault[];
  /** A wire or a point. */
  readonly thing: Thing;
  /** Where the leader ends, and what the card should not cover, in pixels of the window. */
  readonly anchor: Pixel;
  readonly window: Size;
  readonly keepClear: readonly { readonly box: PixelBox; readonly weight: number }[];
  onPointer(isOver: boolean): void;
}

/** Why a wire or point is as it is: state, volts, the path in words, what flows and what would change it. */
export function WhyCard({ circuit, live, faults, thing, anchor, window, keepClear, onPointer }: WhyCardProps) {
  const point = pointOf(circuit, thing);
  const why = useWhy(circuit, live, faults, point);
  const scale = useApp(({ settings }) => settings.scale);
  const card = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<CardPlace | null>(null);
  useLayoutEffect(() => {
    const { width = 0, height = 0 } = card.current?.getBoundingClientRect() ?? {};
    if (why) setPlace(cardPlace(anchor, { width, height }, window, keepClear));
  }, [why, anchor, window, keepClear]);
  // While the states are covered up there is nothing to explain.
  if (!why || !live.points.has(point)) return null;
  const wire = circuit.wires.find(({ id }) => thing.is === "wire" && id === thing.id);
  const flow = wire && flowAlong(wire, live.wires.get(wire.id)?.amps ?? 0);
  const alwaysFed = live.points.get(point)?.alwaysFed ?? false;
  const style: CSSProperties & Record<`--${string}`, string> = {
    left: (place?.left ?? 0) / scale,
    top: (place?.top ?? 0) / scale,
    visibility: place ? "visible" : "hidden",
    "--leader": `${LEADER / scale}px`,
    "--along": `${(place?.along ?? 0) / scale}px`,
  };
  return (
    <div
      ref={card}
      className={`card why-card leads-${place?.leader ?? "right"}`}
      role="tooltip"
      id="why-card"
      style={style}
      onPointerEnter={() => onPointer(true)}
      onPointerLeave={() => onPointer(false)}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <h3>
        <StateGlyph state={why.state} alwaysFed={alwaysFed} />
        {wire?.colour !== undefined && <Swatch code={wire.colour} set={circuit.colourCodes} />}
        <span>
          <span className="together">{thing.id}</span> is {STATE_WORDS[why.state]}
        </span>
        {why.volts !== null && <span className="why-volts figures together">{voltsText(why.volts)}</span>}
      </h3>
      <p>{whyPath(circuit, why).join(" ")}</p>
      <p className="why-besides">{whyBesides(circuit, why, flow).slice(0, MOST_BESIDES).join(" ")}</p>
    </div>
  );
}

/** The point that is explained: of a wire the end that tells more, where both are alike its from end. */
function pointOf(circuit: Circuit, thing: Thing): PointId {
  if (thing.is !== "wire") return thing.id;
  return circuit.wires.find(({ id }) => id === thing.id)?.from ?? "";
}
