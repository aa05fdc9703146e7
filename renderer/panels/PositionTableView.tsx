import { useState } from "react";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { connectorsOf } from "../state/places.ts";
import { circuitNow, hasFaults, notProbedNow, showsFaults, tablesNow } from "../state/views.ts";
import { ConnectorFace } from "./ConnectorFace.tsx";
import { Empty } from "./Empty.tsx";
import { Icon } from "./Icon.tsx";
import { NotProbed } from "./NotProbed.tsx";
import { PositionRows } from "./PositionRows.tsx";
import { Working } from "./Working.tsx";

/** The position table of a connector: each pin in each position, plugged in or unplugged. */
export function PositionTableView() {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const connector = useApp(({ open }) => open?.connector ?? "");
  const { answer, isOld, trouble } = useApp(tablesNow);
  const faulty = useApp((state) => hasFaults(state) && showsFaults(state));
  const [plugged, setPlugged] = useState(true);
  const notProbed = useApp(notProbedNow);
  if (!circuit) return null;
  if (notProbed !== null) return <NotProbed why={notProbed} />;
  const connectors = connectorsOf(circuit);
  if (connectors.length === 0)
    return (
      <Empty title="This circuit has no connectors yet">
        A position table lists what each pin of a plug reads in each position of the switches.
      </Empty>
    );
  return (
    <>
      <header className="view-head">
        <h2 className="unseen">Position table</h2>
        <div className="table-choice">
          <label className="field">
            <span className="unseen">Connector</span>
            <select
              value={connector}
              onChange={(event) => dispatch({ do: "show-table", connector: event.target.value })}
            >
              {connectors.map(({ id, label }) => (
                <option key={id} value={id}>
                  {label === undefined ? id : `${id}, ${label}`}
                </option>
              ))}
              {connectors.length > 1 && <option value="">All connectors</option>}
            </select>
          </label>
          {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is */}
          <div className="segments" role="group" aria-label="Plug">
            <PlugButton words="Plugged in" isOn={plugged} onClick={() => setPlugged(true)} />
            <PlugButton words="Unplugged" isOn={!plugged} onClick={() => setPlugged(false)} />
          </div>
        </div>
        <p className="small">
          Volts to battery −, then a 4 A lamp to battery − and to battery +.
          {plugged ? " Back-probed, plug on." : " Harness half, plug off."}
          {faulty && " With the faults that are put in."}
        </p>
      </header>
      {answer && !isOld && (
        <button
          type="button"
          className="button is-quiet is-low table-save"
          onClick={() => dispatch({ do: "export", what: "table", palette: "light" })}
        >
          <Icon name="save" size={16} />
          Save as CSV
        </button>
      )}
      {trouble !== null && <p className="error">The table could not be worked out: {trouble}</p>}
      {isOld && <Working words={`Reading ${connector === "" ? "every connector" : connector} in every position`} />}
      {answer && (
        <div className={isOld ? "view-scroll is-old" : "view-scroll"}>
          {answer.map((table) => (
            <section key={table.connector}>
              {connector === "" && <h3 className="place-name">{table.connector}</h3>}
              {table.rows[0] && <ConnectorFace circuit={circuit} point={table.rows[0].point} isLit={false} />}
              <PositionRows circuit={circuit} table={table} plugged={plugged} />
            </section>
          ))}
        </div>
      )}
    </>
  );
}

function PlugButton({
  words,
  isOn,
  onClick,
}: {
  readonly words: string;
  readonly isOn: boolean;
  readonly onClick: () => void;
}) {
  return (
    <button type="button" className={isOn ? "segment is-now" : "segment"} aria-pressed={isOn} onClick={onClick}>
      {words}
    </button>
  );
}
