import type { PartId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { complaintNow } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { workingFor } from "./branchNow.ts";

/** A load without current has no branch to follow: says so, and offers to set the drawing so that it has. */
export function NoCurrent({ circuit, load }: { readonly circuit: Circuit; readonly load: PartId }) {
  const make = useMake();
  const complaint = useApp(complaintNow);
  const working = workingFor(wiringOf(circuit), load, complaint?.id ?? null);
  return (
    <div className="empty">
      <b>{load} carries no current now</b>
      {working ? (
        <>
          <p className="small">
            Its branch is followed along the current. Set the drawing so that it works
            {working.label === null ? "" : `: ${working.label}`}.
          </p>
          <p>
            <button type="button" className="button" onClick={() => make((bench) => setUp(bench, working.condition))}>
              {conditionPhrase(circuit, working.condition)}
            </button>
          </p>
        </>
      ) : (
        <p className="small">
          In no function check or scene does it carry any. Add a check that says when it should work, such as “horn
          sounds with the button pressed”.
        </p>
      )}
    </div>
  );
}
