import { useMemo } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import type { ProbeOrder, Suspect } from "../../core/diagnose/step.ts";
import { FileLeader } from "../job/FileLeader.tsx";
import { ComplaintChooser } from "../panels/ComplaintChooser.tsx";
import { Empty } from "../panels/Empty.tsx";
import { NotProbed } from "../panels/NotProbed.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow, complaintNow, notProbedNow, orderNow, readingsNow } from "../state/views.ts";
import { ClearedSuspects } from "./ClearedSuspects.tsx";
import { ProgressLines } from "./ProgressLines.tsx";
import { ProveIt } from "./ProveIt.tsx";
import { SuspectRow } from "./SuspectRow.tsx";
import { placesOfSuspects } from "./suspectPlaces.ts";

/** Rows shown before the rest is summed up. */
const MOST_ROWS = 24;

/** What can still be wrong, by place: how likely each is now and before the last reading, and what was cleared by what. */
export function SuspectsView() {
  const circuit = useApp(circuitNow);
  const complaint = useApp(complaintNow);
  const { answer, isOld, trouble } = useApp(orderNow);
  const earlier = useApp(({ open }) => open?.earlier ?? null);
  const notProbed = useApp(notProbedNow);
  if (!circuit) return null;
  if (notProbed !== null) return <NotProbed why={notProbed} />;
  if (circuit.checks.length === 0)
    return (
      <Empty title="Nothing to suspect yet">
        Suspects come from a function check that fails. Add one under What works, then say that it is dead.
      </Empty>
    );
  if (!complaint) return <ComplaintChooser circuit={circuit} />;
  if (!answer && trouble === null) return <Working words="Trying every fault" />;
  return (
    <>
      <header className="view-head">
        <h2>{complaint.label}</h2>
        {answer && <ProgressLines order={answer.order} />}
        {answer && !isOld && <FileLeader order={answer.order} />}
        {trouble !== null && <p className="error">The suspects could not be worked out: {trouble}</p>}
      </header>
      <div className={isOld ? "view-scroll is-old" : "view-scroll"}>
        {answer && <ProveIt circuit={circuit} />}
        {answer && <SuspectList circuit={circuit} order={answer.order} earlier={earlier?.order ?? null} />}
      </div>
    </>
  );
}

interface Listed {
  readonly circuit: Circuit;
  readonly order: ProbeOrder;
  readonly earlier: ProbeOrder | null;
}

function SuspectList({ circuit, order, earlier }: Listed) {
  const readings = useApp(readingsNow);
  const shown = order.suspects.slice(0, MOST_ROWS);
  const places = useMemo(() => placesOfSuspects(circuit, shown), [circuit, shown]);
  const before = useMemo(() => sharesOf(earlier), [earlier]);
  const opened = useApp(({ open }) => open?.suspect ?? null);
  const leader = order.suspects[0]?.id;
  const rest = order.suspects.slice(MOST_ROWS);
  if (order.suspects.length === 0)
    return (
      <Empty title="No single fault of this circuit does that">
        Look again at the check, at what is ticked under What works, or for something that is not drawn.
      </Empty>
    );
  return (
    <>
      <p className="suspect-columns small" aria-hidden="true">
        <span>Suspects</span>
        <span>now</span>
        <span>{before ? "change" : ""}</span>
      </p>
      {places.map(({ name, share, suspects }) => (
        <section key={name}>
          <h3 className="place-name">
            <span>{name}</span>
            <span className="place-minutes figures">{percent(share)}</span>
          </h3>
          <ul className="suspects">
            {suspects.map((suspect) => (
              <SuspectRow
                key={suspect.id}
                suspect={suspect}
                before={before?.get(suspect.id) ?? null}
                order={order}
                isLeader={suspect.id === leader}
                isOpened={suspect.id === opened}
              />
            ))}
          </ul>
        </section>
      ))}
      {rest.length > 0 && (
        <p className="small suspect-rest">
          {rest.length} more, together {percent(rest.reduce((sum, { probability }) => sum + probability, 0))}.
        </p>
      )}
      <p className="small suspect-rest">Something that is not on this drawing: {percent(order.elsewhere)}.</p>
      <ClearedSuspects circuit={circuit} readings={readings} cleared={order.clearedBy} before={before} />
    </>
  );
}

function sharesOf(order: ProbeOrder | null): ReadonlyMap<string, number> | null {
  if (!order) return null;
  const all: readonly Suspect[] = [...order.suspects, ...order.cleared];
  return new Map(all.map(({ id, probability }) => [id, probability]));
}
