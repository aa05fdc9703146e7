import type { PartId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Branch } from "../../core/live/branch.ts";
import type { PartLive } from "../../core/live/live.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { conditionNow, liveShown } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { ampsText } from "../words/figures.ts";
import { partWords } from "../words/live.ts";
import { loadsListed } from "./branchNow.ts";
import { loadTitle } from "./branchWords.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly load: PartId;
  readonly branch: Branch | null;
}

/** Which load, how much current it takes now, and how the drawing stands. */
export function BranchHead({ circuit, load, branch }: Shown) {
  const { dispatch } = useAppStore();
  const condition = useApp(conditionNow);
  const chosen = useApp(({ open }) => (open?.chosen?.is === "part" ? open.chosen.id : null));
  const doing = useApp((state) => doingWords(liveShown(state)?.parts.get(load)));
  const differs = branch !== null && Math.abs(branch.amps - branch.goodAmps) > 0.02 * branch.goodAmps;
  return (
    <header className="view-head">
      <h2 className="unseen">Straight branch of {load}</h2>
      <div className="branch-choice">
        <label className="field">
          <span className="unseen">Load</span>
          <select
            value={load}
            onChange={(event) => dispatch({ do: "print-what", sheets: { load: event.target.value } })}
          >
            {loadsListed(circuit, chosen).map((id) => (
              <option key={id} value={id}>
                {loadTitle(circuit, id)}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="button"
          onClick={() => {
            dispatch({ do: "print-what", sheets: { what: "straight", load } });
            dispatch({ do: "open-print" });
          }}
        >
          <Icon name="print" />
          Print
        </button>
      </div>
      {branch && (
        <p className="branch-amps">
          <b className="figures">{ampsText(branch.amps)}</b>
          <span className="small">
            {doing}
            {differs && <span className="figures"> ({ampsText(branch.goodAmps)} with nothing wrong)</span>}
          </span>
        </p>
      )}
      <p className="caption">{conditionPhrase(circuit, condition)}. Volts to battery −.</p>
    </header>
  );
}

/** What a load does, without its amps: they stand before. */
function doingWords(part: PartLive | undefined): string {
  return part ? partWords({ ...part, amps: 0 }) : "";
}
