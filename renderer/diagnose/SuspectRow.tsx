import { percent } from "../../core/diagnose/progressWords.ts";
import type { OutcomeOf, ProbeOrder, Step, Suspect } from "../../core/diagnose/step.ts";
import { FileVerdict } from "../job/FileVerdict.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { thingNamed } from "../state/places.ts";
import { circuitNow } from "../state/views.ts";
import { signed } from "../words/figures.ts";
import { SuspectWeight } from "./SuspectWeight.tsx";

interface Shown {
  readonly suspect: Suspect;
  /** Its share before the last reading; null where nothing changed yet. */
  readonly before: number | null;
  readonly order: ProbeOrder;
  readonly isLeader: boolean;
  readonly isOpened: boolean;
}

/** Rows of the order of which it is said what they would read with a suspect. */
const MOST_ROWS = 5;

/**
 * A suspect: how likely now, how that changed, and on a press where it sits, the drawing as it would be with it, and what the
 * next rows would read.
 */
export function SuspectRow({ suspect, before, order, isLeader, isOpened }: Shown) {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const target = suspect.faults[0]?.target ?? "";
  const isHovered = useApp(({ open }) => suspect.faults.some((fault) => fault.target === open?.hovered?.id));
  const { probability } = suspect;
  const change = before === null ? null : Math.round((probability - before) * 100);
  const look = ["suspect", isLeader ? "is-leader" : "", isOpened ? "is-opened" : "", isHovered ? "is-hovered" : ""];
  const parts = isLeader ? partingWords(order) : null;
  return (
    <li
      className={look.join(" ")}
      onPointerEnter={() => dispatch({ do: "hover", thing: circuit && thingNamed(circuit, target) })}
      onPointerLeave={() => dispatch({ do: "hover", thing: null })}
    >
      <button
        type="button"
        className="suspect-head"
        aria-expanded={isOpened}
        onClick={() => dispatch({ do: "show-suspect", id: isOpened ? null : suspect.id })}
      >
        <span className="suspect-name">{suspect.title}</span>
        <span className="suspect-share figures">{percent(probability)}</span>
        <span className="suspect-change figures">
          {change === null || change === 0 ? "" : `${change > 0 ? "+" : ""}${signed(change)}`}
        </span>
      </button>
      <span className="suspect-bar" aria-hidden="true">
        <i style={{ width: `${probability * 100}%` }} />
        {before !== null && <b style={{ left: `${before * 100}%` }} />}
      </span>
      {parts !== null && <p className="small">{parts}</p>}
      {(isLeader || isOpened) &&
        suspect.notes.map((note) => (
          <p key={note} className="small">
            {note}
          </p>
        ))}
      {isOpened && (
        <>
          <Fingerprint suspect={suspect} steps={order.steps.slice(0, MOST_ROWS)} />
          <div className="suspect-acts">
            <FileVerdict suspect={suspect.id} order={order} words="File as the verdict" />
          </div>
          <SuspectWeight suspect={suspect} />
        </>
      )}
    </li>
  );
}

/** What the next rows would read with this suspect. */
function Fingerprint({ suspect, steps }: { readonly suspect: Suspect; readonly steps: readonly Step[] }) {
  const rows = steps.flatMap((step) => {
    const outcome = holding(step, suspect);
    return outcome ? [{ step, outcome }] : [];
  });
  if (rows.length === 0) return null;
  return (
    <dl className="facts fingerprint">
      {rows.map(({ step, outcome }) => (
        <div key={step.number}>
          <dt>
            {step.number} {step.point}
          </dt>
          <dd>
            {outcome.word}
            {outcome.limit === "" ? "" : ` (${outcome.limit})`}
          </dd>
        </div>
      ))}
    </dl>
  );
}

function holding({ outcomes }: Step, { id }: Suspect): OutcomeOf | undefined {
  return outcomes.find(({ leaves }) => leaves.some((each) => each.id === id));
}

/** What parts the leader from the next that has another repair: "Step 2 at SP1.3 parts it from W13 broken: low with it, right with that." */
function partingWords({ suspects, steps }: ProbeOrder): string | null {
  const [leader] = suspects;
  const next = suspects.find(({ repairGroup }) => repairGroup !== leader?.repairGroup);
  if (!leader || !next) return null;
  for (const step of steps) {
    const [one, other] = [holding(step, leader), holding(step, next)];
    if (one && other && one !== other)
      return `Step ${step.number} at ${step.point} parts it from ${next.title}: ${one.word} with it, ${other.word} with that.`;
  }
  return `Nothing that is left parts it from ${next.title}.`;
}
