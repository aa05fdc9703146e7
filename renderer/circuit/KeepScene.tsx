import type { Circuit } from "../../core/circuit/circuit.ts";
import { addScene } from "../../core/edit/commands/addScene.ts";
import { useApp } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { Opens } from "./Opens.tsx";
import { SceneForm } from "./SceneForm.tsx";
import { typedScene, wordsOf } from "./sceneWords.ts";

/** Keeps what is set now as a scene, under a name and with a caption. */
export function KeepScene({ circuit }: { readonly circuit: Circuit }) {
  const condition = useApp(conditionNow);
  return (
    <Opens
      words="Keep this as a scene"
      form={(close) => (
        <SceneForm
          name="Keep this as a scene"
          words={wordsOf({ label: conditionPhrase(circuit, condition) })}
          act="Keep"
          change={(words) => (bench) => addScene(bench, typedScene(words))}
          close={close}
        />
      )}
    />
  );
}
