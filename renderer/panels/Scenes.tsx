import { useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { AT_START } from "../../core/lesson/play.ts";
import { conditionText } from "../../core/live/condition.ts";
import { KeepScene } from "../circuit/KeepScene.tsx";
import { ScenePlayer } from "../circuit/ScenePlayer.tsx";
import { SceneRow } from "../circuit/SceneRow.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";
import { ConditionGroup } from "./ConditionGroup.tsx";
import { Icon } from "./Icon.tsx";
import { Toggle } from "./Toggle.tsx";

/** The scenes of a circuit: one click sets the drawing so, and the caption says what is to be seen. */
export function Scenes({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const now = conditionText(useApp(conditionNow));
  const isOnlyChanged = useApp(({ open }) => open?.showsChanged ?? false);
  const { scenes } = circuit;
  const [play, setPlay] = useState(AT_START);
  const isSetSo = (at: number): boolean => scenes[at] !== undefined && conditionText(scenes[at].condition) === now;
  // Several scenes may look at different things of one setting: the one that was chosen is the one that is shown.
  const shown = isSetSo(play.at) ? play.at : scenes.findIndex((_, at) => isSetSo(at));
  return (
    <ConditionGroup title="Scenes to look at">
      {scenes.length > 1 && <ScenePlayer scenes={scenes} play={play} setPlay={setPlay} />}
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
          choose={() => setPlay({ ...play, at, shown: 0 })}
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
