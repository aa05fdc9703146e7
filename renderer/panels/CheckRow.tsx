import { memo } from "react";
import type { Circuit, FunctionCheck } from "../../core/circuit/circuit.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { observeCheck } from "../../core/edit/commands/observeCheck.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import type { Observed } from "../../core/live/judge.ts";
import { CheckMenu } from "../circuit/CheckMenu.tsx";
import { useApp } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { useMake } from "../state/useMake.ts";
import { verdictOf } from "../state/views.ts";
import { OBSERVED_TITLES, VERDICT_TITLES } from "../words/check.ts";
import { conditionPhrase } from "../words/condition.ts";
import { Tick } from "./Tick.tsx";

const WORDS = Object.keys(OBSERVED_TITLES) as readonly Observed[];

/** One check: its label, what to set, what was seen, and what the drawing does in it with the faults put in. */
export const CheckRow = memo(function CheckRow({
  circuit,
  check,
}: {
  readonly circuit: Circuit;
  readonly check: FunctionCheck;
}) {
  const make = useMake();
  const seen = useApp((state) => benchOf(state)?.observed[check.id] ?? "not-tried");
  const isComplaint = useApp((state) => benchOf(state)?.complaint === check.id);
  const verdict = useApp((state) => verdictOf(state, check.id));
  const observe = (word: Observed): void => make((bench) => observeCheck(bench, check.id, word));
  const works = seen === "works";
  return (
    <li className={isComplaint ? "check is-complaint" : "check"}>
      <Tick isOn={works} name={`${check.label}: works`} onChange={(on) => observe(on ? "works" : "not-tried")} />
      <div className="check-body">
        <button
          type="button"
          className="check-name"
          title="Set the drawing so"
          onClick={() => make((bench) => setUp(bench, check.condition))}
        >
          <b>{check.label}</b>
          <span className="small">{conditionPhrase(circuit, check.condition)}</span>
        </button>
        <div className="check-acts">
          <label className="inline-select">
            <span className="unseen">Seen: {check.label}</span>
            <select value={seen} onChange={(event) => observe(event.target.value as Observed)}>
              {WORDS.map((word) => (
                <option key={word} value={word}>
                  {OBSERVED_TITLES[word]}
                </option>
              ))}
            </select>
          </label>
          {isComplaint ? (
            <span className="small">The complaint</span>
          ) : (
            <button
              type="button"
              className="button is-quiet is-low"
              onClick={() => make((bench) => chooseComplaint(bench, check.id))}
            >
              Complaint
            </button>
          )}
          <CheckMenu check={check} />
          {verdict !== null && <span className="check-verdict small">In the drawing: {VERDICT_TITLES[verdict]}</span>}
        </div>
      </div>
    </li>
  );
});
