import { useState } from "react";
import type { Circuit, Scene } from "../../core/circuit/circuit.ts";
import { changeScene } from "../../core/edit/commands/changeScene.ts";
import { removeScene } from "../../core/edit/commands/removeScene.ts";
import { reorderScene } from "../../core/edit/commands/reorderScene.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { Icon } from "../panels/Icon.tsx";
import { useMake } from "../state/useMake.ts";
import { RowMenu } from "./RowMenu.tsx";
import { SceneForm } from "./SceneForm.tsx";
import { SceneQuestions } from "./SceneQuestions.tsx";
import { typedScene, wordsOf } from "./sceneWords.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly scene: Scene;
  /** Its place among the scenes, counted from 0, and how many there are. */
  readonly at: number;
  readonly count: number;
  /** Whether it is the one that is looked at. */
  readonly isShown: boolean;
  /** Whether the drawing is set so now. */
  readonly isSetSo: boolean;
  readonly choose: () => void;
}

/** One scene: a press sets the drawing so, the dots change it. Its caption stands there while it is shown. */
export function SceneRow({ circuit, scene, at, count, isShown, isSetSo, choose }: Shown) {
  const make = useMake();
  const [isChanging, setIsChanging] = useState(false);
  const { label, condition, caption = "" } = scene;
  const move = (to: number) => (): void => make((bench) => reorderScene(bench, at, to));
  return (
    <div className="scene-row">
      <button
        type="button"
        className={isShown ? "scene is-shown" : "scene"}
        aria-pressed={isShown}
        onClick={() => {
          make((bench) => setUp(bench, condition));
          choose();
        }}
      >
        <span className="scene-name">
          {label}
          <Icon name={isShown ? "tick" : "onward"} size={16} />
        </span>
        {isShown && caption !== "" && <span className="small">{caption}</span>}
      </button>
      <RowMenu
        label={`More for ${label}`}
        acts={[
          { icon: "rename", words: "Name and caption", act: () => setIsChanging(true) },
          {
            icon: "save",
            words: "As it is set now",
            act: () => make((bench) => changeScene(bench, at, { condition: bench.condition })),
            isOff: isSetSo ? "It is set so" : undefined,
          },
          { icon: "up", words: "Move up", act: move(at - 1), isOff: at === 0 ? "It is the first" : undefined },
          {
            icon: "down",
            words: "Move down",
            act: move(at + 1),
            isOff: at === count - 1 ? "It is the last" : undefined,
          },
          { icon: "bin", words: "Delete", act: () => make((bench) => removeScene(bench, at)) },
        ]}
      />
      {isShown && <SceneQuestions circuit={circuit} scene={scene} at={at} />}
      {isChanging && (
        <SceneForm
          name={`Name and caption of ${label}`}
          words={wordsOf(scene)}
          act="Keep"
          change={(words) => (bench) => changeScene(bench, at, typedScene(words))}
          close={() => setIsChanging(false)}
        />
      )}
    </div>
  );
}
