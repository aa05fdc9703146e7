import { type KeyboardEvent, useRef, useState } from "react";
import { useApp } from "../state/AppContext.tsx";
import { listed } from "../state/listing.ts";
import { circuitNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { Icon } from "./Icon.tsx";
import { PartRow } from "./PartRow.tsx";
import { WireRow } from "./WireRow.tsx";

/**
 * Every part and wire with its state in words: the drawing for those who do not see it, and a list for all. Arrow keys go
 * along it, Enter finds on the drawing and opens what can be done.
 */
export function PartsList() {
  const circuit = useApp(circuitNow);
  const [typed, setTyped] = useState("");
  const list = useRef<HTMLDivElement>(null);
  if (!circuit) return null;
  const { parts, wires } = listed(circuit, typed);
  const walk = (event: KeyboardEvent): void => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const rows = [...(list.current?.querySelectorAll<HTMLElement>(".row-head") ?? [])];
    const at = rows.indexOf(document.activeElement as HTMLElement);
    if (step === undefined || at < 0) return;
    event.preventDefault();
    rows[at + step]?.focus();
  };
  return (
    <>
      <header className="view-head">
        <h2>Parts and wires</h2>
        <label className="field">
          <Icon name="find" size={16} />
          <input
            type="search"
            value={typed}
            placeholder="S6, horn, orange"
            aria-label="Narrow the list"
            onChange={(event) => setTyped(event.target.value)}
          />
        </label>
      </header>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys are a help beside Tab */}
      <div className="view-scroll listing" ref={list} onKeyDown={walk}>
        <h3 className="place-name">{counted(parts.length, "part")}</h3>
        <ul>
          {parts.map((part) => (
            <PartRow key={part.id} part={part} />
          ))}
        </ul>
        <h3 className="place-name">{counted(wires.length, "wire")}</h3>
        <ul>
          {wires.map((wire) => (
            <WireRow key={wire.id} wire={wire} set={circuit.colourCodes} />
          ))}
        </ul>
      </div>
    </>
  );
}
