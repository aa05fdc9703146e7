import { useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { addScene } from "../../core/edit/commands/addScene.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { SceneForm } from "./SceneForm.tsx";
import { typedScene, wordsOf } from "./sceneWords.ts";

/** Keeps what is set now as a scene, under a name and with a caption. */
export function KeepScene({ circuit }: { readonly circuit: Circuit }) {
  const [isOpen, setIsOpen] = useState<boolean | null>(null);
  const condition = useApp(conditionNow);
  if (isOpen)
    return (
      <SceneForm
        name="Keep this as a scene"
        words={wordsOf({ label: conditionPhrase(circuit, condition) })}
        act="Keep"
        change={(words) => (bench) => addScene(bench, typedScene(words))}
        close={() => setIsOpen(false)}
      />
    );
  return (
    <button
      type="button"
      // biome-ignore lint/a11y/noAutofocus: it comes back in place of the form that was just left
      autoFocus={isOpen === false}
      className="button is-quiet is-low"
      onClick={() => setIsOpen(true)}
    >
      <Icon name="add" size={16} />
      Keep this as a scene
    </button>
  );
}
