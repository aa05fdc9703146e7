import type { Circuit } from "../../core/circuit/circuit.ts";
import type { ProofRow } from "../../core/diagnose/proofRow.ts";
import type { Reading, Shows } from "../../core/diagnose/reading.ts";
import { beforeText, windowText } from "../../core/paper/proofRow.ts";
import { Caution } from "../panels/Caution.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { minutesText } from "../words/figures.ts";
import { afterSaid, beforeExpected, beforeSaid } from "../words/proof.ts";
import { closedLeads, settingWords } from "../words/step.ts";
import { ProofField } from "./ProofField.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly row: ProofRow;
  /** What was read last, before and after the repair. */
  readonly before: Reading | null;
  readonly after: Reading | null;
  readonly onBefore: (shows: Shows) => void;
  readonly onAfter: (shows: Shows) => void;
}

/** A row of a proof run: leads, setting, what it tells, and the two fields. A press shows the place on the drawing. */
export function ProofRowView({ circuit, row, before, after, onBefore, onAfter }: Shown) {
  const { dispatch } = useAppStore();
  const { step } = row;
  const place = step.point.startsWith("battery") ? step.black : step.point;
  const { nominalVolts } = circuit;
  return (
    <li className="prove-row">
      <span className="knot figures" aria-hidden="true">
        {step.number}
      </span>
      <div className="step-body">
        <button type="button" className="prove-head" onClick={() => dispatch({ do: "find-named", id: place })}>
          <b>{closedLeads(step)}</b>
        </button>
        <p className="step-set">
          <span className="step-minutes figures">{minutesText(step.minutes)}</span>
          {settingWords(circuit, step.settings[0]?.condition ?? {}, [])}
        </p>
        <p className="step-why">{step.why}</p>
        {step.hands === 2 && <p className="step-why">Needs a second pair of hands.</p>}
        {step.cautions.map((caution) => (
          <Caution key={caution}>{caution}</Caution>
        ))}
        <div className="prove-fields">
          <ProofField
            step={step}
            nominalVolts={nominalVolts}
            when="before"
            expected={beforeText(row)}
            expect={beforeExpected(row)}
            said={beforeSaid(circuit, before)}
            onTaken={onBefore}
          />
          <ProofField
            step={step}
            nominalVolts={nominalVolts}
            when="after"
            expected={windowText(row)}
            expect={step.settings[0]!.expect}
            said={afterSaid(circuit, row, after)}
            onTaken={onAfter}
          />
        </div>
      </div>
    </li>
  );
}
