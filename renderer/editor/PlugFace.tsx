import { type KeyboardEvent, useRef } from "react";
import type { Circuit, Connector } from "../../core/circuit/circuit.ts";
import { wiresAt } from "../../core/diagnose/testPoint.ts";
import { Swatch } from "../panels/Swatch.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly plug: Connector;
  /** Half of an in-line joint; empty for a plug. */
  readonly half: string;
  readonly isMirrored: boolean;
  /** Name of the place that is chosen. */
  readonly chosen: string;
  readonly onChoose: (place: string) => void;
}

/** From how many places in a row on they stand closer, and from how many on number and colour stand one below the other. */
const DENSE = 4;
const TIGHT = 5;

/** The face of a connector, each place with its wire and what it carries. Arrows go among the places and choose. */
export function PlugFace({ circuit, plug, half, isMirrored, chosen, onChoose }: Shown) {
  const face = useRef<HTMLTableElement>(null);
  const widest = Math.max(...plug.rows.map((row) => row.length));
  const rows = plug.rows.map((row) => {
    const full = [...row, ...Array.from({ length: widest - row.length }, () => "")];
    return isMirrored ? full.reverse() : full;
  });
  const walk = (event: KeyboardEvent): void => {
    const next = neighbour(rows, chosen, event.key);
    if (next === null) return;
    event.preventDefault();
    onChoose(next);
    face.current?.querySelector<HTMLElement>(`[data-place="${CSS.escape(next)}"]`)?.focus();
  };
  return (
    <div className="plug-scroll">
      <table
        ref={face}
        className={`plug-face ${widest > TIGHT ? "is-tight" : widest > DENSE ? "is-dense" : ""}`}
        aria-label={`Places of ${plug.id}${half}`}
        onKeyDown={walk}
      >
        <tbody>
          {rows.map((row, index) => (
            <tr key={index} className="plug-row">
              {row.map((place, at) => (
                <td key={place === "" ? at : place} className="plug-cell">
                  {place !== "" && (
                    <Place
                      circuit={circuit}
                      point={`${plug.id}-${place}${half}`}
                      place={place}
                      carries={plug.cavities?.[place]}
                      isPlug={plug.cavities !== undefined}
                      isChosen={place === chosen}
                      onChoose={() => onChoose(place)}
                    />
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface Placed {
  readonly circuit: Circuit;
  readonly point: string;
  readonly place: string;
  readonly carries: string | undefined;
  readonly isPlug: boolean;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}

function Place({ circuit, point, place, carries, isPlug, isChosen, onChoose }: Placed) {
  const [wire] = wiresAt(circuit, point);
  const isEmpty = isPlug ? carries === undefined && !wire : !wire;
  const words = isPlug ? (carries ?? "empty") : (wire?.id ?? "no wire");
  return (
    <button
      type="button"
      className={`plug-place ${isEmpty ? "is-empty" : ""} ${isChosen ? "is-chosen" : ""}`}
      data-place={place}
      aria-pressed={isChosen}
      tabIndex={isChosen ? 0 : -1}
      onClick={onChoose}
    >
      <span className="plug-number">
        <span className="unseen">Place</span> <b>{place}</b>
        {wire?.colour !== undefined && <Swatch code={wire.colour} set={circuit.colourCodes} width={28} height={11} />}
      </span>
      <span className="plug-carries">{words}</span>
      {wire?.colour !== undefined && <span className="unseen">{wire.colour}</span>}
    </button>
  );
}

/** Rows down and places to the right for each arrow. */
const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** The next place for an arrow, past gaps; null for another key or at the edge. */
function neighbour(rows: readonly (readonly string[])[], chosen: string, key: string): string | null {
  const step = STEPS[key];
  let row = rows.findIndex((each) => each.includes(chosen));
  let column = rows[row]?.indexOf(chosen) ?? -1;
  while (step) {
    row += step[0];
    column += step[1];
    const place = rows[row]?.[column];
    if (place === undefined) return null;
    if (place !== "") return place;
  }
  return null;
}
