import type { Circuit } from "../../core/circuit/circuit.ts";
import { useApp } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";
import { drivenPins } from "../words/pulls.ts";
import { ConditionGroup } from "./ConditionGroup.tsx";

interface Shown {
  readonly circuit: Circuit;
  /** Only the outputs of this part; of all where it is absent. */
  readonly part?: string;
  /** Null leaves the pin to its module. */
  readonly onChoose: (point: string, level: "on" | "off" | null) => void;
}

/** Outputs of control modules, driven by hand or left to the module. Absent without modules. */
export function Drives({ circuit, part, onChoose }: Shown) {
  const condition = useApp(conditionNow);
  return (
    <ConditionGroup title="Module outputs">
      {drivenPins(circuit, part).map((point) => {
        const now = condition.drive?.[point];
        return (
          <div className="control" key={point}>
            <div className="control-name">
              <b>{point}</b>
            </div>
            {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is */}
            <div className="segments" role="group" aria-label={point}>
              <Choice words="Module" isOn={now === undefined} isRest onClick={() => onChoose(point, null)} />
              <Choice words="On" isOn={now === "on"} onClick={() => onChoose(point, "on")} />
              <Choice words="Off" isOn={now === "off"} onClick={() => onChoose(point, "off")} />
            </div>
          </div>
        );
      })}
    </ConditionGroup>
  );
}

function Choice({
  words,
  isOn,
  isRest = false,
  onClick,
}: {
  readonly words: string;
  readonly isOn: boolean;
  readonly isRest?: boolean;
  readonly onClick: () => void;
}) {
  const look = isOn ? (isRest ? "is-now" : "is-thrown") : "";
  return (
    <button
      type="button"
      className={`segment ${look} ${isRest ? "is-rest" : ""}`}
      aria-pressed={isOn}
      onClick={onClick}
    >
      {words}
    </button>
  );
}
