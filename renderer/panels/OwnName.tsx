import { useEffect, useId, useRef, useState } from "react";
import { asPlainLine, MOST_NAME } from "../../schemas/plainLine.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";

/** The person's own name, typed once: kept when the field is left, by Enter, and when its card closes. */
export function OwnName() {
  const { dispatch } = useAppStore();
  const person = useApp(({ settings }) => settings.person);
  const [typed, setTyped] = useState(person);
  const id = useId();
  const keep = (): void => {
    const name = asPlainLine(typed);
    if (name !== person) dispatch({ do: "set", settings: { person: name } });
  };
  const last = useRef(keep);
  last.current = keep;
  useEffect(() => () => last.current(), []);
  return (
    <form
      className="setting"
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <label className="small" htmlFor={id}>
        Your name
      </label>
      <span className="field">
        <input
          id={id}
          value={typed}
          maxLength={MOST_NAME}
          autoComplete="name"
          aria-describedby={`${id}-for`}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={keep}
        />
      </span>
      <p className="caption" id={`${id}-for`}>
        Stands on printed sheets and in your hand-ins. Who shares your library is told it with what you change.
      </p>
    </form>
  );
}
