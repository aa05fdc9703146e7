import type { Circuit } from "../../core/circuit/circuit.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { conditionText } from "../../core/live/condition.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { conditionNow } from "../state/views.ts";
import { ConditionGroup } from "./ConditionGroup.tsx";
import { Icon } from "./Icon.tsx";

/** The scenes of a circuit: one click sets the drawing so, and the caption says what is to be seen. */
export function Scenes({ circuit }: { readonly circuit: Circuit }) {
  const make = useMake();
  const now = conditionText(useApp(conditionNow));
  return (
    <ConditionGroup title="Scenes to look at">
      {circuit.scenes.map(({ label, condition, caption }) => {
        const isShown = conditionText(condition) === now;
        return (
          <button
            type="button"
            key={label}
            className={isShown ? "scene is-shown" : "scene"}
            aria-pressed={isShown}
            onClick={() => make((bench) => setUp(bench, condition))}
          >
            <span className="scene-name">
              {label}
              <Icon name={isShown ? "tick" : "onward"} size={16} />
            </span>
            {isShown && caption !== undefined && <span className="small">{caption}</span>}
          </button>
        );
      })}
    </ConditionGroup>
  );
}
