import { useId, useState } from "react";
import { Trouble } from "../editor/Trouble.tsx";

interface Shown {
  /** What the text is, for those who do not see where it stands. */
  readonly name: string;
  readonly value: string;
  /** Takes what was typed; gives back why it cannot be, else null. */
  readonly take: (typed: string) => string | null;
}

/** A caution, all of it in sight, to be changed where it stands. Enter and leaving take it, Escape brings it back. */
export function CautionField({ name, value, take }: Shown) {
  const [typed, setTyped] = useState(value);
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  const keep = (): void => setTrouble(typed.trim() === value ? null : take(typed));
  return (
    <span className="caution-field">
      <textarea
        rows={1}
        className={trouble === null ? "" : "is-wrong"}
        value={typed}
        aria-label={name}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : id}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === "Enter") keep();
          else if (event.key === "Escape") {
            setTyped(value);
            setTrouble(null);
          } else return;
          event.preventDefault();
          event.stopPropagation();
        }}
      />
      <Trouble words={trouble} id={id} />
    </span>
  );
}
