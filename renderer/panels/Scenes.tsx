import type { Circuit } from "../../core/circuit/circuit.ts";
import { conditionText } from "../../core/live/condition.ts";
import { KeepScene } from "../circuit/KeepScene.tsx";
import { SceneRow } from "../circuit/SceneRow.tsx";
import { useApp } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";
import { ConditionGroup } from "./ConditionGroup.tsx";

/** The scenes of a circuit: one click sets the drawing so, and the caption says what is to be seen. */
export function Scenes({ circuit }: { readonly circuit: Circuit }) {
  const now = conditionText(useApp(conditionNow));
  const { scenes } = circuit;
  return (
    <ConditionGroup title="Scenes to look at">
      {scenes.map((scene, at) => (
        <SceneRow
          key={scene.label}
          scene={scene}
          at={at}
          count={scenes.length}
          isShown={conditionText(scene.condition) === now}
        />
      ))}
      <KeepScene circuit={circuit} />
    </ConditionGroup>
  );
}
