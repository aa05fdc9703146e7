import { type FormEvent, useId, useState } from "react";
import { SCENE_SECONDS } from "../../core/lesson/scene.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import { LabelledField, LabelledText } from "../panels/LabelledField.tsx";
import type { Command } from "../state/action.ts";
import type { SceneWords } from "./sceneWords.ts";
import { useFocusBack } from "./useFocusBack.ts";

interface Shown {
  /** What the form is called, for those who do not see where it stands. */
  readonly name: string;
  readonly words: SceneWords;
  /** The word on the button that takes it. */
  readonly act: string;
  readonly change: (words: SceneWords) => Command;
  readonly close: () => void;
}

/** Name and caption of a scene, the parts it is about, and how long it stands when played. What is refused says why and stays as it was typed. */
export function SceneForm({ name, words, act, change, close }: Shown) {
  const { ask, trouble } = useAsked();
  const [label, setLabel] = useState(words.label);
  const [caption, setCaption] = useState(words.caption);
  const [notes, setNotes] = useState(words.notes);
  const [focus, setFocus] = useState(words.focus);
  const [seconds, setSeconds] = useState(words.seconds);
  const focusBack = useFocusBack();
  const id = useId();
  const leave = (): void => {
    focusBack();
    close();
  };
  const take = (event: FormEvent): void => {
    event.preventDefault();
    if (ask(change({ label, caption, notes, focus, seconds })) === null) leave();
  };
  return (
    <form
      className="circuit-form scene-form"
      aria-label={name}
      onSubmit={take}
      onKeyDown={(event) => {
        if (event.key === "Escape") leave();
      }}
    >
      <LabelledField
        label="Name"
        value={label}
        onChange={setLabel}
        isFirst
        trouble={trouble === null ? undefined : id}
      />
      <LabelledText
        label="What is to be seen"
        value={caption}
        usual="The lamp dims as soon as the motor runs: they share a ground."
        onChange={setCaption}
      />
      <LabelledText
        label="Notes for you alone, while you teach"
        value={notes}
        usual="Ask first which lamp will dim."
        rows={2}
        onChange={setNotes}
      />
      <LabelledField label="Parts to look at" value={focus} usual="all, or S5, SP1, M3" onChange={setFocus} />
      <LabelledField
        label="Seconds when played"
        value={seconds}
        usual={String(SCENE_SECONDS)}
        typed="number"
        onChange={setSeconds}
      />
      <Trouble words={trouble} id={id} />
      <div className="value-acts">
        <button type="submit" className="button is-low">
          {act}
        </button>
        <button type="button" className="button is-low is-quiet" onClick={leave}>
          Leave it
        </button>
      </div>
    </form>
  );
}
