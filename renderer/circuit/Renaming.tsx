import { useId, useRef, useState } from "react";
import { Trouble } from "../editor/Trouble.tsx";
import { useFocusBack } from "./useFocusBack.ts";

interface Shown {
  /** What is named, for those who do not see where the field stands. */
  readonly name: string;
  readonly value: string;
  /** Takes what was typed; gives back why it cannot be, else null. */
  readonly take: (typed: string) => string | null;
  readonly close: () => void;
}

/** A name typed in place of the one that stood there. Enter and leaving take it, Escape does not; what is refused stays typed. */
export function Renaming({ name, value, take, close }: Shown) {
  const [typed, setTyped] = useState(value);
  const [trouble, setTrouble] = useState<string | null>(null);
  const isDone = useRef(false);
  const focusBack = useFocusBack();
  const id = useId();
  const leave = (): void => {
    isDone.current = true;
    close();
  };
  const keep = (): void => {
    if (isDone.current) return;
    const said = typed.trim() === value ? null : take(typed);
    setTrouble(said);
    if (said === null) leave();
  };
  return (
    <span className="renaming">
      <span className={trouble === null ? "field" : "field is-wrong"}>
        <input
          // biome-ignore lint/a11y/noAutofocus: the person has just asked to type here
          autoFocus
          value={typed}
          aria-label={name}
          autoComplete="off"
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? undefined : id}
          onFocus={(event) => event.target.select()}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === "Enter") keep();
            else if (event.key === "Escape") leave();
            else return;
            event.preventDefault();
            event.stopPropagation();
            if (isDone.current) focusBack();
          }}
        />
      </span>
      <Trouble words={trouble} id={id} />
    </span>
  );
}
