import { useCallback, useMemo, useRef, useState } from "react";
import { CarryHint } from "../draw/CarryHint.tsx";
import { NewWireCard } from "../draw/NewWireCard.tsx";
import { WireHint } from "../draw/WireHint.tsx";
import { ThingMenu } from "../panels/ThingMenu.tsx";
import { Handles } from "../printed/Handles.tsx";
import { useApp } from "../state/AppContext.tsx";
import { pagesNow } from "../state/views.ts";
import { chosenWords } from "./chosenWords.ts";
import { clearBoxes } from "./clearBoxes.ts";
import { dockPlace } from "./dockPlace.ts";
import type { Card, Shown } from "./shown.ts";
import type { SheetSurface } from "./surface.ts";
import { type OpenMenu, useCalls } from "./useCalls.ts";
import { useShown } from "./useShown.ts";
import { useSurface } from "./useSurface.ts";
import { type Pixel, pixelOf, type Size } from "./viewport.ts";
import { WhyCard } from "./WhyCard.tsx";
import { wantedNext } from "./wantedNext.ts";

/** The drawing of the page in hand, with the card that says why and the menu of what is on it. */
export function SheetCanvas() {
  const shown = useShown();
  return shown && <Sheet shown={shown} />;
}

function Sheet({ shown }: { readonly shown: Shown }) {
  const box = useRef<HTMLDivElement>(null);
  const container = useRef<HTMLDivElement>(null);
  const [card, setCard] = useState<Card | null>(null);
  const [menu, setMenu] = useState<OpenMenu | null>(null);
  const [drawn, setDrawn] = useState<readonly string[] | null>(null);
  const [gathered, setGathered] = useState(0);
  const [isCarrying, setCarrying] = useState(false);
  const surface = useSurface(box, container, shown, useCalls(setCard, setMenu, setDrawn, setGathered, setCarrying));
  const scale = useApp(({ settings }) => settings.scale);
  const title = useApp((state) => pagesNow(state).find(({ id }) => id === shown.page)?.title ?? "");
  const backToDrawing = useCallback(() => {
    setMenu(null);
    setDrawn(null);
    box.current?.focus({ preventScroll: true });
  }, []);
  return (
    <>
      <div
        ref={box}
        className="sheet-canvas"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is worked by keys once it has the focus
        tabIndex={0}
        aria-label={`Drawing of the page ${title}`}
        aria-describedby="sheet-keys"
        onFocus={() => setDrawn(null)}
      >
        <div ref={container} className="sheet-layers" aria-hidden="true" />
      </div>
      <Handles surface={surface} box={box} />
      <p id="sheet-keys" className="unseen">
        Home goes to the first point, arrow keys walk along the circuit, a full stop follows a wire to the return and a
        comma to the feed, Enter throws the switch, W says why, Page Down goes to the next part. The list beside the
        drawing has every part and wire with its state.
      </p>
      <p className="unseen" role="status" aria-live="polite">
        {chosenWords(shown)}
      </p>
      {card && surface.current && <Why card={card} shown={shown} surface={surface.current} />}
      {menu && <ThingMenu key={menu.thing.id} thing={menu.thing} at={menu.at} close={backToDrawing} />}
      {drawn !== null && shown.tool.is === "wire" && (
        <NewWireCard
          key={drawn.join(" ")}
          wires={drawn}
          placed={placedFor(surface.current, drawn.at(-1)!, scale)}
          close={backToDrawing}
        />
      )}
      {shown.tool.is === "wire" && drawn === null && <WireHint gathered={gathered} />}
      {shown.tool.is === "carry" && <CarryHint isCarrying={isCarrying} />}
    </>
  );
}

/** Where a card about a wire that was just drawn covers least of what is wanted next. */
function placedFor(surface: SheetSurface | null, wire: string, scale: number): (card: Size) => Pixel {
  return (card) => {
    if (!surface) return { x: 0, y: 0 };
    // The hand is where the wire ended: on a terminal, or on another wire.
    const end = surface.shown.circuit.wires.find(({ id }) => id === wire)?.to ?? "";
    const hand = surface.pixelOfThing({ is: "point", id: end }) ?? surface.pixelOfThing({ is: "wire", id: wire });
    return dockPlace(hand ?? { x: 0, y: 0 }, card, surface.window, wantedNext(surface), scale);
  };
}

interface WhyShown {
  readonly card: Card;
  readonly shown: Shown;
  readonly surface: SheetSurface;
}

function Why({ card, shown, surface }: WhyShown) {
  const { circuit, live, faults } = shown;
  // The card closes before the view moves, so its place is worked out once for each card.
  const place = useMemo(
    () => ({
      anchor: pixelOf(surface.view, card.at),
      window: surface.window,
      keepClear: clearBoxes(surface, card.thing),
    }),
    [card, surface],
  );
  const onPointer = useCallback((isOver: boolean) => surface.card.hold(isOver), [surface]);
  return <WhyCard circuit={circuit} live={live} faults={faults} thing={card.thing} {...place} onPointer={onPointer} />;
}
