import { useId, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Circuit, Connector } from "../../core/circuit/circuit.ts";
import { fillPins } from "../../core/edit/commands/fillPins.ts";
import { pinList } from "../../core/edit/pinList.ts";
import { Icon } from "../panels/Icon.tsx";
import { WireCode } from "../panels/WireCode.tsx";
import { counted } from "../words/figures.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

/** A pin list as it is printed or copied, and beside it what was understood of each line before anything is changed. */
export function PinPaste({ circuit, plug }: { readonly circuit: Circuit; readonly plug: Connector }) {
  const { ask, trouble } = useAsked();
  const [text, setText] = useState("");
  const id = useId();
  const rows = pinList(text, circuit.colourCodes);
  const good = rows.filter(({ wrong }) => wrong === null);
  const fill = (): void => {
    if (ask((bench) => fillPins(bench, plug.id, text)) === null) setText("");
  };
  return (
    <details className="pin-paste">
      <summary>
        <Icon name="down" size={16} />
        Paste a pin list
      </summary>
      <label className="small" htmlFor={id}>
        One pin a line: number, colour, words.
      </label>
      <textarea
        id={id}
        rows={4}
        value={text}
        spellCheck={false}
        placeholder={"6 OG/RD feed\n4 BU/RD motor"}
        onChange={(event) => setText(event.target.value)}
      />
      {rows.length > 0 && (
        <table className="pin-rows small">
          <caption className="unseen">What was understood</caption>
          <tbody>
            {rows.map((row, index) => (
              <tr key={index} className={row.wrong ? "is-wrong" : ""}>
                <th scope="row">{row.pin === "" ? <span className="unseen">no number</span> : row.pin}</th>
                <td>{row.colour !== null && <WireCode code={row.colour} set={circuit.colourCodes} />}</td>
                <td>{row.wrong ? sentence(row.wrong) : row.words}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {good.length > 0 && (
        <div className="chart-acts">
          <button type="button" className="button" onClick={fill}>
            Fill in {counted(good.length, "pin")}
          </button>
          {rows.length > good.length && <span className="small">{rows.length - good.length} passed over</span>}
        </div>
      )}
      <Trouble words={trouble} />
    </details>
  );
}
