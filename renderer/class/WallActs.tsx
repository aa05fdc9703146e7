import { Icon } from "../panels/Icon.tsx";
import type { ClassAct } from "./acts.ts";
import type { ClassControl } from "./classControls.ts";

interface Shown {
  readonly controls: readonly ClassControl[];
  /** Whether there are scenes to step through. */
  readonly hasScenes: boolean;
  readonly onAct: (act: ClassAct) => void;
}

/** What a pointer or a finger does on the wall: throws a control of the focus, and steps the scenes. */
export function WallActs({ controls, hasScenes, onAct }: Shown) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
    <div className="wall-acts" role="group" aria-label="Throw and step">
      {controls.map(({ key, words, isThrown, next }) => (
        <button
          type="button"
          key={key}
          className="wall-button"
          aria-pressed={isThrown}
          onPointerDown={keepFocus}
          onClick={() => onAct({ act: "class-throw", control: key, position: next })}
        >
          {words}
        </button>
      ))}
      {hasScenes && (
        <>
          <button
            type="button"
            className="wall-button"
            aria-label="Scene before"
            onPointerDown={keepFocus}
            onClick={() => onAct({ act: "class-back" })}
          >
            <Icon name="back" />
          </button>
          <button
            type="button"
            className="wall-button"
            aria-label="Next scene"
            onPointerDown={keepFocus}
            onClick={() => onAct({ act: "class-next" })}
          >
            <Icon name="onward" />
          </button>
        </>
      )}
    </div>
  );
}

/** A press takes no focus, so that the keys of the class view stay what they are. */
function keepFocus(event: { preventDefault(): void }): void {
  event.preventDefault();
}
