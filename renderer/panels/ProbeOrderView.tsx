import { DRAIN_WORDS } from "../../core/base/words/drain.ts";
import { DRAIN, drainCheck } from "../../core/diagnose/drain.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { ProveIt } from "../diagnose/ProveIt.tsx";
import { WiggleList } from "../diagnose/WiggleList.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { circuitNow, complaintNow, notProbedNow, orderNow } from "../state/views.ts";
import { ComplaintChooser } from "./ComplaintChooser.tsx";
import { Empty } from "./Empty.tsx";
import { NotProbed } from "./NotProbed.tsx";
import { OrderHead } from "./OrderHead.tsx";
import { StepList } from "./StepList.tsx";
import { Working } from "./Working.tsx";

/** The probe order: which check fails, what works, and where to probe in which order. */
export function ProbeOrderView() {
  const { dispatch } = useAppStore();
  const make = useMake();
  const circuit = useApp(circuitNow);
  const complaint = useApp(complaintNow);
  const { answer, isOld, trouble } = useApp(orderNow);
  const notProbed = useApp(notProbedNow);
  if (!circuit) return null;
  if (notProbed !== null) return <NotProbed why={notProbed} />;
  if (circuit.checks.length === 0 && !complaint)
    return (
      <div>
        <Empty title="This circuit has no function checks yet">
          A check says what a load should do, such as "horn sounds with the button pressed". The probe order starts from
          the one that fails.
        </Empty>
        <button
          type="button"
          className="button is-quiet add-check"
          onClick={() => dispatch({ do: "open-panel", panel: "works" })}
        >
          Add a check
        </button>
        {drainCheck(circuit) && (
          <button
            type="button"
            className="button is-quiet add-check"
            onClick={() => make((bench) => chooseComplaint(bench, DRAIN))}
          >
            {DRAIN_WORDS.label}
          </button>
        )}
      </div>
    );
  if (!complaint) return <ComplaintChooser circuit={circuit} />;
  return (
    <div className="view-scroll">
      <OrderHead circuit={circuit} check={complaint} answer={answer} isOld={isOld} />
      {trouble !== null && <p className="error">The order could not be worked out: {trouble}</p>}
      {isOld && (
        <Working words={`Trying every fault of ${circuit.parts.length} parts and ${circuit.wires.length} wires`} />
      )}
      {answer && !isOld && <ProveIt circuit={circuit} />}
      {answer?.wiggle && answer.order.suspects.length > 0 && (
        <WiggleList circuit={circuit} wiggle={answer.wiggle} isOld={isOld} />
      )}
      {answer?.wiggle && answer.order.steps.length > 0 && <h3 className="while-it-fails">While it fails</h3>}
      {answer && <StepList circuit={circuit} answer={answer} isOld={isOld} />}
    </div>
  );
}
