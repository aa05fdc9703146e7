import { useCallback, useMemo, useRef, useState } from "react";
import type { Calls } from "../canvas/shown.ts";
import type { OpenMenu } from "../canvas/useCalls.ts";
import { useSurface } from "../canvas/useSurface.ts";
import { useAppStore } from "../state/AppContext.tsx";
import type { AppStore } from "../state/store.ts";
import { LEARNER_WORDS } from "../words/learner.ts";
import { chosenAt } from "./chosenAt.ts";
import { OfferMenu } from "./OfferMenu.tsx";
import { useLearnerShown } from "./useLearnerShown.ts";

/** The circuit as drawn. A click, or Enter, on anything opens what can be done there and what it costs. */
export function LearnerSheet() {
  const store = useAppStore();
  const shown = useLearnerShown();
  const box = useRef<HTMLDivElement>(null);
  const container = useRef<HTMLDivElement>(null);
  const [menu, setMenu] = useState<OpenMenu | null>(null);
  useSurface(
    box,
    container,
    shown,
    useMemo(() => callsOf(store, setMenu), [store]),
  );
  const back = useCallback(() => {
    setMenu(null);
    box.current?.focus({ preventScroll: true });
  }, []);
  const title = shown.circuit.pages.find(({ id }) => id === shown.page)?.title ?? "";
  const words = chosenAt(shown.circuit, shown.selection);
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
      >
        <div ref={container} className="sheet-layers" aria-hidden="true" />
      </div>
      <p id="sheet-keys" className="unseen">
        {LEARNER_WORDS.keys}
      </p>
      <p className="unseen" role="status" aria-live="polite">
        {words}
      </p>
      {menu && <OfferMenu key={menu.thing.id} thing={menu.thing} at={menu.at} close={back} />}
    </>
  );
}

const nothing = (): void => undefined;
const no = (): boolean => false;

/** What gestures on the drawing ask of the vehicle. Nothing on it is drawn, moved or edited. */
function callsOf({ dispatch, getState }: AppStore, onMenu: (menu: OpenMenu) => void): Calls {
  return {
    onViewport: (viewport) => {
      const page = getState().learning?.sight.page;
      if (page !== undefined) dispatch({ do: "look-at", page, viewport });
    },
    // A hand that holds and one that clicks come to the same: the vehicle stands so until it is thrown back.
    onThrow: (control, position, how) => {
      if (how !== "press") dispatch({ do: "make-moves", moves: [{ do: "throw", control, position }] });
    },
    onHover: (thing) => dispatch({ do: "hover", thing }),
    onSelect: (thing) => dispatch({ do: "choose", thing }),
    onSelectAlso: (thing) => dispatch({ do: "choose", thing }),
    onFind: (thing) => dispatch({ do: "find", thing }),
    onMenu: (thing, at) => onMenu({ thing, at }),
    onSay: (words) => dispatch({ do: "say", words }),
    onSelectAll: nothing,
    onAdd: nothing,
    onMove: nothing,
    onBend: nothing,
    onReattach: nothing,
    onTool: nothing,
    onPlace: nothing,
    onWire: nothing,
    onWires: nothing,
    onGathered: nothing,
    onCarrying: nothing,
    onLead: nothing,
    onWireToWire: nothing,
    onCopy: () => null,
    onPaste: nothing,
    onFiles: nothing,
    onAllOfPage: nothing,
    onGroup: no,
    onKey: no,
    onEdit: nothing,
    onCard: nothing,
  };
}
