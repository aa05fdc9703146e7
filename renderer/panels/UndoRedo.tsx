import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { redoName, undoName } from "../state/views.ts";
import { Icon } from "./Icon.tsx";

/** Undo and redo, each naming what it would take back or bring again. */
export function UndoRedo() {
  const keyOf = useKeyOf();
  const { dispatch } = useAppStore();
  const undo = useApp(undoName);
  const redo = useApp(redoName);
  return (
    <>
      <Step icon="undo" word="Undo" what={undo} keys={keyOf("undo")} onClick={() => dispatch({ do: "undo" })} />
      <Step icon="redo" word="Redo" what={redo} keys={keyOf("redo")} onClick={() => dispatch({ do: "redo" })} />
    </>
  );
}

interface Shown {
  readonly icon: "undo" | "redo";
  readonly word: string;
  /** What it is about; null where there is nothing. */
  readonly what: string | null;
  readonly keys: string;
  readonly onClick: () => void;
}

function Step({ icon, word, what, keys, onClick }: Shown) {
  const name = what === null ? `${word}: nothing` : `${word}: ${what}`;
  return (
    <button
      type="button"
      className="icon-button"
      aria-label={name}
      title={`${name} (${keys})`}
      aria-disabled={what === null}
      onClick={() => what !== null && onClick()}
    >
      <Icon name={icon} />
      <span className="words">{word}</span>
    </button>
  );
}
