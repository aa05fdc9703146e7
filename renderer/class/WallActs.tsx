import { Icon } from "../panels/Icon.tsx";
import type { ClassAct } from "./acts.ts";
import type { ClassControl } from "./classControls.ts";

interface Shown {
  readonly controls: readonly ClassControl[];
  /** Whether there are scenes to step through. */
  readonly hasScenes: boolean;
  readonly onAct: (act: ClassAct) => void;
}

const STEPS = [
  { act: "class-back", words: "Scene before", icon: "back" },
  { act: "class-next", words: "Next scene", icon: "onward" },
] as const;

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
      {hasScenes &&
        STEPS.map(({ act, words, icon }) => (
          <button
            type="button"
            key={act}
            className="wall-button"
            aria-label={words}
            onPointerDown={keepFocus}
            onClick={() => onAct({ act })}
          >
            <Icon name={icon} />
          </button>
        ))}
    </div>
  );
}

/** A press takes no focus, so that the keys of the class view stay what they are. */
function keepFocus(event: { preventDefault(): void }): void {
  event.preventDefault();
}
