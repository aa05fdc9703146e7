import type { Circuit } from "../../core/circuit/circuit.ts";
import { AT_START } from "../../core/lesson/play.ts";
import { conditionText } from "../../core/live/condition.ts";
import { KeepScene } from "../circuit/KeepScene.tsx";
import { ScenePlayer } from "../circuit/ScenePlayer.tsx";
import { SceneRow } from "../circuit/SceneRow.tsx";
import { placeOfScene } from "../class/lesson.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";
import { ConditionGroup } from "./ConditionGroup.tsx";
import { Icon } from "./Icon.tsx";
import { Toggle } from "./Toggle.tsx";

/** The scenes of a circuit: one click sets the drawing so, and the caption says what is to be seen. */
export function Scenes({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const condition = useApp(conditionNow);
  const now = conditionText(condition);
  const isOnlyChanged = useApp(({ open }) => open?.showsChanged ?? false);
  const { scenes } = circuit;
  const play = useApp(({ open }) => open?.lesson.play ?? AT_START);
  const isSetSo = (at: number): boolean => scenes[at] !== undefined && conditionText(scenes[at].condition) === now;
  const shown = placeOfScene(circuit, condition, play);
  return (
    <ConditionGroup title="Scenes to look at">
      {scenes.length > 1 && <ScenePlayer circuit={circuit} />}
      {scenes.length > 1 && (
        <Toggle
          words="Only what changed"
          about="the rest dimmed"
          isOn={isOnlyChanged}
          onChange={(isOn) => dispatch({ do: "show-changed", isOn })}
        />
      )}
      {scenes.map((scene, at) => (
        <SceneRow
          key={scene.label}
          circuit={circuit}
          scene={scene}
          at={at}
          count={scenes.length}
          isShown={at === shown}
          isSetSo={isSetSo(at)}
          choose={() => dispatch({ do: "play-scenes", play: { ...play, at, shown: 0 } })}
        />
      ))}
      <KeepScene circuit={circuit} />
      <button
        type="button"
        className="button is-quiet is-low"
        onClick={() => dispatch({ do: "export", what: "take-home", palette: "light" })}
      >
        <Icon name="save" size={16} />
        Take-home page with these scenes
      </button>
    </ConditionGroup>
  );
}
