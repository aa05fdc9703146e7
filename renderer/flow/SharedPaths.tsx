import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { openingOf } from "../../core/diagnose/flow/openings.ts";
import { Empty } from "../panels/Empty.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow, sharesNow } from "../state/views.ts";
import { JumperView } from "./JumperView.tsx";
import { SharesRows } from "./SharesRows.tsx";
import { SneakPaths } from "./SneakPaths.tsx";

/** What else hangs on a fuse, splice, ground, connector or wire, what a jumper would do, and the ways current can run against the drawn direction. */
export function SharedPaths() {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const place = useApp(({ open }) => open?.place ?? "");
  const { answer, isOld, trouble } = useApp(sharesNow);
  if (!circuit) return null;
  return (
    <>
      <header className="view-head">
        <h2 className="unseen">Shared paths</h2>
        <label className="field">
          <span className="unseen">Fuse, splice, ground, connector or wire</span>
          <select value={place} onChange={(event) => dispatch({ do: "show-shares", place: event.target.value })}>
            <option value="">Choose a fuse, splice or ground</option>
            {placesListed(circuit, place).map(({ id, label }) => (
              <option key={id} value={id}>
                {label === undefined ? id : `${id}, ${label}`}
              </option>
            ))}
          </select>
        </label>
      </header>
      <div className="view-scroll shared-paths">
        {trouble !== null && <p className="error">What hangs there could not be worked out: {trouble}</p>}
        {place === "" && (
          <Empty title="What else hangs on this?">
            Choose a fuse, splice or ground here, or press a wire or pin on the drawing and ask there.
          </Empty>
        )}
        {place !== "" && isOld && <Working words={`Solving every position for ${place}`} />}
        {place !== "" && !isOld && answer?.ok && <SharesRows circuit={circuit} shares={answer.value} />}
        {place !== "" && !isOld && answer && !answer.ok && <p className="error">{sentence(answer.refusal)}</p>}
        <JumperView circuit={circuit} />
        <SneakPaths circuit={circuit} />
      </div>
    </>
  );
}

interface Listed {
  readonly id: string;
  readonly label?: string;
}

/** Fuses, splices and grounds in the circuit's order, and what was asked for beside them. */
function placesListed(circuit: Circuit, place: string): readonly Listed[] {
  const parts = circuit.parts.filter(({ id, kind }) => kind !== "connector" && openingOf(circuit, id).ok);
  const isListed = place === "" || parts.some(({ id }) => id === place);
  return isListed ? parts : [{ id: place }, ...parts];
}
