import { useEffect, useId, useRef, useState } from "react";
import { Trouble } from "./Trouble.tsx";

interface Shown {
  /** What the value is, for those who do not see where it stands. */
  readonly name: string;
  readonly value: string;
  readonly className?: string;
  /** True for what has just been added: it is given the focus, all of it marked, to be typed over. */
  readonly isFresh?: boolean;
  /** Takes what was typed; gives back why it cannot be, else null. */
  readonly take: (typed: string) => string | null;
}

/** A word that is changed where it stands. Enter and leaving take it, Escape brings it back; what is refused stays typed. */
export function InPlace({ name, value, className = "", isFresh = false, take }: Shown) {
  const [typed, setTyped] = useState(value);
  const [known, setKnown] = useState(value);
  const [trouble, setTrouble] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const id = useId();
  if (known !== value) {
    setKnown(value);
    setTyped(value);
    setTrouble(null);
  }
  useEffect(() => {
    if (isFresh) field.current?.select();
  }, [isFresh]);
  const taken = (): void => {
    if (typed.trim() !== value) setTrouble(take(typed.trim()));
    else back();
  };
  const back = (): void => {
    setTyped(value);
    setTrouble(null);
  };
  return (
    <span className={`in-place ${className}`}>
      <input
        ref={field}
        className={trouble === null ? "" : "is-wrong"}
        value={typed}
        aria-label={name}
        autoComplete="off"
        spellCheck={false}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : id}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={taken}
        onKeyDown={(event) => {
          if (event.key === "Enter") taken();
          else if (event.key === "Escape" && typed !== value) back();
          else return;
          event.preventDefault();
          event.stopPropagation();
        }}
      />
      <Trouble words={trouble} id={id} />
    </span>
  );
}
