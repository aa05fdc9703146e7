import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import type { ControlKey } from "../../core/base/ids.ts";
import { bound } from "../../core/edit/keys/ownKeys.ts";
import type { Position } from "../../core/parts/kind.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { positionTitle } from "../words/condition.ts";
import { Icon } from "./Icon.tsx";
import { afterPress } from "./segments.ts";

interface Shown {
  readonly control: ControlKey;
  readonly position: Position;
  readonly isRest: boolean;
  readonly isNow: boolean;
  /** True while a finger or key holds it. */
  readonly isHeld: boolean;
}

/** One position. A latching one is clicked; a spring-back one is held while pressed, or pinned by a short press. */
export function Segment({ control, position, isRest, isNow, isHeld }: Shown) {
  const { dispatch, getState } = useAppStore();
  const press = useRef<{ readonly at: number; readonly wasPinned: boolean } | null>(null);
  const { name } = position;
  const springs = position.springsBackTo !== undefined;
  const isPinned = springs && isNow && !isHeld;

  const begin = (at: number): void => {
    if (press.current) return;
    press.current = { at, wasPinned: isPinned };
    dispatch({ do: "hold", control, position: name });
  };
  const end = (what: "pin" | "let-go"): void => {
    if (!press.current) return;
    press.current = null;
    dispatch(what === "pin" ? { do: "pin", control } : { do: "let-go", control });
  };
  const lift = (event: PointerEvent<HTMLButtonElement>): void => {
    const began = press.current;
    if (!began) return;
    const latches = getState().settings.springs === "latch";
    end(afterPress(event.timeStamp - began.at, began.wasPinned, latches));
  };
  const pressKey = (event: KeyboardEvent): void => {
    const key = bound("strip", event, getState().settings.keys);
    if (event.repeat || (key !== "strip-hold" && key !== "strip-set")) return;
    event.preventDefault();
    if (key === "strip-hold") begin(event.timeStamp);
    else dispatch(isPinned ? { do: "let-go", control } : { do: "throw", control, position: name });
  };

  const state = isNow ? (isRest ? "is-now" : springs ? "is-thrown is-held" : "is-thrown") : "";
  const shared = {
    type: "button" as const,
    className: `segment ${state} ${isRest ? "is-rest" : ""}`,
    "aria-pressed": isNow,
    "aria-label": `${positionTitle(name)}${isRest && name !== "rest" ? ", rest" : ""}${springs ? ", springs back" : ""}`,
    tabIndex: isNow ? 0 : -1,
    "data-position": name,
  };
  if (!springs)
    return (
      <button {...shared} onClick={() => dispatch({ do: "throw", control, position: name })}>
        <SteadyWords words={positionTitle(name)} />
      </button>
    );
  return (
    <button
      {...shared}
      title="Press and hold, or click once to leave it pinned"
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        begin(event.timeStamp);
      }}
      onPointerUp={lift}
      onPointerCancel={() => end("let-go")}
      onBlur={() => end("let-go")}
      onKeyDown={pressKey}
      onKeyUp={(event) => event.key === " " && end("let-go")}
    >
      <Icon name={isPinned ? "pin" : "springs"} size={16} />
      <SteadyWords words={positionTitle(name)} />
    </button>
  );
}

/** Words as wide as they are in bold, so that a throw moves nothing. */
function SteadyWords({ words }: { readonly words: string }) {
  return (
    <span className="segment-words" data-words={words}>
      {words}
    </span>
  );
}
