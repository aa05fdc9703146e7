import { type FormEvent, useMemo, useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { answerWords } from "../../core/lesson/answerWords.ts";
import type { Attempt } from "../../core/lesson/attempt.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import { routeLines } from "../../core/lesson/routeText.ts";
import { verdictsFor } from "../../core/lesson/verdicts.ts";
import { TargetField } from "../panels/TargetField.tsx";
import { Tick } from "../panels/Tick.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { targetsOf } from "../words/fault.ts";
import { unbroken } from "../words/figures.ts";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import type { Draft } from "./learning.ts";
import { useLearning } from "./useLearning.ts";
import { useMoves } from "./useMoves.ts";

/** Names what is wrong and the readings that prove it. Filed, the exercise is over, so that it asks once more. */
export function VerdictForm() {
  const { dispatch } = useAppStore();
  const make = useMoves();
  const attempt = useLearning((learning) => learning.attempt);
  const sight = useLearning((learning) => learning.sight);
  const [isSure, setSure] = useState(false);
  const { circuit } = attempt.exercise;
  const { target, suspect, proof } = sight.draft;
  const choices = useMemo(() => verdictsFor(circuit, target.trim()), [circuit, target]);
  const targets = useMemo(() => nameable(circuit), [circuit]);
  const chosen = choices.find((each) => each.suspect === suspect) ?? choices[0];
  const draft = (change: Partial<Draft>): void => {
    setSure(false);
    dispatch({ do: "learner-sees", sees: { draft: { ...sight.draft, ...change } } });
  };
  const file = (event: FormEvent): void => {
    event.preventDefault();
    if (!chosen) return;
    if (isSure) make({ do: "verdict", suspect: chosen.suspect, proof });
    else setSure(true);
  };
  return (
    <form onSubmit={file}>
      <h3>{SAY.whatIsWrong}</h3>
      <TargetField
        circuit={circuit}
        targets={targets}
        value={target}
        onChange={(value) => draft({ target: value, suspect: "" })}
      />
      {chosen && (
        <label className="field">
          <span className="unseen">{SAY.howItFails}</span>
          <select value={chosen.suspect} onChange={(event) => draft({ suspect: event.target.value })}>
            {choices.map((each) => (
              <option key={each.suspect} value={each.suspect}>
                {each.title}
              </option>
            ))}
          </select>
        </label>
      )}
      <Proofs attempt={attempt} proof={proof} onChange={(numbers) => draft({ proof: numbers })} />
      <button type="submit" className={isSure ? "button is-main" : "button"} disabled={!chosen}>
        {isSure ? SAY.fileIt : SAY.file}
      </button>
      <p className="small" aria-live="polite">
        {isSure ? SAY.fileSure : chosen ? "" : SAY.nameFirst}
      </p>
    </form>
  );
}

/** Parts, wires, places of plugs, and whole plugs. */
function nameable(circuit: Circuit) {
  const plugs = circuit.connectors.map(({ id, label = "" }) => ({
    id,
    about: label === "" ? "whole plug" : `whole plug, ${label}`,
  }));
  return [...targetsOf(circuit), ...plugs.filter(({ id }) => verdictsFor(circuit, id).length > 0)];
}

interface Proving {
  readonly attempt: Attempt;
  readonly proof: readonly number[];
  readonly onChange: (proof: readonly number[]) => void;
}

/** The readings that were taken, each to be ticked; where none is, all of them count. */
function Proofs({ attempt, proof, onChange }: Proving) {
  const lines = routeLines(attempt);
  const renewed = attempt.route.findIndex(({ move }) => move.do === "renew");
  const { circuit } = attempt.exercise;
  const readings = lines.flatMap(({ reading }, index) => {
    const made = attempt.route[index]!;
    if (reading === null || (renewed >= 0 && index > renewed)) return [];
    return [{ number: reading, shown: answerWords(circuit, made), words: moveWords(circuit, made.move) }];
  });
  return (
    <fieldset className="learner-proofs">
      <legend>{SAY.proof}</legend>
      <p className="small">{readings.length === 0 ? SAY.noReadings : SAY.noneTicked}</p>
      <ul>
        {readings.map(({ number, words, shown }) => (
          <li key={number} className="learner-row">
            <Tick
              isOn={proof.includes(number)}
              name={`${words}: ${shown}`}
              onChange={(on) =>
                onChange(
                  on ? [...proof, number].sort((one, other) => one - other) : proof.filter((each) => each !== number),
                )
              }
            />
            <span className="learner-words">{words}</span>
            <b className="learner-end figures">{unbroken(shown)}</b>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
