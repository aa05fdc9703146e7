import type { Circuit } from "../../core/circuit/circuit.ts";
import { pointAt } from "../../core/circuit/points.ts";
import type { Pixel } from "../canvas/viewport.ts";
import { LeadActs } from "../instruments/LeadActs.tsx";
import { useApp } from "../state/AppContext.tsx";
import type { Thing } from "../state/state.ts";
import { circuitNow } from "../state/views.ts";
import { PartMenu } from "./PartMenu.tsx";
import { PointMenu } from "./PointMenu.tsx";
import { useCardAt } from "./useCardAt.ts";
import { WireMenu } from "./WireMenu.tsx";

interface Shown {
  readonly thing: Thing;
  /** Where it was asked for, client pixels. */
  readonly at: Pixel;
  readonly close: () => void;
}

/** What can be done with a part, wire or pin of the drawing. Escape and a press outside close it. */
export function ThingMenu({ thing, at, close }: Shown) {
  const circuit = useApp(circuitNow);
  const { card, style } = useCardAt(at, firstField, close);
  if (!circuit) return null;
  return (
    <div
      ref={card}
      className="card thing-menu"
      role="dialog"
      tabIndex={-1}
      aria-label={`What can be done with ${thing.id}`}
      style={style}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        close();
      }}
    >
      <Acts circuit={circuit} thing={thing} close={close} />
    </div>
  );
}

function firstField(card: HTMLElement): HTMLElement | null {
  return card.querySelector<HTMLElement>("button, select, input, summary");
}

interface Acting {
  readonly circuit: Circuit;
  readonly thing: Thing;
  readonly close: () => void;
}

function Acts({ circuit, thing, close }: Acting) {
  const { id } = thing;
  const point = thing.is === "point" ? pointAt(circuit, id) : undefined;
  const part =
    point?.kind === "terminal" ? point.part : circuit.parts.find((each) => thing.is === "part" && each.id === id);
  if (part)
    return (
      <>
        <PartMenu circuit={circuit} part={part} close={close} />
        {point && <LeadActs point={id} close={close} />}
      </>
    );
  const wire = circuit.wires.find((each) => thing.is === "wire" && each.id === id);
  if (wire) return <WireMenu circuit={circuit} wire={wire} close={close} />;
  const connector = point?.kind === "cavity" ? point.connector.id : null;
  return <PointMenu circuit={circuit} point={id} connector={connector} close={close} />;
}
