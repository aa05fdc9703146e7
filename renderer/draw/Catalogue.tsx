import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from "react";
import { ASSEMBLY_WORDS } from "../../core/base/words/edit.ts";
import { firstTurn } from "../../core/edit/newPart.ts";
import { type Dropping, HAND } from "../canvas/tool.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { assemblyMarks } from "./assemblyMarks.ts";
import { DropTile } from "./DropTile.tsx";
import { kindMarks } from "./kindMarks.ts";
import { assembliesFor, kindsFor } from "./offers.ts";
import { tileToward } from "./tileToward.ts";

/** Name of the group of ready assemblies. */
const READY = "Ready to drop";

/**
 * Every kind of part as its symbol and the trade's word, and ready assemblies, narrowed by what is typed. A click or a drag
 * takes it to the drawing.
 */
export function Catalogue({ close }: { readonly close: () => void }) {
  const { dispatch, getState } = useAppStore();
  const [typed, setTyped] = useState("");
  const field = useRef<HTMLInputElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const groups = useGroups(typed);
  useEffect(() => field.current?.focus(), []);
  const take = (dropping: Dropping): void => {
    dispatch({ do: "use-tool", tool: dropping });
    close();
    document.querySelector<HTMLElement>(".sheet-canvas")?.focus({ preventScroll: true });
    if (dropping.isDragged) {
      // Let go elsewhere than on the drawing, which takes what is dropped on it first, it is not placed.
      const drop = (): void => {
        if (getState().open?.tool === dropping) dispatch({ do: "use-tool", tool: HAND });
      };
      document.addEventListener("pointerup", drop, { once: true });
    }
  };
  const first = groups[0]?.tiles[0];
  const walk = (event: KeyboardEvent): void => {
    const tiles = [...(list.current?.querySelectorAll<HTMLElement>("button") ?? [])];
    const next = tileToward(tiles, document.activeElement, event.key);
    if (!next) return;
    event.preventDefault();
    next.focus();
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
            if (event.key === "Enter" && first) take(first.dropping);
            if (event.key === "ArrowDown") {
              event.preventDefault();
              list.current?.querySelector<HTMLElement>("button")?.focus();
            }
          }}
        />
      </label>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys are a help beside Tab */}
      <div className="catalogue-list" ref={list} onKeyDown={walk}>
        {groups.map(({ title, size, tiles }) => (
          <section key={title}>
            <h2 className="place-name">{title}</h2>
            <ul className={`kind-tiles is-${size}`}>
              {tiles.map((tile) => (
                <li key={tile.title}>
                  <DropTile {...tile} size={size} onTake={take} />
                </li>
              ))}
            </ul>
          </section>
        ))}
        {groups.length === 0 && <p className="small">No part is called that. Try another word of the trade.</p>}
      </div>
      <p className="caption">
        Click to place, click again for one more, or drag it over. T turns, M mirrors a part, Esc ends.
      </p>
    </div>
  );
}

/** What is offered for what was typed: parts by their headings, then ready assemblies. */
function useGroups(typed: string) {
  const look = useApp((state) => state.settings.look);
  const volts = useApp((state) => circuitNow(state)?.nominalVolts ?? 12);
  return useMemo(() => {
    const kinds = kindsFor(typed).map((group) => ({
      title: group.title,
      size: "part" as const,
      tiles: group.kinds.map((kind) => ({
        title: kind.title,
        marks: kindMarks(kind, volts, look),
        dropping: { is: "part", kind: kind.name, turn: firstTurn(kind), flip: false } as const,
      })),
    }));
    const ready = assembliesFor(typed).map((id) => ({
      title: ASSEMBLY_WORDS[id],
      marks: assemblyMarks(id, volts, look),
      dropping: { is: "assembly", assembly: id } as const,
    }));
    return [...kinds, ...(ready.length > 0 ? [{ title: READY, size: "assembly" as const, tiles: ready }] : [])];
  }, [typed, look, volts]);
}
