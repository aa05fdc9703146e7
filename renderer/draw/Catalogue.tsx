import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from "react";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { kindsFor } from "./kindsFor.ts";
import { PartTile } from "./PartTile.tsx";

/** Tiles in a row, for the arrow keys. */
const ACROSS = 4;

/** Every kind of part as its symbol and the trade's word, narrowed by what is typed. A click takes it to the drawing. */
export function Catalogue({ close }: { readonly close: () => void }) {
  const { dispatch } = useAppStore();
  const look = useApp((state) => state.settings.look);
  const volts = useApp((state) => circuitNow(state)?.nominalVolts ?? 12);
  const [typed, setTyped] = useState("");
  const field = useRef<HTMLInputElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const groups = useMemo(() => kindsFor(typed), [typed]);
  useEffect(() => field.current?.focus(), []);
  const take = (kind: string): void => {
    dispatch({ do: "use-tool", tool: { is: "part", kind, turn: 0, flip: false } });
    close();
    document.querySelector<HTMLElement>(".sheet-canvas")?.focus();
  };
  const first = groups[0]?.kinds[0];
  const walk = (event: KeyboardEvent): void => {
    const step = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: ACROSS, ArrowUp: -ACROSS }[event.key];
    const tiles = [...(list.current?.querySelectorAll<HTMLElement>("button") ?? [])];
    const at = tiles.indexOf(document.activeElement as HTMLElement);
    if (step === undefined || at < 0) return;
    event.preventDefault();
    tiles[Math.max(0, Math.min(tiles.length - 1, at + step))]?.focus();
  };
  return (
    <div className="catalogue">
      <label className="field">
        <Icon name="find" size={16} />
        <input
          ref={field}
          type="search"
          value={typed}
          placeholder="relay, lamp, ground"
          aria-label="Find a part by the trade's word"
          maxLength={60}
          onChange={(event) => setTyped(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === "Enter" && first) take(first.name);
            if (event.key === "ArrowDown") {
              event.preventDefault();
              list.current?.querySelector<HTMLElement>("button")?.focus();
            }
          }}
        />
      </label>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys are a help beside Tab */}
      <div className="catalogue-list" ref={list} onKeyDown={walk}>
        {groups.map(({ title, kinds }) => (
          <section key={title}>
            <h2 className="place-name">{title}</h2>
            <ul className="kind-tiles">
              {kinds.map((kind) => (
                <li key={kind.name}>
                  <PartTile kind={kind} volts={volts} look={look} onTake={take} />
                </li>
              ))}
            </ul>
          </section>
        ))}
        {groups.length === 0 && <p className="small">No part is called that. Try another word of the trade.</p>}
      </div>
      <p className="caption">Click to place, click again for one more. T turns, M mirrors, Esc ends.</p>
    </div>
  );
}
