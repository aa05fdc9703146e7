import { useId } from "react";
import type { Circuit, Connector } from "../../core/circuit/circuit.ts";
import { isInLine, terminalPoint } from "../../core/circuit/points.ts";
import { wiresAt } from "../../core/diagnose/testPoint.ts";
import { fillCavity } from "../../core/edit/commands/fillCavity.ts";
import { recolourWire } from "../../core/edit/commands/recolourWire.ts";
import { resizeWire } from "../../core/edit/commands/resizeWire.ts";
import { setRows } from "../../core/edit/commands/setRows.ts";
import type { Part } from "../../core/parts/kind.ts";
import { Swatch } from "../panels/Swatch.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { colourWords } from "../words/colour.ts";
import { placeNamed } from "./faceRows.ts";
import { InPlace } from "./InPlace.tsx";
import { looseTerminals } from "./plugs.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsk, useAsked } from "./useAsk.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly plug: Connector;
  /** Name of the place. */
  readonly cavity: string;
  readonly half: string;
  readonly onRename: (place: string) => void;
}

/** One place of a connector: its name, the terminal in it, and the colour and size of the wires that end there. */
export function CavityFields({ circuit, part, plug, cavity, half, onRename }: Shown) {
  const { ask, trouble } = useAsked();
  const askName = useAsk();
  const wires = wiresAt(circuit, `${plug.id}-${cavity}${half}`);
  const rename = (typed: string): string | null => {
    const said = askName((bench) => setRows(bench, plug.id, placeNamed(plug.rows, cavity, typed)));
    if (said === null) onRename(typed);
    return said;
  };
  const isOnly = plug.rows.flat().filter((name) => name !== "").length === 1;
  return (
    <section className="cavity-fields" aria-label={`Cavity ${cavity}`}>
      <h3>
        Cavity
        {isInLine(part) ? ` ${cavity}${half}` : <InPlace name="Number of the cavity" value={cavity} take={rename} />}
        {!isOnly && !isInLine(part) && (
          <button
            type="button"
            className="button is-quiet"
            onClick={() => ask((bench) => setRows(bench, plug.id, placeNamed(plug.rows, cavity, "")))}
          >
            Remove this place
          </button>
        )}
      </h3>
      {plug.cavities && <Carried circuit={circuit} part={part} plug={plug} cavity={cavity} ask={ask} />}
      {wires.map((wire) => (
        <div className="value-pair is-wire" key={wire.id}>
          <div className="value-coded">
            {wire.colour !== undefined && <Swatch code={wire.colour} set={circuit.colourCodes} />}
            <ValueField
              label={`Colour of ${wire.id}`}
              value={wire.colour ?? ""}
              usual="not known"
              unit={wire.colour === undefined ? "" : colourWords(wire.colour, circuit.colourCodes)}
              change={(typed) => (bench) => recolourWire(bench, wire.id, typed)}
            />
          </div>
          <ValueField
            label="Size"
            value={wire.mm2 === undefined ? "" : String(wire.mm2)}
            usual="not known"
            unit="mm²"
            change={(typed) => (bench) => resizeWire(bench, wire.id, typed)}
          />
        </div>
      ))}
      {wires.length === 0 && <p className="small">No wire ends here yet.</p>}
      <Trouble words={trouble} />
    </section>
  );
}

interface Carrying extends Pick<Shown, "circuit" | "part" | "plug" | "cavity"> {
  readonly ask: ReturnType<typeof useAsked>["ask"];
}

/** The terminal in the place: one of the part's that is in no other place, or none. */
function Carried({ circuit, part, plug, cavity, ask }: Carrying) {
  const id = useId();
  const carries = plug.cavities?.[cavity] ?? "";
  const loose = looseTerminals(circuit, part).map((terminal) => terminalPoint(part, terminal));
  const choices = carries === "" ? loose : [carries, ...loose];
  return (
    <div className="value">
      <label className="value-label small" htmlFor={id}>
        Terminal
      </label>
      <span className="field">
        <select
          id={id}
          value={carries}
          onChange={({ target }) =>
            ask((bench) => fillCavity(bench, plug.id, cavity, target.value === "" ? null : target.value))
          }
        >
          <option value="">none, empty</option>
          {choices.map((point) => (
            <option key={point} value={point}>
              {point}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
