import type { Circuit, FunctionCheck } from "../../core/circuit/circuit.ts";
import { isDrain } from "../../core/diagnose/drain.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { observeCheck } from "../../core/edit/commands/observeCheck.ts";
import type { Observed } from "../../core/live/judge.ts";
import { ProgressLines } from "../diagnose/ProgressLines.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { observedNow } from "../state/views.ts";
import { failsAs, OBSERVED_TITLES } from "../words/check.ts";
import { counted, minutesText } from "../words/figures.ts";
import type { OrderAnswer } from "../workers/question.ts";
import { Asleep } from "./Asleep.tsx";
import { Caution } from "./Caution.tsx";

const FAILING: readonly Observed[] = ["dead", "weak", "wrong", "stays-on", "sometimes", "blows-its-fuse"];

interface Shown {
  readonly circuit: Circuit;
  readonly check: FunctionCheck;
  readonly answer: OrderAnswer | null;
  readonly isOld: boolean;
}

/** The complaint in one sentence, how it fails, what the whole order costs, and what holds for all rows. */
export function OrderHead({ circuit, check, answer, isOld }: Shown) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const observed = useApp(observedNow);
  const isAsleep = isDrain(check, circuit);
  const word = observed[check.id] ?? failsAs(check);
  const works = Object.values(observed).filter((each) => each === "works").length;
  return (
    <header className="view-head">
      <div className="complaint">
        <h2>{check.label}</h2>
        <button
          type="button"
          className="button is-quiet is-low"
          onClick={() => make((bench) => chooseComplaint(bench, null))}
        >
          Change
        </button>
      </div>
      <p className="order-facts small">
        {isAsleep ? null : (
          <label className="inline-select">
            <span className="unseen">How it fails</span>
            <select
              value={word}
              onChange={(event) => make((bench) => observeCheck(bench, check.id, event.target.value as Observed))}
            >
              {FAILING.map((each) => (
                <option key={each} value={each}>
                  {OBSERVED_TITLES[each]}
                </option>
              ))}
            </select>
          </label>
        )}
        {answer && !isOld && <span className="figures">{factsOf(answer)}</span>}
      </p>
      {answer && !isOld && answer.order.suspects.length > 0 && <ProgressLines order={answer.order} />}
      <p className="order-facts small">
        <span>{works === 0 ? "Nothing ticked as working yet." : `${counted(works, "check")} ticked as working.`}</span>
        <button
          type="button"
          className="button is-quiet is-low"
          onClick={() => dispatch({ do: "open-panel", panel: "works" })}
        >
          What works
        </button>
      </p>
      {isAsleep ? <Asleep before={answer?.order.before ?? []} /> : <HeadCautions cautions={circuit.cautions ?? []} />}
    </header>
  );
}

function factsOf({ order }: OrderAnswer): string {
  if (order.suspects.length === 0) return "";
  const cleared = order.cleared.length === 0 ? "" : `, ${order.cleared.length} cleared`;
  const suspects = `${counted(order.suspects.length, "suspect")}${cleared}.`;
  if (order.steps.length === 0) return suspects;
  return `${counted(order.steps.length, "step")}, ${minutesText(order.minutes)} at most. ${suspects}`;
}

const MOST_CAUTIONS = 2;

/** What holds for all rows stands here once: the leads, and the vehicle's own cautions. */
function HeadCautions({ cautions }: { readonly cautions: readonly string[] }) {
  const more = cautions.length - MOST_CAUTIONS;
  return (
    <>
      <Caution>Black stays on battery −. Eye protection on to clip it.</Caution>
      {cautions.slice(0, MOST_CAUTIONS).map((caution) => (
        <Caution key={caution}>{caution}</Caution>
      ))}
      {more > 0 && <p className="small">{counted(more, "more caution")} of this vehicle on the printed checklist.</p>}
    </>
  );
}
