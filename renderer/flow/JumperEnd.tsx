import { useState } from "react";
import { useApp, useAppStore } from "../state/AppContext.tsx";

interface Shown {
  readonly end: "from" | "to";
  readonly words: string;
  readonly usual: string;
}

/** One end of the jumper: typed, or picked on the drawing. Enter takes what is typed, and so does leaving the field. */
export function JumperEnd({ end, words, usual }: Shown) {
  const { dispatch } = useAppStore();
  const value = useApp(({ open }) => open?.jumper[end] ?? "");
  const isPicking = useApp(({ open }) => open?.jumper.picking === end);
  const [typed, setTyped] = useState(value);
  const [known, setKnown] = useState(value);
  if (known !== value) {
    setKnown(value);
    setTyped(value);
  }
  const take = (): void => {
    const text = typed.trim();
    if (text !== value) dispatch({ do: "set-jumper", jumper: { [end]: text } });
  };
  return (
    <form
      className="jumper-end"
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <label className="field">
        <span className="jumper-end-words">{words}</span>
        <input
          value={typed}
          placeholder={usual}
          autoComplete="off"
          aria-label={`Jumper ${words.toLowerCase()}`}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={take}
        />
      </label>
      <button
        type="button"
        className="button is-low"
        aria-pressed={isPicking}
        onClick={() => dispatch({ do: "set-jumper", jumper: { picking: isPicking ? null : end } })}
      >
        {isPicking ? "Click a pin" : "Pick"}
      </button>
    </form>
  );
}
