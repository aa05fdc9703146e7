import { useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { isInLine } from "../../core/circuit/points.ts";
import { renameConnector } from "../../core/edit/commands/renameConnector.ts";
import type { Part } from "../../core/parts/kind.ts";
import { Icon } from "../panels/Icon.tsx";
import { plugsOf } from "../state/places.ts";
import { InPlace } from "./InPlace.tsx";
import { Plug } from "./Plug.tsx";
import { looseTerminals, plugAdded } from "./plugs.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsk, useAsked } from "./useAsk.ts";

/** The connectors that carry the part's terminals, one of them shown; or how to come by one. */
export function PlugSection({ circuit, part }: { readonly circuit: Circuit; readonly part: Part }) {
  const { ask, trouble } = useAsked();
  const askName = useAsk();
  const [shown, setShown] = useState<string | null>(null);
  const plugs = plugsOf(circuit, part);
  const others = isInLine(part) ? [] : circuit.connectors.filter((each) => each.cavities && !plugs.includes(each));
  const plug = circuit.connectors.find(({ id }) => id === shown) ?? plugs[0];
  const loose = isInLine(part) ? [] : looseTerminals(circuit, part);
  const choices = plug && !plugs.includes(plug) ? [...plugs, plug] : plugs;
  const rename = (typed: string): string | null => {
    const said = askName((bench) => renameConnector(bench, plug!.id, typed));
    if (said === null) setShown(typed);
    return said;
  };
  return (
    <section className="plug-section" aria-label="Connector">
      {plug ? (
        <>
          <h3>
            Connector
            {isInLine(part) ? (
              ` ${plug.id}`
            ) : (
              <InPlace key={plug.id} name="Designator of the connector" value={plug.id} take={rename} />
            )}
          </h3>
          {choices.length > 1 && (
            // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
            <div className="segments" role="group" aria-label="Connectors of the part">
              {choices.map(({ id }) => (
                <button
                  key={id}
                  type="button"
                  className={id === plug.id ? "segment is-now" : "segment"}
                  aria-pressed={id === plug.id}
                  onClick={() => setShown(id)}
                >
                  {id}
                </button>
              ))}
            </div>
          )}
          <Plug key={plug.id} circuit={circuit} part={part} plug={plug} />
        </>
      ) : (
        <>
          <h3>Connector</h3>
          <p className="small">
            {isInLine(part)
              ? "The face of this joint is not drawn yet."
              : "No connector carries its terminals; wires end on the terminals themselves."}
          </p>
        </>
      )}
      {(loose.length > 0 || !plug) && (
        <div className="chart-acts">
          <button type="button" className="button" onClick={() => ask(plugAdded(circuit, part))}>
            <Icon name="add" />
            {plugs.length === 0
              ? "Add a connector"
              : `Connector for ${loose.length > 3 ? "the others" : loose.join(", ")}`}
          </button>
          {loose.length > 0 && others.length > 0 && (
            <span className="inline-select">
              <select
                aria-label="Use a connector that is there"
                value=""
                onChange={({ target }) => setShown(target.value)}
              >
                <option value="">or use one that is there</option>
                {others.map(({ id, label }) => (
                  <option key={id} value={id}>
                    {label === undefined ? id : `${id}, ${label}`}
                  </option>
                ))}
              </select>
            </span>
          )}
        </div>
      )}
      <Trouble words={trouble} />
    </section>
  );
}
