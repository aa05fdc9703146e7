import type { Circuit } from "../../core/circuit/circuit.ts";
import type { CircuitControl } from "../../core/circuit/points.ts";
import { costOf, refusalOf } from "../../core/lesson/attempt.ts";
import type { Move } from "../../core/lesson/move.ts";
import { Icon } from "../panels/Icon.tsx";
import { asOnTheHandle } from "../panels/segments.ts";
import { pageFirst } from "../panels/stripControls.ts";
import { controlTitle, positionTitle } from "../words/condition.ts";
import { minutesText } from "../words/figures.ts";
import { useLearning } from "./useLearning.ts";
import { useMoves } from "./useMoves.ts";

/** Every control with its positions, and what a throw costs. In a row that is pushed sideways where it has no room. */
export function LearnerStrip() {
  const circuit = useLearning(({ attempt }) => attempt.exercise.circuit);
  const page = useLearning(({ sight }) => sight.page);
  const controls = pageFirst(circuit, page);
  if (controls.length === 0) return null;
  return (
    <section className="strip is-pushed" aria-label="Controls">
      <div className="strip-row">
        {controls.map((control) => (
          <LearnerControl key={control.key} circuit={circuit} control={control} />
        ))}
      </div>
    </section>
  );
}

function LearnerControl({ circuit, control }: { readonly circuit: Circuit; readonly control: CircuitControl }) {
  const attempt = useLearning((learning) => learning.attempt);
  const make = useMoves();
  const { key, part, rest } = control;
  const now = attempt.condition.set?.[key] ?? rest;
  const label = control.control.label ?? part.label ?? "";
  const to = (position: string): Move => ({ do: "throw", control: key, position });
  const price = minutesText(costOf(attempt, to(rest)));
  return (
    <div className="control" data-key={key}>
      <div className="control-name">
        <b>{part.id}</b>
        <span>{label}</span>
        <span className="caption figures">{price}</span>
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is */}
      <div className="segments" role="group" aria-label={`${controlTitle(circuit, control)} ${label}`.trim()}>
        {asOnTheHandle(control.control.positions).map(({ name, springsBackTo }) => {
          const isNow = name === now;
          const isRest = name === rest;
          const springs = springsBackTo !== undefined;
          const state = isNow ? (isRest ? "is-now" : springs ? "is-thrown is-held" : "is-thrown") : "";
          return (
            <button
              key={name}
              type="button"
              className={`segment ${state} ${isRest ? "is-rest" : ""}`}
              aria-pressed={isNow}
              aria-label={`${positionTitle(name)}${isRest && name !== "rest" ? ", rest" : ""}${springs ? ", held there" : ""}, ${price}`}
              data-position={name}
              onClick={() => refusalOf(attempt, to(name))?.code !== "move-stands" && make(to(name))}
            >
              {springs && <Icon name="springs" size={16} />}
              <span className="segment-words" data-words={positionTitle(name)}>
                {positionTitle(name)}
              </span>
            </button>
          );
        })}
      </div>
    </div>
  );
}
