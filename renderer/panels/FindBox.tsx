import { useEffect, useId, useRef, useState } from "react";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { type Found, findIn, foundOn } from "../state/finding.ts";
import { circuitInSight } from "../state/views.ts";
import { Icon } from "./Icon.tsx";
import { WireCode } from "./WireCode.tsx";

const MOST_FOUND = 9;

/** Find: a part, a wire, a colour, a pin or a place; Enter goes there. */
export function FindBox() {
  const keyOf = useKeyOf();
  const { getState, dispatch } = useAppStore();
  const open = useApp((state) => state.isFinding);
  const button = useRef<HTMLButtonElement>(null);
  const close = (): void => {
    dispatch({ do: "close-find" });
    button.current?.focus();
  };
  return (
    <div className="popover">
      <button
        type="button"
        className="icon-button"
        aria-label="Find"
        title={`Find (${keyOf("find")})`}
        aria-expanded={open}
        ref={button}
        onClick={() => dispatch({ do: getState().isFinding ? "close-find" : "open-find" })}
      >
        <Icon name="find" />
        <span className="words">Find</span>
      </button>
      {open && <FindCard close={close} />}
    </div>
  );
}

function FindCard({ close }: { readonly close: () => void }) {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitInSight);
  const [typed, setTyped] = useState("");
  const [at, setAt] = useState(0);
  const card = useRef<HTMLElement>(null);
  const list = useId();
  const { hits: found, more } = circuit ? findIn(circuit, typed, MOST_FOUND) : { hits: [], more: 0 };
  const inSight = useApp(({ open, learning }) => open?.page ?? learning?.sight.page ?? "");
  const active = Math.min(at, found.length - 1);

  useEffect(() => {
    const away = (event: Event): void => {
      if (!card.current?.parentElement?.contains(event.target as Node)) dispatch({ do: "close-find" });
    };
    document.addEventListener("pointerdown", away);
    document.addEventListener("focusin", away);
    return () => {
      document.removeEventListener("pointerdown", away);
      document.removeEventListener("focusin", away);
    };
  }, [dispatch]);

  const goTo = (hit: Found | undefined): void => {
    if (!hit) return;
    dispatch({ do: "find", thing: hit.thing });
    dispatch({ do: "close-find" });
    // What was found is on the drawing, and so is what comes next.
    document.querySelector<HTMLElement>(".sheet-canvas")?.focus({ preventScroll: true });
  };
  return (
    <search className="card popover-card is-below find-card" ref={card}>
      <label className="field">
        <Icon name="find" size={16} />
        <input
          // biome-ignore lint/a11y/noAutofocus: the person has just asked for it
          autoFocus
          type="search"
          value={typed}
          placeholder="X6-6, horn, orange, kick panel"
          aria-label="Find a part, a wire, a colour, a pin or a place"
          role="combobox"
          aria-expanded={found.length > 0}
          aria-controls={list}
          aria-activedescendant={found.length > 0 ? `${list}-${active}` : undefined}
          onChange={(event) => {
            setTyped(event.target.value);
            setAt(0);
          }}
          onKeyDown={(event) => {
            if (event.key === "Escape") close();
            else if (event.key === "Enter") goTo(found[active]);
            else if (event.key === "ArrowDown") setAt(Math.min(found.length - 1, active + 1));
            else if (event.key === "ArrowUp") setAt(Math.max(0, active - 1));
            else return;
            event.preventDefault();
            event.stopPropagation();
          }}
        />
      </label>
      {typed !== "" && found.length === 0 && (
        <p className="find-none">
          Nothing here is called that. Try a designator such as S6, a pin, a colour or a place.
        </p>
      )}
      <div id={list} role="listbox" aria-label="Found" className="menu is-wide">
        {found.map((hit, index) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: keys are read in the field
          // biome-ignore lint/a11y/useFocusableInteractive: focus stays in the field, which names the active one
          <div
            key={`${hit.thing.is} ${hit.name}`}
            id={`${list}-${index}`}
            role="option"
            aria-selected={index === active}
            className={index === active ? "menu-item is-active" : "menu-item"}
            onClick={() => goTo(hit)}
          >
            <b className="together">{hit.name}</b>
            {hit.colour !== null && circuit && <WireCode code={hit.colour} set={circuit.colourCodes} />}
            <span className="menu-about">{hit.about}</span>
            {circuit && <span className="menu-about find-page">{foundOn(circuit, hit, inSight)}</span>}
          </div>
        ))}
      </div>
      {more > 0 && <p className="caption find-more">{more} more. Type another word to narrow it.</p>}
    </search>
  );
}
